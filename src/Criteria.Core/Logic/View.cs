using Criteria.Core.Facts;

namespace Criteria.Core.Logic;

/// <summary>All that conditions may read: the facts of a case or night, and the conclusions of other criteria about it.</summary>
public sealed class View
{
    private readonly Verdict[] _verdicts;
    private Conclusion?[]? _conclusions;
    private View? _scratch;

    /// <summary>A view of facts, with room for conclusions.</summary>
    /// <param name="facts">The facts.</param>
    /// <param name="criteria">How many criteria there are.</param>
    public View(FactSet facts, int criteria)
    {
        ArgumentNullException.ThrowIfNull(facts);
        Facts = facts;
        _verdicts = new Verdict[criteria];
        Array.Fill(_verdicts, Verdict.None);
    }

    /// <summary>A view of other facts with the verdicts of another view, to be put anew where they depend on what differs.</summary>
    public View(View other, FactSet facts)
    {
        ArgumentNullException.ThrowIfNull(other);
        ArgumentNullException.ThrowIfNull(facts);
        Facts = facts;
        _verdicts = (Verdict[])other._verdicts.Clone();
    }

    /// <summary>A view over verdicts that are kept elsewhere.</summary>
    internal View(FactSet facts, Verdict[] verdicts) => (Facts, _verdicts) = (facts, verdicts);

    /// <summary>A view of a scratch copy of the facts over the same verdicts. Who fills in facts or puts in verdicts there puts both back.</summary>
    internal View Scratch => _scratch ??= new View(Facts.Scratch(), _verdicts);

    /// <summary>The facts.</summary>
    public FactSet Facts { get; }

    /// <summary>The conclusion of the criterion of that index; undetermined while there is none.</summary>
    public Conclusion this[int criterion]
    {
        get => _conclusions?[criterion] ?? None;
        set
        {
            ArgumentNullException.ThrowIfNull(value);
            (_conclusions ??= new Conclusion?[_verdicts.Length])[criterion] = value;
            _verdicts[criterion] = value.Verdict;
        }
    }

    /// <summary>What the criterion of that index comes to; undetermined while it was not evaluated.</summary>
    public ref readonly Verdict VerdictOf(int criterion) => ref _verdicts[criterion];

    /// <summary>Puts in what a criterion comes to, without its words.</summary>
    public void Put(int criterion, Verdict verdict) => _verdicts[criterion] = verdict;

    /// <summary>Takes the conclusion of the criterion of that index out again.</summary>
    public void Forget(int criterion)
    {
        _conclusions?[criterion] = null;
        _verdicts[criterion] = Verdict.None;
    }

    private static readonly Conclusion None = new(Verdict.None, "", []);
}
