using System.Collections.Immutable;
using System.Globalization;
using Criteria.Core.Facts;
using Criteria.Core.Logic;
using Criteria.Core.Reading;

namespace Criteria.Core.Rulesets;

/// <summary>Reads one comparison: the leaves of <c>docs/rule-language.md</c>.</summary>
internal sealed class LeafReader(BindingContext context)
{
    /// <summary>The condition, or null (and a diagnostic).</summary>
    /// <param name="node">The comparison.</param>
    /// <param name="gapsAllowed">Whether it may ask that a fact is not recorded: only a caution may.</param>
    public Predicate? Read(ScalarNode node, bool gapsAllowed = false)
    {
        var cursor = new LeafCursor(node);
        var (name, span) = cursor.Take();
        if (context.Setting(name) is { } setting)
        {
            return SettingLeaf(setting, cursor);
        }

        if (context.Shapes.TryGetValue(name, out var shape))
        {
            return new FindingLeafReader(context, shape, span).Read(cursor);
        }

        if (context.Fact(name, span) is { } fact)
        {
            return FactLeaf(fact, span, cursor, gapsAllowed);
        }

        context.ReportUnknown(name, span);
        return null;
    }

    /// <summary>A date relation without its left side: <c>on or before night.date</c>.</summary>
    public DateRelation? ReadDateRelation(ScalarNode node)
    {
        var cursor = new LeafCursor(node);
        return DateRelation(cursor);
    }

    /// <summary>A date relation to another record, whose date is already known: the key <c>on or after</c> of a map.</summary>
    public DateRelation? ReadDateRelation(string words, SourceSpan span, RecordAnchor anchor) =>
        DateRelation(new LeafCursor(new ScalarNode(words, Quoted: false, span)), anchor);

    /// <summary>Reads an operator and a number for an attribute: <c>&gt;= 2</c>.</summary>
    public (Operator Comparison, Ratio Bound, string Text)? ReadBound(ScalarNode node, FactDefinition fact)
    {
        var cursor = new LeafCursor(node);
        if (!Operators.TryFind(cursor.Peek(), out var comparison))
        {
            return Unexpected<(Operator, Ratio, string)?>(cursor, "a comparison sign and a number");
        }

        cursor.Take();
        return Quantity(fact, cursor) is { } bound ? (comparison, bound.Base, bound.Written) : null;
    }

    private Predicate? FactLeaf(FactDefinition fact, SourceSpan span, LeafCursor cursor, bool gapsAllowed)
    {
        if (cursor.TakeWords("is", "recorded"))
        {
            return End(cursor, new RecordedLeaf(fact, context.Vocabulary));
        }

        if (cursor.Peek() == "is" && cursor.Peek(1) == "not" && cursor.Peek(2) == "recorded")
        {
            cursor.Take();
            var (_, notSpan) = cursor.Take();
            cursor.Take();
            if (gapsAllowed)
            {
                return End(cursor, new NotRecordedLeaf(fact, context.Vocabulary));
            }

            context.Bag.Add(RulesetDiagnostics.UndeterminedAsked("is not recorded", notSpan));
            return null;
        }

        return fact.Kind switch
        {
            FactKind.Number or FactKind.Count or FactKind.Duration => NumberLeaf(fact, cursor),
            FactKind.YesNo => YesNoLeaf(fact, cursor),
            FactKind.Choice => ChoiceLeaf(fact, cursor),
            FactKind.Code => CodeLeaf(fact, cursor),
            FactKind.Date => DateRelation(cursor) is { } relation ? new DateLeaf(fact, relation, context.Vocabulary) : null,
            _ => WrongKind<Predicate>(fact.Id, fact.Kind == FactKind.Text ? "a text" : "a list of times", "rules do not read it", span),
        };
    }

    private FactLeaf? NumberLeaf(FactDefinition fact, LeafCursor cursor)
    {
        if (cursor.TakeWords("agrees", "with"))
        {
            return Other(fact, cursor) is { } figure ? End(cursor, new AgreementLeaf(fact, figure, context.Vocabulary)) : null;
        }

        if (!Operators.TryFind(cursor.Peek(), out var comparison))
        {
            return Unexpected<NumberLeaf>(cursor, "one of `>=`, `>`, `<=`, `<`, `=`, `!=`, or `agrees with`, after a number");
        }

        cursor.Take();
        var rounding = fact.Index is not null || fact.Rounded || fact.Computed is not null ? context.Ruleset.Rounding : Rounding.None;
        var share = Share(cursor);
        if (share is not null || context.Vocabulary.Find(cursor.Peek()) is not null)
        {
            return Other(fact, cursor) is { } other
                ? End(cursor, new NumberLeaf(fact, comparison, share ?? (1, ""), other, rounding, context.Vocabulary))
                : null;
        }

        return Quantity(fact, cursor) is { } bound
            ? new NumberLeaf(fact, comparison, bound.Base, bound.Written, rounding, context.Vocabulary)
            : null;
    }

