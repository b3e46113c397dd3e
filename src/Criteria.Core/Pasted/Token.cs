namespace Criteria.Core.Pasted;

/// <summary>What a token is.</summary>
internal enum TokenKind
{
    /// <summary>Letters.</summary>
    Word = 0,

    /// <summary>Digits with points or commas among them.</summary>
    Number,

    /// <summary>Hours and minutes, or minutes and seconds: digits with colons.</summary>
    Clock,

    /// <summary>A date, in whatever order of its parts.</summary>
    Date,

    /// <summary>Any other sign.</summary>
    Sign,

    /// <summary>The border of two cells: a tab, two spaces, an upright line, a semicolon.</summary>
    Border,
}

/// <summary>A piece of a line.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Text">Its text in small letters, wide and raised forms made plain.</param>
/// <param name="Start">Where it starts, from 0.</param>
/// <param name="End">Where it ends, exclusive.</param>
/// <param name="IsGlued">Whether a letter or a digit stands directly before it.</param>
internal readonly record struct Token(TokenKind Kind, string Text, int Start, int End, bool IsGlued)
{
    public bool Is(string sign) => Kind == TokenKind.Sign && Text == sign;

    public bool Matches(Token other) => Kind == other.Kind && Text == other.Text;
}
