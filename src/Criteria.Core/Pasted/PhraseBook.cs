using System.Collections.Immutable;
using Criteria.Core.Facts;

namespace Criteria.Core.Pasted;

/// <summary>What a phrase of the vocabulary stands for.</summary>
internal enum PhraseKind
{
    /// <summary>The name of one fact or of several.</summary>
    Name = 0,

    /// <summary>A unit.</summary>
    Unit,

    /// <summary>Words that name a night before a number.</summary>
    Night,

    /// <summary>A word that changes nothing.</summary>
    PassOver,

    /// <summary>A word that makes it another figure.</summary>
    SetAside,
}

/// <summary>A phrase as tokens.</summary>
internal sealed record Phrase(PhraseKind Kind, ImmutableArray<Token> Tokens, ImmutableArray<FactDefinition> Facts, ImmutableArray<Unit> Units);

/// <summary>All phrases of a vocabulary, found by their first token.</summary>
internal sealed class PhraseBook
{
    private readonly Dictionary<string, Phrase[]> _byFirst;

    public PhraseBook(Vocabulary vocabulary)
    {
        var words = vocabulary.PrintedWords;
        var phrases = vocabulary.Facts.SelectMany(fact => fact.PrintedAs.Select(text => (PhraseKind.Name, text, (FactDefinition?)fact, (Unit?)null)))
            .Concat(words.Units.SelectMany(unit => unit.As.Select(text => (PhraseKind.Unit, text, (FactDefinition?)null, (Unit?)unit.Unit))))
            .Concat(Units.Symbols.Where(symbol => symbol.Length > 0).Select(symbol => (PhraseKind.Unit, symbol, (FactDefinition?)null, Units.Find(symbol))))
            .Concat(words.Nights.Select(text => (PhraseKind.Night, text, (FactDefinition?)null, (Unit?)null)))
            .Concat(words.PassOver.Select(text => (PhraseKind.PassOver, text, (FactDefinition?)null, (Unit?)null)))
            .Concat(words.SetAside.Select(text => (PhraseKind.SetAside, text, (FactDefinition?)null, (Unit?)null)));
        _byFirst = phrases.Select(phrase => (Kind: phrase.Item1, Tokens: Tokenizer.Cut(phrase.Item2), Fact: phrase.Item3, Unit: phrase.Item4)).Where(phrase => phrase.Tokens.Count > 0)
            .GroupBy(phrase => (phrase.Kind, Key: string.Join(' ', phrase.Tokens.Select(token => token.Text))))
            .Select(group => new Phrase(
                group.Key.Kind, [.. group.First().Tokens],
                [.. group.Select(phrase => phrase.Fact).OfType<FactDefinition>().Distinct()], [.. group.Select(phrase => phrase.Unit).OfType<Unit>().Distinct()]))
            .GroupBy(phrase => phrase.Tokens[0].Text, StringComparer.Ordinal)
            .ToDictionary(group => group.Key, group => group.OrderByDescending(phrase => phrase.Tokens.Length).ToArray(), StringComparer.Ordinal);
    }

    /// <summary>The longest phrase of a kind that stands there, or null.</summary>
    public Phrase? At(List<Token> tokens, int place, PhraseKind kind) => place < tokens.Count && _byFirst.TryGetValue(tokens[place].Text, out var phrases)
        ? phrases.FirstOrDefault(phrase => phrase.Kind == kind && Stands(phrase, tokens, place))
        : null;

    private static bool Stands(Phrase phrase, List<Token> tokens, int place) =>
        place + phrase.Tokens.Length <= tokens.Count && phrase.Tokens.Select((token, offset) => token.Matches(tokens[place + offset]) && (offset == 0 || !token.IsGlued || tokens[place + offset].IsGlued)).All(same => same);
}
