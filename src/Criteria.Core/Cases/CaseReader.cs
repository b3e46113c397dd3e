using System.Collections.Immutable;
using Criteria.Core.Facts;
using Criteria.Core.Reading;

namespace Criteria.Core.Cases;

/// <summary>Reads case files; the form is that of <c>docs/case-file.md</c>.</summary>
public sealed class CaseReader
{
    private readonly Vocabulary _vocabulary;

    /// <summary>A reader for cases in the words of a vocabulary.</summary>
    public CaseReader(Vocabulary vocabulary)
    {
        ArgumentNullException.ThrowIfNull(vocabulary);
        _vocabulary = vocabulary;
    }

    /// <summary>Reads one case.</summary>
    /// <param name="file">The file.</param>
    /// <returns>The case, or null when there is an error; and every problem found, warnings too.</returns>
    public CaseReading Read(SourceFile file)
    {
        ArgumentNullException.ThrowIfNull(file);
        var bag = new DiagnosticBag();
        var tree = TreeReader.Read(file.Name, file.Content.Span, bag);
        var read = tree is null ? null : new CaseBuilder(_vocabulary, bag).Build(tree);
        return new CaseReading(bag.HasErrors ? null : read, [.. bag.Ordered()]);
    }
}

/// <summary>What reading a case file gave.</summary>
/// <param name="Case">The case, or null when the file has an error.</param>
/// <param name="Problems">Every problem found, in the order of the file.</param>
public sealed record CaseReading(Case? Case, ImmutableArray<Diagnostic> Problems);
