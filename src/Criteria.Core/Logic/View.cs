using Criteria.Core.Facts;

namespace Criteria.Core.Logic;

/// <summary>All that conditions may read: the facts of a case or night, and the conclusions of other criteria about it.</summary>
public sealed class View
{
    private readonly Conclusion?[] _conclusions;

    /// <summary>A view of facts, with room for conclusions.</summary>
    /// <param name="facts">The facts.</param>
    /// <param name="criteria">How many criteria there are.</param>
    public View(FactSet facts, int criteria)
    {
        ArgumentNullException.ThrowIfNull(facts);
        Facts = facts;
        _conclusions = new Conclusion?[criteria];
    }

    /// <summary>The facts.</summary>
    public FactSet Facts { get; }

    /// <summary>The conclusion of the criterion of that index; undetermined while there is none.</summary>
    public Conclusion this[int criterion]
    {
        get => _conclusions[criterion] ?? None;
        set => _conclusions[criterion] = value;
    }

    /// <summary>Takes the conclusion of the criterion of that index out again.</summary>
    public void Forget(int criterion) => _conclusions[criterion] = null;

    private static readonly Conclusion None = new(Standing.Undetermined, Truth.Unknown, -1, -1, null, "", []);
}
