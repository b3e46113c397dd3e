using Criteria.Core.Facts;
using Criteria.Core.Reading;

namespace Criteria.Core.Pasted;

/// <summary>Finds the figures of a pasted summary that stand with words of the vocabulary, and says what each may mean. It decides nothing.</summary>
public sealed class PastedTextReader
{
    private readonly Vocabulary _vocabulary;
    private readonly PhraseBook _book;

    /// <summary>A reader for texts in the words of a vocabulary.</summary>
    public PastedTextReader(Vocabulary vocabulary)
    {
        ArgumentNullException.ThrowIfNull(vocabulary);
        (_vocabulary, _book) = (vocabulary, new PhraseBook(vocabulary));
    }

    /// <summary>Reads one text.</summary>
    /// <param name="file">The text, in UTF-8.</param>
    public PastedReadingResult Read(SourceFile file)
    {
        ArgumentNullException.ThrowIfNull(file);
        var bag = new DiagnosticBag();
        var lines = PastedLines.Read(file, bag);
        if (bag.HasErrors)
        {
            return new PastedReadingResult(null, [.. bag.Ordered()]);
        }

        var items = new ItemReader(_book, _vocabulary);
        var layout = new LayoutReader([.. lines.Select(items.Read)]);
        var groups = new GroupReader(file.Name, lines, _vocabulary, new ValueForms(_vocabulary, lines.Any(NumberForms.HasDecimalComma)));
        foreach (var group in layout.Read())
        {
            groups.Read(group);
        }

        if (groups.Values.Count == 0)
        {
            bag.Add(PastedDiagnostics.NothingFound(file.Name));
        }

        var text = Contradictions.Mark(new PastedText([.. groups.Values], [.. groups.LeftOut], [.. layout.Nights]));
        return new PastedReadingResult(text, [.. bag.Ordered()]);
    }
}
