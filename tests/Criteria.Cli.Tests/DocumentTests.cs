using System.Text.RegularExpressions;
using Criteria.Cli.Tests.Support;

namespace Criteria.Cli.Tests;

/// <summary>What the documents show must be true.</summary>
public sealed partial class DocumentTests
{
    [Fact]
    public void CaseFilePage_Example_CanBeRead()
    {
        var example = Fences("case-file.md").First();

        var result = Command.RunWith(example, interactive: false, "case", "check", "-");

        result.Error.ShouldBeEmpty();
        result.Code.ShouldBe(0);
    }

    [Fact]
    public void Readme_CommandOfTheMainJob_NamesAnExample() =>
        File.ReadAllText(Repository.Path("README.md")).ShouldContain("dotnet run --project src/Criteria.Cli -- assess examples/clear-severe/case.yaml");

    [Fact]
    public void CommandLinePage_NamesEveryCommand()
    {
        var page = File.ReadAllText(Repository.Path("docs", "command-line.md"));

        foreach (var command in new[] { "assess", "explain", "write", "case check", "case new", "case schema", "rules list", "rules check", "rules test", "rules basis", "facts" })
        {
            page.ShouldContain($"criteria {command}");
        }
    }

    [Fact]
    public void Documents_LinksBetweenFiles_Lead()
    {
        foreach (var file in Directory.EnumerateFiles(Repository.Root, "*.md").Concat(Directory.EnumerateFiles(Repository.Path("docs"), "*.md", SearchOption.AllDirectories))
            .Concat(Directory.EnumerateFiles(Repository.Path("examples"), "*.md")))
        {
            foreach (Match link in Link().Matches(File.ReadAllText(file)))
            {
                var target = Path.Combine(Path.GetDirectoryName(file)!, link.Groups[1].Value.Split('#')[0]);
                (File.Exists(target) || Directory.Exists(target)).ShouldBeTrue($"{Path.GetRelativePath(Repository.Root, file)} links to {link.Groups[1].Value}");
            }
        }
    }

    [Fact]
    public void ExamplesPage_NamesEveryExample()
    {
        var page = File.ReadAllText(Repository.Path("examples", "README.md"));

        foreach (var name in Repository.Examples())
        {
            page.ShouldContain($"[{name}]({name}/case.yaml)");
        }
    }

    private static IEnumerable<string> Fences(string page) =>
        YamlFence().Matches(File.ReadAllText(Repository.Path("docs", page))).Select(match => match.Groups[1].Value);

    [GeneratedRegex("```yaml\n(.*?)```", RegexOptions.Singleline)]
    private static partial Regex YamlFence();

    [GeneratedRegex(@"\]\((?!https?:)([^)]+)\)")]
    private static partial Regex Link();
}
