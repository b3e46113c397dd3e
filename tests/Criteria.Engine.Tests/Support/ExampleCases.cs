using Criteria.Core.Reading;

namespace Criteria.Engine.Tests.Support;

/// <summary>The case files of the repository's examples.</summary>
internal static class ExampleCases
{
    private static readonly string Folder = Path.Combine(Root(), "examples");

    /// <summary>Their names, as paths from the folder of examples.</summary>
    public static IEnumerable<string> Names => Directory.EnumerateFiles(Folder, "case.*", SearchOption.AllDirectories)
        .Select(file => Path.GetRelativePath(Folder, file).Replace('\\', '/')).Order(StringComparer.Ordinal);

    /// <summary>The case of a name, in the shipped vocabulary.</summary>
    public static Case Read(string name) => Rules.Read(new SourceFile(name, File.ReadAllBytes(Path.Combine(Folder, name))));

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Criteria.sln")))
        {
            folder = folder.Parent!;
        }

        return folder.FullName;
    }
}
