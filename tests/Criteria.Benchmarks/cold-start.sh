#!/usr/bin/env bash
# How long one cold `criteria assess` takes, against a .NET program that does nothing.
# Both are published in the same way in this run, and started in turn. Needs bash, GNU date and the SDK.
#   tests/Criteria.Benchmarks/cold-start.sh [starts] [case file]
# Ends with 1 when the ratio is above the target.
set -euo pipefail
export LC_ALL=C

root=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
starts=${1:-20}
case_file=${2:-$root/examples/mild-with-hypertension/case.yaml}
target=12
rid=${RID:-linux-x64}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

profile=$root/src/Criteria.Cli/Properties/PublishProfiles/clinic.pubxml
publish=(--configuration Release --runtime "$rid" --nologo --verbosity quiet)

dotnet publish "$root/src/Criteria.Cli" "${publish[@]}" -p:PublishProfile=clinic -p:PublishDir="$work/criteria/"

# The do-nothing program takes its settings from the very same profile.
mkdir -p "$work/source/Properties/PublishProfiles"
cp "$profile" "$work/source/Properties/PublishProfiles/"
echo 'return 0;' > "$work/source/Program.cs"
cat > "$work/source/nothing.csproj" <<'PROJECT'
<Project Sdk="Microsoft.NET.Sdk">
  <PropertyGroup>
    <OutputType>Exe</OutputType>
    <TargetFramework>net10.0</TargetFramework>
    <NuGetAudit>false</NuGetAudit>
  </PropertyGroup>
</Project>
PROJECT
dotnet publish "$work/source" "${publish[@]}" -p:PublishProfile=clinic -p:PublishDir="$work/nothing/"

criteria=$work/criteria/criteria
nothing=$work/nothing/nothing
"$criteria" assess "$case_file" > "$work/answer.txt"
grep -q . "$work/answer.txt" || { echo 'no answer to time' >&2; exit 2; }
"$nothing"

# Microseconds of one start.
start() {
  local before after
  before=$(date +%s%N)
  "$@" > /dev/null 2>&1
  after=$(date +%s%N)
  echo $(((after - before) / 1000))
}

for ((i = 0; i < starts; i++)); do
  start "$nothing" >> "$work/nothing.us"
  start "$criteria" assess "$case_file" >> "$work/criteria.us"
done

median() {
  sort -n "$1" | awk '{ a[NR] = $1 } END { print (a[int((NR + 1) / 2)] + a[int(NR / 2) + 1]) / 2 }'
}

awk -v nothing="$(median "$work/nothing.us")" -v criteria="$(median "$work/criteria.us")" -v starts="$starts" -v target=$target 'BEGIN {
  printf "do nothing       %7.1f ms  median of %d starts\n", nothing / 1000, starts
  printf "criteria assess  %7.1f ms  median of %d starts\n", criteria / 1000, starts
  printf "ratio            %7.1f     target at most %d\n", criteria / nothing, target
  exit criteria / nothing > target
}'
