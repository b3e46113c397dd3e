using System.Reflection;
using System.Text.RegularExpressions;
using Criteria.Core.Cases;
using Criteria.Core.Tests.Support;

namespace Criteria.Core.Tests;

/// <summary>One direction of dependence: what each project and each folder of the core may know.</summary>
public sealed partial class LayeringTests
{
    // Facts and Measures stand side by side: a fact set computes its measures.
    private static readonly Dictionary<string, string[]> MayUse = new(StringComparer.Ordinal)
    {
        ["Reading"] = [],
        ["Facts"] = ["Reading", "Measures"],
        ["Measures"] = ["Facts"],
        ["Logic"] = ["Facts"],
        ["Cases"] = ["Reading", "Facts"],
        ["Pasted"] = ["Reading", "Facts", "Cases"],
        ["Rulesets"] = ["Reading", "Facts", "Logic"],
        ["BoundTests"] = ["Reading", "Facts", "Logic", "Cases", "Rulesets"],
    };

    private static readonly Assembly Core = typeof(CaseReader).Assembly;

    public static TheoryData<string> Folders => [.. MayUse.Keys];

    [Fact]
    public void Core_ReferencesNothingButYamlAndThePlatform() =>
        Core.GetReferencedAssemblies().Select(name => name.Name!).Where(name => !name.StartsWith("System.", StringComparison.Ordinal)).ShouldBe(["YamlDotNet"]);

    [Fact]
    public void YamlDotNet_IsNamedInOneFile() =>
        Repository.Files("src", "*.cs").Where(file => Repository.Text(file).Contains("YamlDotNet", StringComparison.Ordinal)).ShouldBe(["src/Criteria.Core/Reading/YamlTree.cs"]);

    [Theory]
    [InlineData("Criteria.Core", "Criteria.Engine")]
    [InlineData("Criteria.Core", "Criteria.Cli")]
    [InlineData("Criteria.Core", "NRules")]
    [InlineData("Criteria.Core", "System.CommandLine")]
    [InlineData("Criteria.Core", "System.Console")]
    [InlineData("Criteria.Core", "Criteria.Documents")]
    [InlineData("Criteria.Engine", "Criteria.Documents")]
    [InlineData("Criteria.Engine", "Criteria.Cli")]
    [InlineData("Criteria.Documents", "Criteria.Cli")]
    [InlineData("Criteria.Documents", "NRules")]
    [InlineData("Criteria.Documents", "System.CommandLine")]
    [InlineData("Criteria.Documents", "System.Console")]
    [InlineData("Criteria.Cli", "Fluid")]
    [InlineData("Criteria.Cli", "Markdig")]
    [InlineData("Criteria.Engine", "System.CommandLine")]
    [InlineData("Criteria.Cli", "NRules")]
    public void Sources_OfAProject_DoNotNameWhatTheyMayNotKnow(string project, string unknown) =>
        Repository.Files($"src/{project}", "*.cs").Where(file => Usings(file).Any(name => name == unknown || name.StartsWith(unknown + ".", StringComparison.Ordinal))).ShouldBeEmpty();

    [Theory]
    [InlineData("Fluid", "src/Criteria.Documents/Templating/")]
    [InlineData("Markdig", "src/Criteria.Documents/Renderers/")]
    [InlineData("PdfSharp", "src/Criteria.Documents/Renderers/Pdf")]
    [InlineData("DocumentFormat", "src/Criteria.Documents/Renderers/Word")]
    public void Library_OfTheDocuments_IsNamedInOneFolder(string library, string folder) => Repository.Files("src", "*.cs")
        .Where(file => Usings(file).Any(name => name == library || name.StartsWith(library + ".", StringComparison.Ordinal))).ShouldAllBe(file => file.StartsWith(folder, StringComparison.Ordinal));

    [Theory]
    [MemberData(nameof(Folders))]
    public void Sources_OfAFolder_UseOnlyFoldersBelowThem(string folder)
    {
        var files = Repository.Files($"src/Criteria.Core/{folder}", "*.cs").ToArray();

        files.ShouldNotBeEmpty();
        foreach (var file in files)
        {
            var used = Usings(file).Where(name => name.StartsWith("Criteria.", StringComparison.Ordinal)).Select(name => name.Split('.')[2]);
            used.Except(MayUse[folder]).ShouldBeEmpty(file);
            Repository.Text(file).ShouldContain($"namespace Criteria.Core.{folder};", customMessage: file);
        }
    }

    [Fact]
    public void Folders_OfTheCore_AreAllListed() =>
        Repository.Files("src/Criteria.Core", "*.cs").Select(file => file.Split('/')[2]).Distinct().Order().ShouldBe(MayUse.Keys.Order());

    private static IEnumerable<string> Usings(string file) => Using().Matches(Repository.Text(file)).Select(match => match.Groups[1].Value);

    [GeneratedRegex(@"^using (?:static )?(?:\w+ = )?([\w.]+)", RegexOptions.Multiline)]
    private static partial Regex Using();
}
