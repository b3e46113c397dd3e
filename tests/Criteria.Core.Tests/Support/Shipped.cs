using Criteria.Core.Facts;
using Criteria.Core.Rulesets;

namespace Criteria.Core.Tests.Support;

/// <summary>The rules that ship, loaded once.</summary>
internal static class Shipped
{
    public static RulesetLibrary Library { get; } = Load();

    public static Vocabulary Vocabulary => Library.Vocabulary;

    private static RulesetLibrary Load()
    {
        var loading = RulesetLibrary.Load(ShippedRules.Files());
        loading.Problems.ShouldSay();
        return loading.Library!;
    }
}
