using Criteria.Core.Facts;
using Criteria.Core.Logic;

namespace Criteria.Engine.Plans;

/// <summary>What is known and what was found of one case, or of one of its nights; used again for the next.</summary>
internal sealed class Frame(int criteria, int variables)
{
    private FactSet? _facts;
    private View? _view;

    /// <summary>For each variable the cells that are possible.</summary>
    public ulong[] Known { get; } = NewKnown(variables);

    /// <summary>For each variable the fact from which its cells were taken.</summary>
    public Fact?[] Taken { get; } = new Fact?[variables];

    /// <summary>The verdict of each criterion.</summary>
    public Verdict[] Verdicts { get; } = NewVerdicts(criteria);

    /// <summary>The facts.</summary>
    public FactSet Facts
    {
        get => _facts!;
        set
        {
            if (!ReferenceEquals(_facts, value))
            {
                (_facts, _view) = (value, null);
            }
        }
    }

    /// <summary>Facts and verdicts as the conditions that are asked want them. Most cases need none.</summary>
    public View View => _view ??= new View(Facts, Verdicts);

    private static ulong[] NewKnown(int variables)
    {
        var known = new ulong[variables];
        known[VariableTable.Fixed] = Cells.One(0);
        return known;
    }

    private static Verdict[] NewVerdicts(int criteria)
    {
        var verdicts = new Verdict[criteria];
        Array.Fill(verdicts, Verdict.None);
        return verdicts;
    }
}
