using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;
using Criteria.Benchmarks;
using Criteria.Benchmarks.Peers;

// --smoke: every benchmark once, in this process, to see that each still runs and still gets its answer.
// --memory: a long row of cases, to see that memory stays flat.
// --growth: the plan and the assessment from 50 to 800 criteria.
// --peers [FOLDER]: the plan beside a function written by hand, and general rules engines if their folder is given; `peers/run` calls it.
// Anything else is for BenchmarkDotNet: --filter '*', --job short, --list flat.
return args switch
{
    ["--smoke"] => Smoke(),
    ["--memory"] => MemoryRun.Run(Console.Out),
    ["--growth"] => GrowthRun.Run(Console.Out),
    ["--peers"] => PeerRun.Run(null, Console.Out),
    ["--peers", var folder] => PeerRun.Run(folder, Console.Out),
    _ => Failures(BenchmarkSwitcher.FromAssembly(typeof(MemoryRun).Assembly).Run(args)),
};

static int Smoke()
{
    var once = DefaultConfig.Instance.AddJob(Job.Dry.WithToolchain(InProcessEmitToolchain.Instance));
    return Failures(BenchmarkRunner.Run(typeof(MemoryRun).Assembly, once));
}

static int Failures(IEnumerable<BenchmarkDotNet.Reports.Summary> summaries)
{
    var failed = summaries.Any(summary => summary.HasCriticalValidationErrors || summary.Reports.Any(report => !report.Success));
    return failed ? 1 : 0;
}
