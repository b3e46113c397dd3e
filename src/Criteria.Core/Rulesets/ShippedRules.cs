using System.Collections.Immutable;
using Criteria.Core.Reading;

namespace Criteria.Core.Rulesets;

/// <summary>The rules that the program carries, and those of a folder.</summary>
public static class ShippedRules
{
    private const string Prefix = "rulesets/";

    private static readonly Lazy<LibraryLoading> Loaded = new(() => RulesetLibrary.Load(Files(withTests: false)));

    /// <summary>The shipped rules, loaded once for the whole process: a library does not change.</summary>
    public static LibraryLoading Loading => Loaded.Value;

    /// <summary>The files that ship inside the library.</summary>
    public static ImmutableArray<SourceFile> Files() => Files(withTests: true);

    // The tests are almost half of it, and loading passes over them.
    private static ImmutableArray<SourceFile> Files(bool withTests)
    {
        var assembly = typeof(ShippedRules).Assembly;
        return
        [
            .. assembly.GetManifestResourceNames().Where(name => name.StartsWith(Prefix, StringComparison.Ordinal))
                .Where(name => withTests || !RulesetLibrary.IsForTests(new SourceFile(name, default)))
                .Order(StringComparer.Ordinal).Select(name => new SourceFile(name, Content(name))),
        ];

        ReadOnlyMemory<byte> Content(string name)
        {
            using var stream = assembly.GetManifestResourceStream(name)!;
            var bytes = new byte[stream.Length];
            stream.ReadExactly(bytes);
            return bytes;
        }
    }

    /// <summary>The files to load when a folder is given: the folder's own when it holds a vocabulary, else the shipped ones and the folder's.</summary>
    public static ImmutableArray<SourceFile> With(IReadOnlyCollection<SourceFile> folder)
    {
        ArgumentNullException.ThrowIfNull(folder);
        return folder.Any(file => file.Name.Replace('\\', '/').Contains("vocabulary/", StringComparison.Ordinal))
            ? [.. folder]
            : [.. Files(), .. folder];
    }
}
