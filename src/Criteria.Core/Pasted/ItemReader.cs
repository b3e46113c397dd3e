using System.Collections.Immutable;
using Criteria.Core.Facts;

namespace Criteria.Core.Pasted;

/// <summary>Turns the tokens of a line into items.</summary>
internal sealed class ItemReader(PhraseBook book, Vocabulary vocabulary)
{
    private static readonly string[] Bounds = ["<", ">", "≤", "≥", "~", "±", "≈"];
    private static readonly string[] Fillers = [":", "=", "*", "_", "(", ")", "[", "]", "-", "#", "·", "…"];

    public List<Item> Read(string line)
    {
        var tokens = Tokenizer.Cut(line);
        var items = new List<Item>();
        for (var place = 0; place < tokens.Count;)
        {
            items.Add(Next(tokens, ref place));
        }

        MarkRules(items);
        MarkRanges(items);
        return items;
    }

    private Item Next(List<Token> tokens, ref int place)
    {
        var token = tokens[place];
        foreach (var kind in new[] { PhraseKind.Name, PhraseKind.Night, PhraseKind.SetAside })
        {
            if (book.At(tokens, place, kind) is not { } phrase)
            {
                continue;
            }

            var end = place + phrase.Tokens.Length;
            if (kind == PhraseKind.Night)
            {
                if (end < tokens.Count && tokens[end] is { Kind: TokenKind.Number, Text.Length: < 3 } number && number.Text.All(char.IsAsciiDigit))
                {
                    place = end + 1;
                    return new Item(ItemKind.Night, token.Start, number.End, number.Text.TrimStart('0'));
                }

                continue;
            }

            place = end;
            return new Item(kind == PhraseKind.Name ? ItemKind.Name : ItemKind.Aside, token.Start, tokens[end - 1].End, token.Text) { Facts = phrase.Facts };
        }

        switch (token.Kind)
        {
            case TokenKind.Border:
                place++;
                return new Item(ItemKind.Border, token.Start, token.End, "");
            case TokenKind.Date:
                place++;
                return new Item(ItemKind.Date, token.Start, token.End, token.Text);
            case TokenKind.Number or TokenKind.Clock:
                return Number(tokens, ref place);
            default:
                return Other(tokens, ref place);
        }
    }

    private Item Other(List<Token> tokens, ref int place)
    {
        var token = tokens[place];
        var unit = book.At(tokens, place, PhraseKind.Unit);
        var passed = book.At(tokens, place, PhraseKind.PassOver);
        if (unit is not null && unit.Tokens.Length > (passed?.Tokens.Length ?? 0))
        {
            place += unit.Tokens.Length;
            return new Item(ItemKind.Unit, token.Start, tokens[place - 1].End, token.Text) { Units = unit.Units };
        }

        place++;
        var kind = passed is not null || (token.Kind == TokenKind.Sign && Fillers.Contains(token.Text)) ? ItemKind.Filler
            : token.Is(",") || token.Is(".") ? ItemKind.Clause
            : ItemKind.Unknown;
        return new Item(kind, token.Start, token.End, token.Text);
    }

    private Item Number(List<Token> tokens, ref int place)
    {
        var first = tokens[place];
        var before = place > 0 ? tokens[place - 1] : default;
        var numbers = ImmutableArray.CreateBuilder<PrintedNumber>();
        var start = place;
        while (true)
        {
            var token = tokens[place++];
            var unit = book.At(tokens, place, PhraseKind.Unit);
            place += unit?.Tokens.Length ?? 0;
            numbers.Add(new PrintedNumber(token.Text, unit?.Units ?? [], token.Kind == TokenKind.Clock));

            // `7 h 12 min`, `7 hours, 12 minutes`, `5 ft 10 in`: a larger unit is followed by a smaller one.
            var next = place < tokens.Count && tokens[place].Is(",") ? place + 1 : place;
            if (unit is null || next >= tokens.Count || tokens[next].Kind != TokenKind.Number || !IsLarger(unit, tokens, next))
            {
                break;
            }

            place = next;
        }

        var fault = first.IsGlued ? "it hangs on a letter"
            : first.Kind == TokenKind.Number && IsPoint(tokens, start) ? "a point or comma stands before it"
            : before.Kind == TokenKind.Sign && Bounds.Contains(before.Text) ? "it is a bound"
            : before.Is("-") && before.End == first.Start ? "a minus sign stands before it"
            : before.Is("+") || before.Is("/") || before.Is("'") ? "a sign stands before it"
            : place < tokens.Count && (tokens[place].Is(":") || tokens[place].Is("=")) ? "it is part of a name"
            : null;
        return new Item(ItemKind.Value, first.Start, tokens[place - 1].End, first.Text) { Numbers = numbers.ToImmutable(), Fault = fault };
    }

