namespace Criteria.Core.Measures;

/// <summary>The names of the measures that a computed fact may use.</summary>
internal static class MeasureNames
{
    public const string BodyMassIndex = "body mass index";
    public const string ShortestOf = "shortest of";
    public const string FirstSupplied = "first supplied";
    public const string EventsOf = "events of";
    public const string TimeOf = "time of";
    public const string RateOver = "rate over";
    public const string SumOf = "sum of";
    public const string PartOf = "part of";
    public const string OnlyStartOf = "only start of";
    public const string BestRun = "best run";
    public const string RateBefore = "rate before therapy";
    public const string SameTypeBefore = "same type before therapy";
    public const string SameWordBefore = "same word before therapy";
    public const string NightWith = "a night with";

    /// <summary>Used by index facts; a vocabulary file does not name it.</summary>
    public const string EventRate = "event rate";

    /// <summary>Events over time as far as written times are exact; used by index facts too.</summary>
    public const string CountedRate = "counted rate";

    /// <summary>Those that look at the nights of a case.</summary>
    public static readonly string[] OverNights = [RateBefore, SameTypeBefore, SameWordBefore, NightWith];

    /// <summary>Those that a vocabulary file may name.</summary>
    public static readonly string[] All = [BodyMassIndex, ShortestOf, FirstSupplied, EventsOf, TimeOf, RateOver, SumOf, PartOf, OnlyStartOf, BestRun, RateBefore, SameTypeBefore, SameWordBefore, NightWith];
}
