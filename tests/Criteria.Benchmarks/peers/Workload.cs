using static Criteria.Benchmarks.Peers.Condition;

namespace Criteria.Benchmarks.Peers;

/// <summary>Fifty made-up criteria with the kinds of conditions that rulesets have. Their figures mean nothing.</summary>
internal static class Workload
{
    /// <summary>The facts: numbers with their range, yes/no facts, choices with their words.</summary>
    public static readonly (string Name, int From, int To)[] Numbers =
    [
        ("age", 18, 90), ("neck", 32, 50), ("weight", 50, 150), ("epworth_total", 0, 24), ("bicarbonate", 20, 34),
        ("isi_total", 0, 28), ("lvef", 20, 70), ("spo2_lowest", 60, 95), ("spo2_mean", 86, 98),
    ];

    public static readonly string[] Answers =
    [
        "hypertension", "habitual_snoring", "witnessed_apneas", "daytime_sleepiness", "stroke_history", "ischemic_heart_disease",
        "insomnia", "mood_disorder", "impaired_cognition", "technically_adequate",
    ];

    public static readonly (string Name, string[] Words)[] Choices =
    [
        ("sex", ["male", "female"]), ("mallampati", ["I", "II", "III", "IV"]), ("nyha_class", ["I", "II", "III", "IV"]),
        ("recorder", ["type I", "type II", "type III", "type IV", "PAT set"]), ("scoring", ["manual", "edited", "automatic"]),
    ];

    /// <summary>The criteria, each after those that it reads.</summary>
    public static readonly Condition[] Criteria =
    [
        /* 0 */ Age(">=", 50),
        /* 1 */ All(Male, Neck(">=", 43)),
        /* 2 */ All(Is("sex", "female"), Neck(">=", 41)),
        /* 3 */ Any(new Met(1), new Met(2)),
        /* 4 */ new Some(3, Snoring, Sleepy, Apneas, Pressure, Age(">", 50), Male),
        /* 5 */ Epworth(">", 10),
        /* 6 */ All(Epworth(">", 10), Epworth("<=", 15)),
        /* 7 */ Any(Epworth(">", 15), Sleepy),
        /* 8 */ new Not(Any(Sleepy, Snoring)),
        /* 9 */ Any(Pressure, Heart, Stroke),
        /* 10 */ Any(Sleepy, Cognition, Mood, Insomnia, Pressure, Heart, Stroke),
        /* 11 */ All(Lowest("<", 80), Mean("<", 92)),
        /* 12 */ Any(Lowest("<", 70), All(Lowest("<", 85), Heart)),
        /* 13 */ All(Mean(">=", 90), new Not(Stroke)),
        /* 14 */ Any(Is("recorder", "type III", "PAT set"), All(Is("recorder", "type IV"), Is("scoring", "manual"))),
        /* 15 */ All(Is("scoring", "manual", "edited"), Adequate),
        /* 16 */ All(new Met(14), new Met(15)),
        /* 17 */ All(new Not(Is("scoring", "automatic")), new Not(Is("recorder", "type IV"))),
        /* 18 */ Bicarbonate(">=", 28),
        /* 19 */ All(new Met(18), Weight(">", 110), Mean("<", 93)),
        /* 20 */ Any(Is("mallampati", "III", "IV"), Neck(">", 44)),
        /* 21 */ new Some(2, Is("mallampati", "IV"), Neck(">=", 42), Weight(">=", 100)),
        /* 22 */ All(Isi(">=", 15), Insomnia),
        /* 23 */ All(Isi(">=", 8), Isi("<", 15)),
        /* 24 */ Any(Isi(">=", 22), All(Isi(">=", 15), Mood)),
        /* 25 */ All(Lvef("<=", 45), Is("nyha_class", "II", "III", "IV")),
        /* 26 */ Any(new Met(25), All(Lvef("<", 30), Heart)),
        /* 27 */ All(new Not(new Met(25)), Pressure),
        /* 28 */ Any(Is("nyha_class", "III", "IV"), Lvef("<", 35)),
        /* 29 */ new Some(2, Pressure, Heart, Stroke, Lvef("<=", 45)),
        /* 30 */ All(new Met(4), new Not(new Met(26)), new Not(new Met(19))),
        /* 31 */ All(new Met(30), new Met(16)),
        /* 32 */ Any(Age("<", 30), All(Age("<", 40), new Not(Pressure))),
        /* 33 */ new Some(4, Snoring, Apneas, Sleepy, Pressure, Male, Age(">", 50), Neck(">", 40), Weight(">", 105)),
        /* 34 */ All(new Met(33), Any(new Met(3), new Met(20))),
        /* 35 */ new Not(All(Snoring, Apneas)),
        /* 36 */ All(Weight(">=", 80), Weight("<", 120)),
        /* 37 */ Any(All(Weight(">", 130), Age("<", 60)), All(Weight(">", 120), Sleepy)),
        /* 38 */ All(Mean(">=", 92), Lowest(">=", 85), Adequate),
        /* 39 */ Any(new Not(new Met(38)), new Met(12)),
        /* 40 */ All(Cognition, Any(Age(">=", 70), Stroke)),
        /* 41 */ Any(All(Mood, Insomnia), All(Mood, Sleepy), All(Insomnia, Sleepy)),
        /* 42 */ All(new Met(9), new Met(5), new Not(Male)),
        /* 43 */ Any(All(Male, Age(">=", 60)), All(Is("sex", "female"), Age(">=", 65))),
        /* 44 */ All(Any(Snoring, Apneas), Any(Sleepy, new Met(5)), Any(new Met(9), new Met(43))),
        /* 45 */ new Some(2, new Met(44), new Met(34), new Met(21)),
        /* 46 */ All(Lowest(">", 65), Lowest("<=", 88), new Not(new Met(11))),
        /* 47 */ Any(Is("recorder", "type I", "type II"), new Not(Adequate)),
        /* 48 */ All(new Met(45), new Met(10), Is("scoring", "manual")),
        /* 49 */ Any(new Met(48), All(new Met(31), new Met(7))),
    ];