    // `2 times`, `50 % of`: at most four digits, so that products stay exact.
    private static (Ratio Factor, string Words)? Share(LeafCursor cursor)
    {
        const int Hundred = 100;
        var text = cursor.Peek();
        var isShare = cursor.Peek(1) == "%" && cursor.Peek(2) == "of";
        if ((!isShare && cursor.Peek(1) != "times") || text.Length > 5 || !text.All(c => char.IsAsciiDigit(c) || c == '.')
            || !decimal.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) || number <= 0)
        {
            return null;
        }

        cursor.Take();
        cursor.Take();
        if (isShare)
        {
            cursor.Take();
        }

        return isShare ? (Ratio.Of(number, Hundred), $"{text} % of ") : (number, $"{text} times ");
    }

    // Another fact of the same dimension, or null (and a diagnostic).
    private FactDefinition? Other(FactDefinition fact, LeafCursor cursor)
    {
        var (name, span) = cursor.Take();
        if (context.Fact(name, span) is not { } other)
        {
            context.ReportUnknown(name, span);
            return null;
        }

        if (other.IsNumeric && other.Unit.Dimension == fact.Unit.Dimension)
        {
            return other;
        }

        context.Bag.Add(RulesetDiagnostics.WrongDimension(name, fact, Units.Of(fact.Unit.Dimension), span));
        return null;
    }

    private Quantity? Quantity(FactDefinition fact, LeafCursor cursor)
    {
        var (text, start) = cursor.Rest();
        return Quantities.Read(text, fact, context.Bag, (at, length) => cursor.Part(start + at, length));
    }

    private YesNoLeaf? YesNoLeaf(FactDefinition fact, LeafCursor cursor)
    {
        if (cursor.AtEnd)
        {
            return new YesNoLeaf(fact, expected: true, context.Vocabulary);
        }

        if (!cursor.TakeWords("=") || YesNoWords.Read(cursor.Peek()) is not { } expected)
        {
            return Unexpected<YesNoLeaf>(cursor, "nothing, `= yes` or `= no` after a yes/no fact");
        }

        cursor.Take();
        return End(cursor, new YesNoLeaf(fact, expected, context.Vocabulary));
    }

    private ChoiceLeaf? ChoiceLeaf(FactDefinition fact, LeafCursor cursor)
    {
        if (!cursor.TakeWords("is"))
        {
            return Unexpected<ChoiceLeaf>(cursor, $"`is` and one of {Wording.List(fact.Choices)}");
        }

        var negated = WordList.TakeNot(cursor, fact.Choices);
        var words = Words(cursor, fact.Id, fact.Choices);
        return words.IsDefaultOrEmpty ? null : new ChoiceLeaf(fact, words, negated, context.Vocabulary);
    }

    // `among SET on DATE`: a code set may have had other codes on another day.
    private CodeLeaf? CodeLeaf(FactDefinition fact, LeafCursor cursor)
    {
        if (!cursor.TakeWords("among"))
        {
            return Unexpected<CodeLeaf>(cursor, "`among`, a code set, `on` and a date fact, after a code");
        }

        var (id, span) = cursor.Take();
        var fitting = context.Vocabulary.CodeSets.Where(set => set.System == fact.System).Select(set => set.Id).ToArray();
        if (!fitting.Contains(id))
        {
            context.Bag.Add(ReadingDiagnostics.UnknownWord(Wording.Quote(id), $"a code set of {fact.System}", NearestName.Of(id, fitting), fitting, span));
            return null;
        }

        if (!cursor.TakeWords("on"))
        {
            return Unexpected<CodeLeaf>(cursor, "`on` and a date fact: codes change from year to year");
        }

        var (name, dateSpan) = cursor.Take();
        if (name.Length == 0 || context.Fact(name, dateSpan) is not { } date)
        {
            context.ReportUnknown(name, dateSpan);
            return null;
        }

        return date.Kind == FactKind.Date
            ? End(cursor, new CodeLeaf(fact, context.Vocabulary.CodeSet(id)!, date, context.Vocabulary))
            : WrongKind<CodeLeaf>(name, "not a date", "a code set is read on a date", dateSpan);
    }

    private Constant? SettingLeaf(Setting setting, LeafCursor cursor)
    {
        if (!cursor.TakeWords("is"))
        {
            return Unexpected<Constant>(cursor, $"`is` and one of {Wording.List(setting.Allowed)}");
        }

        var negated = WordList.TakeNot(cursor, setting.Allowed);
        var words = Words(cursor, setting.Name, setting.Allowed);
        return words.IsDefaultOrEmpty
            ? null
            : new Constant(words.Contains(setting.Is) != negated, $"setting {setting.Name} is {(negated ? "not " : "")}{string.Join(" or ", words)} (it is {setting.Is})");
    }

    // The rest of the line: one word of several letters, or several with `or` between them.
    private ImmutableArray<string> Words(LeafCursor cursor, string name, ImmutableArray<string> allowed) =>
        WordList.Read(cursor, name, allowed, context.Bag);

    private DateRelation? DateRelation(LeafCursor cursor, RecordAnchor? record = null)
    {
        var order = cursor.TakeWords("on", "or", "before") ? DateOrder.OnOrBefore
            : cursor.TakeWords("on", "or", "after") ? DateOrder.OnOrAfter
            : cursor.TakeWords("on") ? DateOrder.On
            : cursor.TakeWords("before") ? DateOrder.Before
            : cursor.TakeWords("after") ? DateOrder.After
            : (DateOrder?)null;
        if (order is { } simple)
        {
            return Anchored(cursor, record, (anchor, date) => new DateRelation { Order = simple, Anchor = anchor, FixedAnchor = date, Record = record, Vocabulary = context.Vocabulary });
        }

        if (!cursor.TakeWords("within"))
        {
            return Unexpected<DateRelation>(cursor, "`before`, `on or before`, `on`, `on or after`, `after` or `within`");
        }

        return cursor.TakeWords("day") ? DayWindow(cursor, record) : CalendarWindow(cursor, record);
    }

    private DateRelation? DayWindow(LeafCursor cursor, RecordAnchor? record)
    {
        var place = cursor.Here();
        if (Whole(cursor) is not { } first || !cursor.TakeWords("to", "day") || Whole(cursor) is not { } last || !cursor.TakeWords("after") || last < first)
        {
            return Unexpected<DateRelation>(cursor, "`within day 31 to day 91 after` and a date");
        }

        if (context.Ruleset.NumberOfStartDay is not { } start)
        {
            context.Bag.Add(RulesetDiagnostics.DayCountMissing(place));
            return null;
        }

        return Anchored(cursor, record, (anchor, date) => new DateRelation
        {
            Order = DateOrder.WithinDays,
            Anchor = anchor,
            FixedAnchor = date,
            Record = record,
            FirstDay = first,
            LastDay = last,
            NumberOfStart = start,
            Vocabulary = context.Vocabulary,
        });
    }

    private DateRelation? CalendarWindow(LeafCursor cursor, RecordAnchor? record)
    {
        if (Whole(cursor) is not { } count)
        {
            return Unexpected<DateRelation>(cursor, "`day N to day N after`, or a number of days, weeks, months or years");
        }

        var unit = cursor.TakeWords("days") ? CalendarUnit.Days
            : cursor.TakeWords("weeks") ? CalendarUnit.Weeks
            : cursor.TakeWords("months") ? CalendarUnit.Months
            : cursor.TakeWords("years") ? CalendarUnit.Years
            : (CalendarUnit?)null;
        var order = cursor.TakeWords("before") ? DateOrder.WithinBefore : cursor.TakeWords("after") ? DateOrder.WithinAfter : (DateOrder?)null;
        if (unit is not { } units || order is not { } side)
        {
            return Unexpected<DateRelation>(cursor, "`days`, `weeks`, `months` or `years`, then `before` or `after`");
        }

        return Anchored(cursor, record, (anchor, date) => new DateRelation
        {
            Order = side,
            Anchor = anchor,
            FixedAnchor = date,
            Record = record,
            Count = count,
            Unit = units,
            Vocabulary = context.Vocabulary,
        });
    }

    private DateRelation? Anchored(LeafCursor cursor, RecordAnchor? record, Func<FactDefinition?, DateOnly?, DateRelation> make)
    {
        if (record is not null)
        {
            return End(cursor, make(null, null));
        }

        var (name, span) = cursor.Take();
        if (Dates.TryRead(name, out var date))
        {
            return End(cursor, make(null, date));
        }

        if (name.Length == 0 || context.Fact(name, span) is not { } fact)
        {
            context.ReportUnknown(name, span);
            return null;
        }

        return fact.Kind == FactKind.Date
            ? End(cursor, make(fact, null))
            : WrongKind<DateRelation>(name, "not a date", "a date relation needs a date fact or a date as 2026-06-03", span);
    }

    // At most five digits: more is no number of days in any rule.
    private static int? Whole(LeafCursor cursor)
    {
        var text = cursor.Peek();
        if (text.Length is 0 or > 5 || !text.All(char.IsAsciiDigit))
        {
            return null;
        }

        cursor.Take();
        return int.Parse(text, CultureInfo.InvariantCulture);
    }

    private T? WrongKind<T>(string name, string isA, string use, SourceSpan span)
        where T : class
    {
        context.Bag.Add(RulesetDiagnostics.WrongKind(name, isA, use, span));
        return null;
    }

    private T? Unexpected<T>(LeafCursor cursor, string expected)
    {
        context.Bag.Add(RulesetDiagnostics.LeafSyntax(cursor.DescribeNext(), expected, cursor.Here()));
        return default;
    }

    private T? End<T>(LeafCursor cursor, T made)
        where T : class =>
        cursor.AtEnd ? made : Unexpected<T>(cursor, "the end of the comparison");
}
