namespace Criteria.Cli.Tests.Support;

/// <summary>Files of the repository that tests read.</summary>
internal static class Repository
{
    public static string Root { get; } = Find();

    public static string Path(params string[] parts) => System.IO.Path.Combine([Root, .. parts]);

    /// <summary>The names of the examples, each a folder with a case file.</summary>
    public static IEnumerable<string> Examples() => Directory.EnumerateDirectories(Path("examples"))
        .Where(folder => File.Exists(System.IO.Path.Combine(folder, "case.yaml")))
        .Select(folder => System.IO.Path.GetFileName(folder)!).Order(StringComparer.Ordinal);

    /// <summary>Compares a text with an approved file, or rewrites the file when CRITERIA_ACCEPT is 1.</summary>
    public static void ShouldBeApproved(string text, params string[] file)
    {
        var path = Path(file);
        if (Environment.GetEnvironmentVariable("CRITERIA_ACCEPT") == "1")
        {
            File.WriteAllText(path, text);
            return;
        }

        File.Exists(path).ShouldBeTrue($"{string.Join('/', file)} is missing");
        text.ShouldBe(File.ReadAllText(path), $"{string.Join('/', file)} differs");
    }

    private static string Find()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(System.IO.Path.Combine(folder.FullName, "Criteria.sln")))
        {
            folder = folder.Parent ?? throw new InvalidOperationException("no Criteria.sln above the tests");
        }

        return folder.FullName;
    }
}
