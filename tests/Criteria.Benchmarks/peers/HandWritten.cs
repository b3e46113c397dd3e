using static Criteria.Benchmarks.Peers.Kleene;

namespace Criteria.Benchmarks.Peers;

/// <summary>The facts of a case as somebody would declare them who writes the criteria in C# and nothing else.</summary>
internal sealed class PlainFacts
{
    public double? Age { get; init; }
    public double? Neck { get; init; }
    public double? Weight { get; init; }
    public double? Epworth { get; init; }
    public double? Bicarbonate { get; init; }
    public double? Isi { get; init; }
    public double? Lvef { get; init; }
    public double? Lowest { get; init; }
    public double? Mean { get; init; }
    public int Hypertension { get; init; }
    public int Snoring { get; init; }
    public int Apneas { get; init; }
    public int Sleepy { get; init; }
    public int Stroke { get; init; }
    public int Heart { get; init; }
    public int Insomnia { get; init; }
    public int Mood { get; init; }
    public int Cognition { get; init; }
    public int Adequate { get; init; }

    /// <summary>A bit for the word of each choice; none while it is unknown.</summary>
    public int Sex { get; init; }
    public int Mallampati { get; init; }
    public int Nyha { get; init; }
    public int Recorder { get; init; }
    public int Scoring { get; init; }

    public static PlainFacts Of(MadeUpCase subject)
    {
        return new PlainFacts
        {
            Age = Number("age"),
            Neck = Number("neck"),
            Weight = Number("weight"),
            Epworth = Number("epworth_total"),
            Bicarbonate = Number("bicarbonate"),
            Isi = Number("isi_total"),
            Lvef = Number("lvef"),
            Lowest = Number("spo2_lowest"),
            Mean = Number("spo2_mean"),
            Hypertension = Answer("hypertension"),
            Snoring = Answer("habitual_snoring"),
            Apneas = Answer("witnessed_apneas"),
            Sleepy = Answer("daytime_sleepiness"),
            Stroke = Answer("stroke_history"),
            Heart = Answer("ischemic_heart_disease"),
            Insomnia = Answer("insomnia"),
            Mood = Answer("mood_disorder"),
            Cognition = Answer("impaired_cognition"),
            Adequate = Answer("technically_adequate"),
            Sex = Word("sex"),
            Mallampati = Word("mallampati"),
            Nyha = Word("nyha_class"),
            Recorder = Word("recorder"),
            Scoring = Word("scoring"),
        };

        double? Number(string fact) => (int?)subject.Facts[fact];

        int Answer(string fact) => subject.Facts[fact] is bool yes ? (yes ? Met : NotMet) : Unknown;

        int Word(string fact) => subject.Facts[fact] is string word ? 1 << Array.IndexOf(Workload.Choices.Single(choice => choice.Name == fact).Words, word) : 0;
    }
}

/// <summary>Kleene's logic as numbers, so that "and" is the smaller and "or" the greater.</summary>
internal static class Kleene
{
    public const int NotMet = 0;
    public const int Unknown = 1;
    public const int Met = 2;

    public static int AtLeast(double? value, double bound) => value.HasValue ? (value.GetValueOrDefault() >= bound ? Met : NotMet) : Unknown;

    public static int Above(double? value, double bound) => value.HasValue ? (value.GetValueOrDefault() > bound ? Met : NotMet) : Unknown;

    public static int AtMost(double? value, double bound) => value.HasValue ? (value.GetValueOrDefault() <= bound ? Met : NotMet) : Unknown;

    public static int Below(double? value, double bound) => value.HasValue ? (value.GetValueOrDefault() < bound ? Met : NotMet) : Unknown;

    public static int Is(int word, int words) => word == 0 ? Unknown : (word & words) != 0 ? Met : NotMet;

    public static int Not(int truth) => Met - truth;

    public static int And(int a, int b) => Math.Min(a, b);

    public static int And(int a, int b, int c) => Math.Min(a, Math.Min(b, c));

    public static int Or(int a, int b) => Math.Max(a, b);

    public static int Or(int a, int b, int c) => Math.Max(a, Math.Max(b, c));

    public static int Some(int need, params ReadOnlySpan<int> parts)
    {
        var (met, open) = (0, 0);
        foreach (var part in parts)
        {
            met += part >> 1;
            open += part == NotMet ? 0 : 1;
        }

        return met >= need ? Met : open >= need ? Unknown : NotMet;
    }
}

