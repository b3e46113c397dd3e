using System.Text.RegularExpressions;
using Criteria.Core.Tests.Support;

namespace Criteria.Core.Tests;

/// <summary>What is clinical stands in rules, never in the program: it names no fact and no criterion, and holds no number that would be one's threshold.</summary>
public sealed partial class ClinicalKnowledgeTests
{
    // Payer, item and date select rules; none of them is clinical.
    private const string Selection = "coverage.";

    // A page of help shows real names; nothing is decided by them.
    private static readonly string[] MayNameForExample = ["src/Criteria.Cli/ExamplesHelp.cs"];

    private static readonly Dictionary<string, string[]> Fractions = new(StringComparer.Ordinal)
    {
        ["src/Criteria.Core/Facts/Unit.cs"] = ["2.54", "30.48", "0.45359237", "0.1"], // units by definition
        ["src/Criteria.Core/Logic/Comparison.cs"] = ["0.5"], // half a whole number, to round
        ["src/Criteria.Engine/Counting/Closeness.cs"] = ["0.95"], // the level of a confidence interval
    };

    // A rule about a fact written in C# has to find the fact by its name.
    [Fact]
    public void Sources_NameNoFactAndNoCriterionOfTheShippedRules()
    {
        var rules = Shipped.Library.InForce(new DateOnly(2026, 7, 1), "medicare", "pap");
        var names = Shipped.Library.Vocabulary.Facts.Select(fact => fact.Id).Concat(rules.Criteria.Select(criterion => criterion.Id)).ToHashSet(StringComparer.Ordinal);

        names.RemoveWhere(name => name.StartsWith(Selection, StringComparison.Ordinal));

        names.Count.ShouldBeGreaterThan(100);
        Sources().Except(MayNameForExample).SelectMany(file => Quoted().Matches(Code(file)).Select(match => match.Groups[1].Value).Where(names.Contains).Select(name => $"{file}: {name}"))
            .ShouldBeEmpty();
    }

    [Fact]
    public void Sources_HoldNoFractionButThoseOfUnitsAndRounding()
    {
        var found = Sources().Select(file => (File: file, Numbers: Fraction().Matches(Texts().Replace(Code(file), "\"\"")).Select(match => match.Value).Distinct().ToArray()))
            .Where(file => file.Numbers.Length > 0);

        foreach (var (file, numbers) in found)
        {
            numbers.Except(Fractions.GetValueOrDefault(file, [])).ShouldBeEmpty(file);
        }

        // An exception that nobody needs any more would hide the next number.
        found.Select(file => file.File).Order().ShouldBe(Fractions.Keys.Order());
    }

    // A threshold with its unit could hide in a text that is read as a rule: only help in messages and samples shows one.
    [Fact]
    public void Sources_ShowQuantitiesInMessagesAndTemplatesOnly() => Sources()
        .Where(file => Texts().Matches(Code(file)).Any(text => QuantityInText().IsMatch(text.Value)))
        .ShouldBe(["src/Criteria.Cli/Files/CaseTemplate.cs", "src/Criteria.Core/Cases/CaseDiagnostics.cs", "src/Criteria.Core/Rulesets/RulesetDiagnostics.cs"]);

    private static IEnumerable<string> Sources() => Repository.Files("src", "*.cs");

    private static string Code(string file) => Comment().Replace(Repository.Text(file), "");

    [GeneratedRegex(@"^\s*///?.*$|\s// .*$", RegexOptions.Multiline)]
    private static partial Regex Comment();

    [GeneratedRegex(@"""([a-z][a-z0-9_.\-]*)""")]
    private static partial Regex Quoted();

    [GeneratedRegex(@"""(?:\\.|[^""\\])*""")]
    private static partial Regex Texts();

    [GeneratedRegex(@"(?<![\w.])\d+\.\d+")]
    private static partial Regex Fraction();

    [GeneratedRegex(@"\b\d+(\.\d+)? ?(/h|kg/m2|%|min|h|cm|mmHg|mmol/L|years)(?!\w)")]
    private static partial Regex QuantityInText();
}
