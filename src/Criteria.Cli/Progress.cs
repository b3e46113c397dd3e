namespace Criteria.Cli;

/// <summary>Shows how far a long run is, to a person at a terminal only.</summary>
internal sealed class Progress(Terminal terminal, int total)
{
    private const int ShownFrom = 20;
    private const int Every = 10;

    private int _done;
    private bool _shown;

    public void Step()
    {
        _done++;
        if (terminal.Interactive && total >= ShownFrom && _done % Every == 0)
        {
            terminal.Error.Write($"\r{_done} of {total} cases");
            _shown = true;
        }
    }

    /// <summary>Takes the line away, so that nothing else is written into it.</summary>
    public void Clear()
    {
        if (_shown)
        {
            terminal.Error.Write($"\r{new string(' ', 40)}\r");
            _shown = false;
        }
    }
}