/// <summary>The workload as a function that somebody wrote by hand for these fifty criteria and no others.</summary>
internal static class HandWritten
{
    public static void Run(PlainFacts f, Span<int> c)
    {
        const int male = 1;
        const int female = 2;
        var over50 = Above(f.Age, 50);
        var isMale = Is(f.Sex, male);
        c[0] = AtLeast(f.Age, 50);
        c[1] = And(isMale, AtLeast(f.Neck, 43));
        c[2] = And(Is(f.Sex, female), AtLeast(f.Neck, 41));
        c[3] = Or(c[1], c[2]);
        c[4] = Some(3, f.Snoring, f.Sleepy, f.Apneas, f.Hypertension, over50, isMale);
        c[5] = Above(f.Epworth, 10);
        c[6] = And(c[5], AtMost(f.Epworth, 15));
        c[7] = Or(Above(f.Epworth, 15), f.Sleepy);
        c[8] = Not(Or(f.Sleepy, f.Snoring));
        c[9] = Or(f.Hypertension, f.Heart, f.Stroke);
        c[10] = Or(Or(f.Sleepy, f.Cognition, f.Mood), f.Insomnia, c[9]);
        c[11] = And(Below(f.Lowest, 80), Below(f.Mean, 92));
        c[12] = Or(Below(f.Lowest, 70), And(Below(f.Lowest, 85), f.Heart));
        c[13] = And(AtLeast(f.Mean, 90), Not(f.Stroke));
        c[14] = Or(Is(f.Recorder, 4 | 16), And(Is(f.Recorder, 8), Is(f.Scoring, 1)));
        c[15] = And(Is(f.Scoring, 1 | 2), f.Adequate);
        c[16] = And(c[14], c[15]);
        c[17] = And(Not(Is(f.Scoring, 4)), Not(Is(f.Recorder, 8)));
        c[18] = AtLeast(f.Bicarbonate, 28);
        c[19] = And(c[18], Above(f.Weight, 110), Below(f.Mean, 93));
        c[20] = Or(Is(f.Mallampati, 4 | 8), Above(f.Neck, 44));
        c[21] = Some(2, Is(f.Mallampati, 8), AtLeast(f.Neck, 42), AtLeast(f.Weight, 100));
        c[22] = And(AtLeast(f.Isi, 15), f.Insomnia);
        c[23] = And(AtLeast(f.Isi, 8), Below(f.Isi, 15));
        c[24] = Or(AtLeast(f.Isi, 22), And(AtLeast(f.Isi, 15), f.Mood));
        c[25] = And(AtMost(f.Lvef, 45), Is(f.Nyha, 2 | 4 | 8));
        c[26] = Or(c[25], And(Below(f.Lvef, 30), f.Heart));
        c[27] = And(Not(c[25]), f.Hypertension);
        c[28] = Or(Is(f.Nyha, 4 | 8), Below(f.Lvef, 35));
        c[29] = Some(2, f.Hypertension, f.Heart, f.Stroke, AtMost(f.Lvef, 45));
        c[30] = And(c[4], Not(c[26]), Not(c[19]));
        c[31] = And(c[30], c[16]);
        c[32] = Or(Below(f.Age, 30), And(Below(f.Age, 40), Not(f.Hypertension)));
        c[33] = Some(4, f.Snoring, f.Apneas, f.Sleepy, f.Hypertension, isMale, over50, Above(f.Neck, 40), Above(f.Weight, 105));
        c[34] = And(c[33], Or(c[3], c[20]));
        c[35] = Not(And(f.Snoring, f.Apneas));
        c[36] = And(AtLeast(f.Weight, 80), Below(f.Weight, 120));
        c[37] = Or(And(Above(f.Weight, 130), Below(f.Age, 60)), And(Above(f.Weight, 120), f.Sleepy));
        c[38] = And(AtLeast(f.Mean, 92), AtLeast(f.Lowest, 85), f.Adequate);
        c[39] = Or(Not(c[38]), c[12]);
        c[40] = And(f.Cognition, Or(AtLeast(f.Age, 70), f.Stroke));
        c[41] = Or(And(f.Mood, f.Insomnia), And(f.Mood, f.Sleepy), And(f.Insomnia, f.Sleepy));
        c[42] = And(c[9], c[5], Not(isMale));
        c[43] = Or(And(isMale, AtLeast(f.Age, 60)), And(Is(f.Sex, female), AtLeast(f.Age, 65)));
        c[44] = And(Or(f.Snoring, f.Apneas), Or(f.Sleepy, c[5]), Or(c[9], c[43]));
        c[45] = Some(2, c[44], c[34], c[21]);
        c[46] = And(And(Above(f.Lowest, 65), AtMost(f.Lowest, 88)), Not(c[11]));
        c[47] = Or(Is(f.Recorder, 1 | 2), Not(f.Adequate));
        c[48] = And(c[45], c[10], Is(f.Scoring, 1));
        c[49] = Or(c[48], And(c[31], c[7]));
    }
}
