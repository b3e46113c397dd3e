namespace Criteria.Documents.Renderers.Pdf;

/// <summary>The strips of a document in reading order, not yet parted into pages.</summary>
internal sealed class Flow
{
    private readonly List<Ink> _opening = [];
    private double _gap;

    /// <summary>The strips.</summary>
    public List<Strip> Strips { get; } = [];

    /// <summary>Begins an element of the structure with the next strip.</summary>
    public void Open(string tag) => _opening.Add(new OpenInk(tag));

    /// <summary>Draws something beside the next strip, and before it in reading order.</summary>
    public void Beside(Ink ink) => _opening.Add(ink);

    /// <summary>Ends the element begun last; one that holds nothing is left out.</summary>
    public void Close()
    {
        if (_opening is [.., OpenInk])
        {
            _opening.RemoveAt(_opening.Count - 1);
        }
        else if (_opening.Count > 0)
        {
            _opening.Add(new CloseInk());
        }
        else
        {
            Strips[^1].Closing.Add(new CloseInk());
        }
    }

    /// <summary>Leaves at least this space above the next strip.</summary>
    public void Gap(double gap) => _gap = gap;

    /// <summary>Adds a strip.</summary>
    public void Add(Strip strip)
    {
        strip.Before = Math.Max(strip.Before, _gap);
        _gap = 0;
        strip.Opening.AddRange(_opening);
        _opening.Clear();
        Strips.Add(strip);
    }
}