    private bool IsLarger(Phrase unit, List<Token> tokens, int next)
    {
        var following = book.At(tokens, next + 1, PhraseKind.Unit);
        return following is null
            ? tokens[next].IsGlued && unit.Units.Any(larger => larger.Dimension == Dimension.Duration && larger.Factor > 1)
            : unit.Units.Any(larger => larger.Dimension is Dimension.Duration or Dimension.Length
                && following.Units.Any(smaller => smaller.Dimension == larger.Dimension && smaller.Factor < larger.Factor));
    }

    // `.5` is no 5; `....17.2` is a leader.
    private static bool IsPoint(List<Token> tokens, int place) => place > 0 && (tokens[place - 1].Is(".") || tokens[place - 1].Is(","))
        && tokens[place - 1].End == tokens[place].Start && !(place > 1 && tokens[place - 2].Is(".") && tokens[place - 2].End == tokens[place - 1].Start);

    // `5-15`, `5 - 15`, `5 to 15`: neither end is a value.
    private static void MarkRanges(List<Item> items)
    {
        for (var place = 1; place + 1 < items.Count; place++)
        {
            if ((items[place].IsSign("-") || items[place].IsSign("to") || items[place].IsSign("/")) && items[place - 1].Kind is ItemKind.Value or ItemKind.Date && items[place + 1].Kind == ItemKind.Value)
            {
                items[place - 1] = items[place - 1] with { Fault = "it is one end of a range" };
                items[place + 1] = items[place + 1] with { Fault = "it is one end of a range" };
            }
        }
    }

    // The first percentage behind the name of an index is its rule when an index has that rule; so is one that stands alone before it.
    private void MarkRules(List<Item> items)
    {
        for (var place = 0; place < items.Count; place++)
        {
            if (items[place].Kind == ItemKind.Name && items[place].Facts.Any(fact => fact.Index is not null))
            {
                var next = Skip(items, place + 1, 1);
                if (next < items.Count && IsRule(items[next]))
                {
                    items[next] = items[next] with { Kind = ItemKind.Rule };
                }

                var previous = Skip(items, place - 1, -1);
                if (previous >= 0 && IsRule(items[previous]) && IsFirst(items, previous))
                {
                    items[previous] = items[previous] with { Kind = ItemKind.Rule };
                }
            }
        }

        // A cell that holds nothing else is the head of a column.
        if (items.All(item => item.Kind is not ItemKind.Value || IsRule(item)) && items.Any(item => item.Kind is ItemKind.Value)
            && !items.TakeWhile(item => item.Kind != ItemKind.Border).Any(item => item.Kind == ItemKind.Name) && items.Any(item => item.Kind == ItemKind.Border))
        {
            for (var place = 0; place < items.Count; place++)
            {
                items[place] = items[place].Kind == ItemKind.Value ? items[place] with { Kind = ItemKind.Rule } : items[place];
            }
        }
    }

    private static int Skip(List<Item> items, int place, int step)
    {
        while (place >= 0 && place < items.Count && (items[place].Kind is ItemKind.Filler && !items[place].IsSign(":") || Bounds.Contains(items[place].Text)))
        {
            place += step;
        }

        return place;
    }

    private static bool IsFirst(List<Item> items, int place) => items.Take(place).Reverse().TakeWhile(item => item.Kind is not (ItemKind.Border or ItemKind.Clause)).All(item => item.Kind == ItemKind.Filler);

    private bool IsRule(Item item) => item is { Kind: ItemKind.Value, Numbers.Length: 1 } && item.Numbers[0].Units.Any(unit => unit.Dimension == Dimension.Share)
        && vocabulary.Indices.Any(index => RuleNumber(index.Type) == item.Numbers[0].Digits);

    /// <summary>The percentage of a rule: <c>3</c> of <c>3 % or arousal</c>.</summary>
    public static string RuleNumber(IndexType type) => type.Rule.Split(' ', '%')[0];
}
