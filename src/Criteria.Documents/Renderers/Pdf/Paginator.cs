namespace Criteria.Documents.Renderers.Pdf;

/// <summary>A strip on a page.</summary>
/// <param name="Strip">The strip.</param>
/// <param name="Y">From the top of the text area.</param>
/// <param name="Repeated">Whether it was read before: column heads drawn once more.</param>
internal readonly record struct Placed(Strip Strip, double Y, bool Repeated);

/// <summary>Parts strips into pages.</summary>
internal sealed class Paginator(double height)
{
    private readonly List<List<Placed>> _pages = [[]];
    private double _y;

    /// <summary>The pages, at least one.</summary>
    public IReadOnlyList<IReadOnlyList<Placed>> Part(IEnumerable<Strip> strips)
    {
        var chunk = new List<Strip>();
        foreach (var strip in strips)
        {
            chunk.Add(strip);
            if (!strip.KeepWithNext)
            {
                PlaceTogether(chunk);
                chunk.Clear();
            }
        }

        PlaceTogether(chunk);
        return _pages;
    }

    private void PlaceTogether(List<Strip> chunk)
    {
        if (chunk.Count == 0)
        {
            return;
        }

        var needed = chunk.Sum(strip => strip.Before + strip.Height) - (_y > 0 ? 0 : chunk[0].Before);
        var needsSplit = chunk.Exists(strip => strip.Split is not null) && _y + needed > height;
        if (_y + needed > height && !needsSplit && FitsOnFresh(chunk))
        {
            Turn(chunk[0]);
        }

        foreach (var strip in chunk)
        {
            Place(strip);
        }
    }

    private bool FitsOnFresh(List<Strip> chunk) => chunk.Sum(strip => strip.Before + strip.Height) - chunk[0].Before + (chunk[0].Head?.Height ?? 0) <= height;

    private void Place(Strip strip)
    {
        var before = _y > 0 ? strip.Before : 0;
        if (_y + before + strip.Height > height && strip.Split is not null)
        {
            PlaceParts(strip);
            return;
        }

        if (_y + before + strip.Height > height && _pages[^1].Count > 0)
        {
            Turn(strip);
            before = 0;
        }

        Put(strip, before);
    }

    private void PlaceParts(Strip strip)
    {
        if (strip.Split!(height - _y) is not var (first, rest))
        {
            if (_y > (strip.Head?.Height ?? 0))
            {
                Turn(strip);
                Place(strip);
            }
            else
            {
                Put(strip, 0);
            }

            return;
        }

        first.Opening.AddRange(strip.Opening);
        rest.Closing.AddRange(strip.Closing);
        Put(first, 0);
        Turn(rest);
        Place(rest);
    }

    private void Put(Strip strip, double before)
    {
        _pages[^1].Add(new Placed(strip, _y + before, false));
        _y += before + strip.Height;
    }

    private void Turn(Strip next)
    {
        _pages.Add([]);
        _y = 0;
        if (next.Head is { } head)
        {
            _pages[^1].Add(new Placed(head, 0, true));
            _y = head.Height;
        }
    }
}
