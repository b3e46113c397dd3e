using System.Globalization;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Wordprocessing;

namespace Criteria.Documents.Renderers.Word;

/// <summary>The lists of a Word file: one kind with bullets, one with numbers; each numbered list counts for itself.</summary>
internal sealed class WordNumbering
{
    /// <summary>The list of the reasons at the end.</summary>
    public const int Notes = 2;

    private const int Bullets = 1;
    private const int Numbers = 3;
    private readonly List<NumberingInstance> _lists =
    [
        new(new AbstractNumId { Val = Bullets }) { NumberID = Bullets },
        new(new AbstractNumId { Val = Notes }) { NumberID = Notes },
    ];

    /// <summary>The number of a new list.</summary>
    /// <param name="isOrdered">Whether its items are counted.</param>
    /// <param name="level">How many lists it stands in.</param>
    /// <param name="start">The first number.</param>
    public int Add(bool isOrdered, int level, int start)
    {
        if (!isOrdered)
        {
            return Bullets;
        }

        var id = _lists.Count + 1;
        _lists.Add(new NumberingInstance(new AbstractNumId { Val = Numbers }, new LevelOverride(new StartOverrideNumberingValue { Val = start }) { LevelIndex = level }) { NumberID = id });
        return id;
    }

    /// <summary>What the file says of its lists.</summary>
    public Numbering All() => new([Kind(Bullets, NumberFormatValues.Bullet, level => level % 2 == 0 ? "\u2022" : "\u2013"),
        Kind(Notes, NumberFormatValues.Decimal, level => string.Create(CultureInfo.InvariantCulture, $"[%{level + 1}]")),
        Kind(Numbers, NumberFormatValues.Decimal, level => string.Create(CultureInfo.InvariantCulture, $"%{level + 1}.")), .. _lists]);

    private static AbstractNum Kind(int id, NumberFormatValues format, Func<int, string> label) => new(
    [
        new MultiLevelType { Val = MultiLevelValues.HybridMultilevel },
        .. Enumerable.Range(0, WordMeasures.ListLevels).Select(level => (OpenXmlElement)new Level(
            new StartNumberingValue { Val = 1 },
            new NumberingFormat { Val = format },
            new LevelText { Val = label(level) },
            new LevelJustification { Val = LevelJustificationValues.Left },
            new PreviousParagraphProperties(new Indentation { Left = WordMeasures.Length((level + 1) * WordMeasures.ListStep), Hanging = WordMeasures.Length(WordMeasures.ListStep) }))
        {
            LevelIndex = level,
        }),
    ])
    {
        AbstractNumberId = id,
    };
}
