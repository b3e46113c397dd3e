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

    // Widths, indents, spellings of letters.
    private static readonly string[] Layout = ["src/Criteria.Cli/Report/", "src/Criteria.Documents/Figures/", "src/Criteria.Documents/Renderers/", "src/Criteria.Documents/Wording/"];

    private static readonly Dictionary<string, string[]> Fractions = new(StringComparer.Ordinal)
    {
        ["src/Criteria.Core/Facts/Unit.cs"] = ["2.54", "30.48", "0.45359237", "0.1"], // units by definition
        ["src/Criteria.Core/Logic/Comparison.cs"] = ["0.5"], // half a whole number, to round
        ["src/Criteria.Documents/Renderers/Pdf/ColumnWidths.cs"] = ["0.01", "0.25"], // of a point, and part of a page
        ["src/Criteria.Documents/Renderers/Pdf/PdfDesign.cs"] = ["0.25", "0.3", "0.36", "0.4", "0.5", "0.6", "0.72", "1.2", "1.5", "3.5", "10.5", "11.5", "12.5", "13.5", "595.28", "841.89"], // points and parts of a page
        ["src/Criteria.Engine/Counting/Closeness.cs"] = ["0.95"], // the level of a confidence interval
    };

    // Whole numbers above three, each looked at: units, lengths of texts and files, places of digits. One that is new is
    // entered here only when no published criterion could mean it.
    private static readonly Dictionary<string, int[]> WholeNumbers = new(StringComparer.Ordinal)
    {
        ["src/Criteria.Engine/Network/FindingFact.cs"] = [8], // types that findings are spread over
        ["src/Criteria.Engine/Plans/Cells.cs"] = [60, 62, 63], // bits of a word
        ["src/Criteria.Engine/Plans/CompiledConditions.cs"] = [24], // criteria in one method
        ["src/Criteria.Core/Facts/ScaledNumber.cs"] = [4, 9, 10, 16, 32], // the parts of a decimal number, and how many decimals fit
        ["src/Criteria.Engine/Plans/FactReading.cs"] = [63], // the sign of a whole number
        ["src/Criteria.Core/Facts/FactMark.cs"] = [4], // marks before the first word
        ["src/Criteria.Engine/Changes/Grid.cs"] = [10], // tenths of a unit
        ["src/Criteria.Engine/Settling/Settler.cs"] = [1000], // completions tried
        ["src/Criteria.Core/Facts/Unit.cs"] = [60, 100], // minutes in an hour, hundredths, centimetres in a metre
        ["src/Criteria.Core/Facts/QuantityText.cs"] = [4, 60], // decimals shown; minutes in an hour
        ["src/Criteria.Core/Facts/VocabularyReader.cs"] = [24, 60], // minutes in a day
        ["src/Criteria.Core/Facts/VocabularyReader.Indices.cs"] = [60],
        ["src/Criteria.Core/Measures/EventRate.cs"] = [60],
        ["src/Criteria.Core/Measures/SuppliedIndex.cs"] = [60],
        ["src/Criteria.Core/Measures/BodyMassIndex.cs"] = [100], // centimetres in a metre
        ["src/Criteria.Core/Logic/DateRelation.cs"] = [7], // days in a week
        ["src/Criteria.Core/Facts/QuantityReader.cs"] = [10], // the decimal system
        ["src/Criteria.Core/Facts/Ratio.cs"] = [6, 7, 12], // digits
        ["src/Criteria.Core/Rulesets/LeafReader.cs"] = [5, 100], // digits of a number; per cent
        ["src/Criteria.Core/Rulesets/ConditionReader.cs"] = [5], // digits of a count
        ["src/Criteria.Core/Rulesets/ScoreReader.cs"] = [1000], // most points of a score
        ["src/Criteria.Core/Cases/CaseBuilder.cs"] = [6], // digits of a page
        ["src/Criteria.Core/Cases/Scalars.cs"] = [12], // decimals written
        ["src/Criteria.Core/Cases/SectionReader.cs"] = [4], // letters of a name
        ["src/Criteria.Core/Pasted/PastedLines.cs"] = [64, 1000, 1024, 2000], // bounds of a text
        ["src/Criteria.Core/Pasted/ValueForms.cs"] = [60], // minutes in an hour
        ["src/Criteria.Core/Reading/Diagnostic.cs"] = [200, 400], // bounds of a file and of its texts
        ["src/Criteria.Core/Reading/NearestName.cs"] = [64],
        ["src/Criteria.Core/Reading/TreeReader.cs"] = [4, 32, 1024, 20000, 200000],
        ["src/Criteria.Core/Reading/Wording.cs"] = [12, 60],
        ["src/Criteria.Core/Reading/YamlTree.cs"] = [160],
        ["src/Criteria.Engine/Counting/Closeness.cs"] = [60],
        ["src/Criteria.Engine/Findings/NightsTogether.cs"] = [12, 60], // decimals of a mean; minutes in an hour
        ["src/Criteria.Engine/Output/AssessmentJson.Counting.cs"] = [4], // decimals written
        ["src/Criteria.Engine/Output/AssessmentJson.Findings.cs"] = [6], // decimals written
        ["src/Criteria.Documents/DocumentDiagnostics.cs"] = [12], // digits of a digest shown
        ["src/Criteria.Documents/PolicyBook/PolicyBookWriter.cs"] = [32], // digits of the id of a file
        ["src/Criteria.Cli/Commands/FactsCommand.cs"] = [5], // facts shown whole
        ["src/Criteria.Cli/Files/CaseTemplate.cs"] = [4], // an indent
        ["src/Criteria.Cli/Files/InputFiles.cs"] = [8, 16, 1024], // bytes
        ["src/Criteria.Cli/Program.cs"] = [16],
        ["src/Criteria.Cli/Progress.cs"] = [10, 20], // cases between two lines of progress
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

    [Fact]
    public void Sources_HoldNoWholeNumberButThoseLookedAt()
    {
        var found = Sources().Where(file => !IsLayout(file))
            .Select(file => (File: file, Numbers: WholesIn(file, Whole()).Distinct().Order().ToArray())).Where(file => file.Numbers.Length > 0).ToArray();

        foreach (var (file, numbers) in found)
        {
            numbers.Except(WholeNumbers.GetValueOrDefault(file, [])).ShouldBeEmpty($"{file}: is one of these a published threshold? It belongs into a ruleset; else enter it here");
        }

        found.SelectMany(file => file.Numbers.Select(number => $"{file.File}: {number}")).Order(StringComparer.Ordinal)
            .ShouldBe(WholeNumbers.SelectMany(file => file.Value.Select(number => $"{file.Key}: {number}")).Order(StringComparer.Ordinal));
    }

    // Reports are full of widths and indents; none is compared with anything that came from a case. Shares become per cent.
    [Fact]
    public void Reports_CompareWithNoNumberAboveThree() => Sources().Where(IsLayout)
        .SelectMany(file => WholesIn(file, Compared()).Where(number => number != 100).Select(number => $"{file}: {number}")).ShouldBeEmpty();

    [Theory]
    [InlineData("if (rate >= 15)", "15")]
    [InlineData("if (rate is > 5 and <= 14)", "5 14")]
    [InlineData("if (30 < rate)", "30")]
    [InlineData("rate >= 15m", "15")]
    [InlineData("text.Length > 3", "")]
    [InlineData("list[^1]", "")]
    public void Compared_OfALine_FindsTheNumbersAboveThree(string line, string numbers) => string.Join(' ', Wholes(line, Compared())).ShouldBe(numbers);

    // A threshold with its unit could hide in a text that is read as a rule: only help in messages and samples shows one.
    [Fact]
    public void Sources_ShowQuantitiesInMessagesAndTemplatesOnly() => Sources()
        .Where(file => Texts().Matches(Code(file)).Any(text => QuantityInText().IsMatch(text.Value)))
        .ShouldBe(["src/Criteria.Cli/Files/CaseTemplate.cs", "src/Criteria.Core/Cases/CaseDiagnostics.cs", "src/Criteria.Core/Rulesets/RulesetDiagnostics.cs", "src/Criteria.Documents/Renderers/HtmlStyle.cs"]);

    private static IEnumerable<string> Sources() => Repository.Files("src", "*.cs");

    private static bool IsLayout(string file) => Layout.Any(folder => file.StartsWith(folder, StringComparison.Ordinal));

    private static IEnumerable<int> WholesIn(string file, Regex pattern) => Wholes(Texts().Replace(Code(file), "\"\""), pattern);

    private static IEnumerable<int> Wholes(string code, Regex pattern) => pattern.Matches(code)
        .Select(match => int.Parse(match.Groups["n"].Value.Replace("_", "", StringComparison.Ordinal), System.Globalization.CultureInfo.InvariantCulture)).Where(number => number > 3);

    private static string Code(string file) => Comment().Replace(Repository.Text(file), "");

    [GeneratedRegex(@"^\s*///?.*$|\s// .*$", RegexOptions.Multiline)]
    private static partial Regex Comment();

    [GeneratedRegex(@"""([a-z][a-z0-9_.\-]*)""")]
    private static partial Regex Quoted();

    [GeneratedRegex(@"""(?:\\.|[^""\\])*""")]
    private static partial Regex Texts();

    [GeneratedRegex(@"(?<![\w.])\d+\.\d+")]
    private static partial Regex Fraction();

    [GeneratedRegex(@"(?<![\w.])(?<n>\d[\d_]*)[mMlLuUdDfF]*(?![\w.])")]
    private static partial Regex Whole();

    [GeneratedRegex(@"(?<![\w.])(?:(?<=[<>]=? )(?<n>\d[\d_]*)|(?<n>\d[\d_]*)(?=[mMlLuUdDfF]* [<>]))")]
    private static partial Regex Compared();

    [GeneratedRegex(@"\b\d+(\.\d+)? ?(/h|kg/m2|%|min|h|cm|mmHg|mmol/L|years)(?!\w)")]
    private static partial Regex QuantityInText();
}
