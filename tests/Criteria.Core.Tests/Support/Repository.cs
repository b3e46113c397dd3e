namespace Criteria.Core.Tests.Support;

/// <summary>The files of this repository, for tests that compare pages and sources with the program.</summary>
internal static class Repository
{
    public static string Root { get; } = Find();

    public static string Path(string relative) => System.IO.Path.Combine(Root, relative);

    public static string Text(string relative) => File.ReadAllText(Path(relative)).ReplaceLineEndings("\n");

    public static IEnumerable<string> Files(string folder, string pattern) =>
        Directory.EnumerateFiles(Path(folder), pattern, SearchOption.AllDirectories)
            .Where(file => !file.Split(System.IO.Path.DirectorySeparatorChar).Any(part => part is "bin" or "obj"))
            .Select(file => System.IO.Path.GetRelativePath(Root, file).Replace('\\', '/'))
            .Order(StringComparer.Ordinal);

    private static string Find()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(System.IO.Path.Combine(folder.FullName, "Criteria.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new InvalidOperationException("the tests run outside the repository");
    }
}
