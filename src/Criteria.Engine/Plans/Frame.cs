using Criteria.Core.Facts;
using Criteria.Core.Logic;

namespace Criteria.Engine.Plans;

/// <summary>What is known and what was found of one case, or of one of its nights; used again for the next.</summary>
internal sealed class Frame(int criteria, int variables)
{
    /// <summary>The mark of a criterion that has more to its verdict than what its condition comes to.</summary>
    public const byte NotPlain = byte.MaxValue;

    private static readonly Verdict[] PlainVerdicts =
    [
        new(Standing.NotMet, Truth.Met, -1, -1, null),
        new(Standing.Undetermined, Truth.Met, -1, -1, null),
        new(Standing.Met, Truth.Met, -1, -1, null),
    ];

    private FactSet? _facts;
    private View? _view;

    /// <summary>For each variable the cells that are possible.</summary>
    public ulong[] Known { get; } = NewKnown(variables);

    /// <summary>For each plain criterion what its condition comes to, as a <see cref="Kleene"/> number; <see cref="NotPlain"/> for the others.</summary>
    public byte[] Truths { get; } = NewTruths(criteria);

    /// <summary>The verdict of each criterion that is not plain.</summary>
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

    /// <summary>The verdict of a criterion.</summary>
    public Verdict VerdictOf(int criterion) => Truths[criterion] is not NotPlain and var truth ? PlainVerdicts[truth] : Verdicts[criterion];

    /// <summary>Puts the verdicts that others ask for into the cells of their variables.</summary>
    public void Note(FindingVariable[] findings)
    {
        foreach (ref readonly var finding in findings.AsSpan())
        {
            Known[finding.Variable] = finding.Possible(in Verdicts[finding.Criterion]);
        }
    }

    private static byte[] NewTruths(int criteria)
    {
        var truths = new byte[criteria];
        Array.Fill(truths, NotPlain);
        return truths;
    }

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
