namespace Criteria.Engine;

/// <summary>How many cases an assessor will see. It decides how rules are prepared, never what they find.</summary>
public enum CasesExpected
{
    /// <summary>Many, or a live one: rules are compiled to machine code first, and then run fast.</summary>
    Many = 0,

    /// <summary>One, then the process ends: rules are interpreted, which starts sooner and runs slower.</summary>
    One,
}