    private static Condition Male => Is("sex", "male");
    private static Condition Snoring => new Yes("habitual_snoring");
    private static Condition Sleepy => new Yes("daytime_sleepiness");
    private static Condition Apneas => new Yes("witnessed_apneas");
    private static Condition Pressure => new Yes("hypertension");
    private static Condition Heart => new Yes("ischemic_heart_disease");
    private static Condition Stroke => new Yes("stroke_history");
    private static Condition Insomnia => new Yes("insomnia");
    private static Condition Mood => new Yes("mood_disorder");
    private static Condition Cognition => new Yes("impaired_cognition");
    private static Condition Adequate => new Yes("technically_adequate");

    private static Condition Is(string fact, params string[] words) => new Word(fact, words);

    private static Condition Age(string sign, decimal bound) => new Number("age", sign, bound, "years");
    private static Condition Neck(string sign, decimal bound) => new Number("neck", sign, bound, "cm");
    private static Condition Weight(string sign, decimal bound) => new Number("weight", sign, bound, "kg");
    private static Condition Epworth(string sign, decimal bound) => new Number("epworth_total", sign, bound, "");
    private static Condition Bicarbonate(string sign, decimal bound) => new Number("bicarbonate", sign, bound, "mmol/L");
    private static Condition Isi(string sign, decimal bound) => new Number("isi_total", sign, bound, "");
    private static Condition Lvef(string sign, decimal bound) => new Number("lvef", sign, bound, "%");
    private static Condition Lowest(string sign, decimal bound) => new Number("spo2_lowest", sign, bound, "%");
    private static Condition Mean(string sign, decimal bound) => new Number("spo2_mean", sign, bound, "%");
}
