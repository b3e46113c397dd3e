namespace Criteria.Core.Logic;

/// <summary>What a condition says of a case whose data may be incomplete (strong Kleene logic).</summary>
public enum Truth
{
    /// <summary>Open. Zero, so that a forgotten truth never reads as an answer.</summary>
    Unknown = 0,

    /// <summary>Settled: it does not hold, whatever is still unknown.</summary>
    NotMet = 1,

    /// <summary>Settled: it holds, whatever is still unknown.</summary>
    Met = 2,
}

/// <summary>Kleene's connectives.</summary>
public static class Truths
{
    /// <summary>Both. One part not met settles it, even when the other is unknown.</summary>
    public static Truth And(Truth left, Truth right) => (left, right) switch
    {
        (Truth.NotMet, _) or (_, Truth.NotMet) => Truth.NotMet,
        (Truth.Met, Truth.Met) => Truth.Met,
        _ => Truth.Unknown,
    };

    /// <summary>Either. One part met settles it.</summary>
    public static Truth Or(Truth left, Truth right) => (left, right) switch
    {
        (Truth.Met, _) or (_, Truth.Met) => Truth.Met,
        (Truth.NotMet, Truth.NotMet) => Truth.NotMet,
        _ => Truth.Unknown,
    };

    /// <summary>The opposite; unknown stays unknown.</summary>
    public static Truth Not(Truth truth) => truth switch
    {
        Truth.Met => Truth.NotMet,
        Truth.NotMet => Truth.Met,
        _ => Truth.Unknown,
    };

    /// <summary>A two-valued answer.</summary>
    public static Truth Of(bool holds) => holds ? Truth.Met : Truth.NotMet;

    /// <summary>The word for reports.</summary>
    public static string Words(this Truth truth) => truth switch
    {
        Truth.Met => "met",
        Truth.NotMet => "not met",
        _ => "unknown",
    };
}
