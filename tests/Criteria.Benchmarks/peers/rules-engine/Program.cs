using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using RulesEngine.Models;

// Answers first, then the time of each repeat in nanoseconds a case, after as many that are not counted. A repeat goes over the first cases.
var (folder, complete) = (args[0], args[1] == "complete");
var timed = int.Parse(args[2], CultureInfo.InvariantCulture);
var repeats = int.Parse(args[3], CultureInfo.InvariantCulture);
var workflows = JsonSerializer.Deserialize<Workflow[]>(File.ReadAllText(Path.Combine(folder, "rules-engine.json")))!;
var cases = JsonSerializer.Deserialize<CaseFacts[]>(File.ReadAllText(Path.Combine(folder, "cases.json")))!;
var parameters = cases.Select(subject => new[] { new RuleParameter("x", subject) }).ToArray();
var engine = new RulesEngine.RulesEngine(workflows);

foreach (var parameter in parameters)
{
    var met = (await One(parameter)).Where(result => result.IsSuccess).Select(result => result.Rule.RuleName).ToHashSet(StringComparer.Ordinal);
    Console.WriteLine("answers " + string.Concat(Enumerable.Range(0, 50).Select(i => met.Contains($"c{i}") ? 'M' : !complete && met.Contains($"p{i}") ? 'U' : 'N')));
}

for (var repeat = -repeats; repeat < repeats; repeat++)
{
    var clock = Stopwatch.StartNew();
    for (var i = 0; i < timed; i++)
    {
        await One(parameters[i]);
    }

    if (repeat >= 0)
    {
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"time {clock.Elapsed.TotalNanoseconds / timed:F1}"));
    }
}

ValueTask<List<RuleResultTree>> One(RuleParameter[] parameter) => engine.ExecuteAllRulesAsync("workload", parameter);

#pragma warning disable IDE1006, CA1050 // The names of the facts, as the expressions write them.
public sealed class CaseFacts
{
    public double? age { get; set; }
    public double? neck { get; set; }
    public double? weight { get; set; }
    public double? epworth_total { get; set; }
    public double? bicarbonate { get; set; }
    public double? isi_total { get; set; }
    public double? lvef { get; set; }
    public double? spo2_lowest { get; set; }
    public double? spo2_mean { get; set; }
    public bool? hypertension { get; set; }
    public bool? habitual_snoring { get; set; }
    public bool? witnessed_apneas { get; set; }
    public bool? daytime_sleepiness { get; set; }
    public bool? stroke_history { get; set; }
    public bool? ischemic_heart_disease { get; set; }
    public bool? insomnia { get; set; }
    public bool? mood_disorder { get; set; }
    public bool? impaired_cognition { get; set; }
    public bool? technically_adequate { get; set; }
    public string? sex { get; set; }
    public string? mallampati { get; set; }
    public string? nyha_class { get; set; }
    public string? recorder { get; set; }
    public string? scoring { get; set; }
}
