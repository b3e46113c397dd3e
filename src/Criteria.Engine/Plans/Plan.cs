using Criteria.Core.Cases;
using Criteria.Core.Facts;
using Criteria.Core.Rulesets;
using Criteria.Engine.Settling;

namespace Criteria.Engine.Plans;

/// <summary>
/// The criteria of a selection in an order in which each comes after what it reads, to be run over many cases, or over many
/// completions of one. The same conditions as those of an assessment, laid flat; verdicts only, no traces.
/// </summary>
/// <remarks>Thread-safe; the sheets it fills are not.</remarks>
public sealed class Plan
{
    private readonly PlanProgram _ofCase;
    private readonly PlanProgram _ofNight;

    /// <summary>The plan of a selection of rules.</summary>
    /// <param name="rules">The rules.</param>
    /// <param name="cases">Whether compiling to machine code is worth its time: about a tenth of a second for some hundred criteria.</param>
    public Plan(RulesInForce rules, CasesExpected cases = CasesExpected.One)
        : this(rules, cases, new Settler(rules))
    {
    }

    /// <summary>A plan that leaves open what Kleene logic leaves open, and does not try what every completion of an open case agrees on.</summary>
    /// <param name="rules">The rules.</param>
    /// <param name="cases">Whether compiling to machine code is worth its time.</param>
    public static Plan WithoutSettling(RulesInForce rules, CasesExpected cases = CasesExpected.One) => new(rules, cases, null);

    private Plan(RulesInForce rules, CasesExpected cases, Settler? settler)
    {
        ArgumentNullException.ThrowIfNull(rules);
        (Rules, Settler) = (rules, settler);
        var ordered = rules.EvaluationOrder.Select(index => rules.Criteria[index]).ToLookup(criterion => criterion.PerNight);
        _ofCase = new PlanProgram(rules, [.. ordered[false]], settler, cases == CasesExpected.Many);
        _ofNight = new PlanProgram(rules, [.. ordered[true]], settler, cases == CasesExpected.Many);
    }

    /// <summary>The rules.</summary>
    public RulesInForce Rules { get; }

    /// <summary>What settles open verdicts; null where that is not wanted.</summary>
    internal Settler? Settler { get; }

    /// <summary>Verdicts on a case.</summary>
    public VerdictSheet Run(Case subject)
    {
        ArgumentNullException.ThrowIfNull(subject);
        var sheet = NewSheet();
        Run(sheet, subject);
        return sheet;
    }

    /// <summary>Verdicts on a case given by its facts.</summary>
    /// <param name="ofCase">The facts of the case.</param>
    /// <param name="nights">For each night the facts of the case and its own. A case without a night is asked about as one whose night is unknown.</param>
    public VerdictSheet Run(FactSet ofCase, params IReadOnlyList<FactSet> nights)
    {
        ArgumentNullException.ThrowIfNull(ofCase);
        ArgumentNullException.ThrowIfNull(nights);
        var sheet = NewSheet();
        Run(sheet, ofCase, nights);
        return sheet;
    }

    /// <summary>A sheet that can be filled again and again: a row of cases or completions then allocates next to nothing.</summary>
    public VerdictSheet NewSheet() => new(this);

    /// <summary>Fills a sheet of this plan with the verdicts on a case.</summary>
    /// <exception cref="ArgumentException">The sheet is of another plan.</exception>
    public void Run(VerdictSheet sheet, Case subject)
    {
        ArgumentNullException.ThrowIfNull(subject);
        Begin(sheet, subject.Nights.Length);
        _ofCase.Run(sheet.OfCase, subject.Facts, given: null);
        for (var night = 0; night < sheet.Nights; night++)
        {
            RunNight(sheet, night, subject.Nights.IsEmpty ? subject.Facts : subject.Nights[night].Facts);
        }
    }

    /// <summary>Fills a sheet of this plan with the verdicts on a case given by its facts.</summary>
    /// <exception cref="ArgumentException">The sheet is of another plan.</exception>
    public void Run(VerdictSheet sheet, FactSet ofCase, params IReadOnlyList<FactSet> nights)
    {
        ArgumentNullException.ThrowIfNull(ofCase);
        ArgumentNullException.ThrowIfNull(nights);
        Begin(sheet, nights.Count);
        _ofCase.Run(sheet.OfCase, ofCase, given: null);
        for (var night = 0; night < sheet.Nights; night++)
        {
            RunNight(sheet, night, nights.Count == 0 ? ofCase : nights[night]);
        }
    }

    /// <summary>A case in the cells of this plan, to be run more than once or beside many others.</summary>
    public PreparedCase Prepare(Case subject)
    {
        ArgumentNullException.ThrowIfNull(subject);
        return new PreparedCase(this, _ofCase.Prepare(subject.Facts), subject.Nights.IsEmpty ? [_ofNight.Prepare(subject.Facts)] : [.. subject.Nights.Select(night => _ofNight.Prepare(night.Facts))]);
    }

    /// <summary>Fills a sheet of this plan with the verdicts on a case that it prepared.</summary>
    /// <exception cref="ArgumentException">The sheet or the case is of another plan.</exception>
    public void Run(VerdictSheet sheet, PreparedCase subject)
    {
        ArgumentNullException.ThrowIfNull(subject);
        if (subject.Plan != this)
        {
            throw new ArgumentException("a case of another plan", nameof(subject));
        }

        Begin(sheet, subject.Nights.Length);
        _ofCase.Run(sheet.OfCase, subject.OfCase, given: null);
        for (var night = 0; night < subject.Nights.Length; night++)
        {
            _ofNight.Run(sheet.OfNight(night), subject.Nights[night], sheet.OfCase);
        }
    }

    /// <summary>A frame for the verdicts on the case.</summary>
    internal Frame NewCaseFrame() => _ofCase.NewFrame();

    /// <summary>A frame for the verdicts on a night.</summary>
    internal Frame NewNightFrame() => _ofNight.NewFrame();

    private void Begin(VerdictSheet sheet, int nights)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        if (sheet.Plan != this)
        {
            throw new ArgumentException("a sheet of another plan", nameof(sheet));
        }

        sheet.Begin(Math.Max(1, nights));
    }

    private void RunNight(VerdictSheet sheet, int night, FactSet facts) => _ofNight.Run(sheet.OfNight(night), facts, sheet.OfCase);
}
