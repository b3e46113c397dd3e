using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;

namespace Criteria.Cli;

/// <summary>The usual help, followed by examples and exit codes.</summary>
internal sealed class ExamplesHelp(HelpAction usual, Terminal terminal) : SynchronousCommandLineAction
{
    private static readonly Dictionary<string, string[]> Examples = new(StringComparer.Ordinal)
    {
        ["criteria"] =
        [
            "criteria assess examples/clear-severe/case.yaml",
            "criteria explain examples/clear-severe/case.yaml severity.rei-4",
            "criteria case new --for medicare,pap > case.yaml",
        ],
        ["assess"] =
        [
            "criteria assess case.yaml",
            "criteria assess cases/*.yaml --format ndjson --out results.ndjson",
            "criteria assess case.yaml --as-of 2026-07-01 --rulesets clinic-rules",
            "criteria assess - --format json < case.json",
        ],
        ["explain"] =
        [
            "criteria explain case.yaml pap.sleep-test",
            "criteria explain case.yaml severity.rei-4 --night 2026-06-03",
            "criteria explain case.yaml severity.rei-4 --figure severity.svg",
        ],
        ["write"] =
        [
            "criteria write --list",
            "criteria write case.yaml --document impression",
            "criteria write case.yaml --document checklist --ascii",
            "criteria write case.yaml --document calendar --out documents",
            "criteria write case.yaml --document impression,checklist --format html --out documents",
            "criteria write case.yaml --document impression --deidentified",
            "criteria write --copy-templates clinic-templates",
        ],
        ["case"] = ["criteria case check case.yaml", "criteria case new --for medicare,pap --out case.yaml"],
        ["check"] = ["criteria case check cases/*.yaml", "criteria rules check clinic-rules"],
        ["new"] = ["criteria case new > case.yaml", "criteria case new --for medicare,pap --out case.yaml"],
        ["paste"] = ["criteria case paste summary.txt --out case.yaml", "criteria case paste summary.txt --into case.yaml --force", "criteria case paste - --out proposal.yaml < summary.txt"],
        ["deidentify"] = ["criteria case deidentify case.yaml > shared.yaml", "criteria case deidentify case.yaml --key study-017 --out shared.yaml"],
        ["schema"] = ["criteria case schema > case.schema.json"],
        ["rules"] = ["criteria rules list", "criteria rules check clinic-rules"],
        ["list"] = ["criteria rules list", "criteria rules list --rulesets clinic-rules"],
        ["test"] = ["criteria rules test", "criteria rules test clinic-rules", "criteria rules test --only medicare-pap --gaps"],
        ["book"] = ["criteria rules book --on 2026-07-01 --format pdf --out policy-book.pdf", "criteria rules book clinic-rules --on 2026-07-01 --payer medicare,pap"],
        ["basis"] = ["criteria rules basis", "criteria rules basis SEV", "criteria rules basis --format markdown > basis.md"],
        ["facts"] = ["criteria facts", "criteria facts neck", "criteria facts sleep"],
    };

    public override int Invoke(ParseResult parseResult)
    {
        var code = usual.Invoke(parseResult);
        var name = parseResult.CommandResult.Command is RootCommand ? "criteria" : parseResult.CommandResult.Command.Name;
        if (Examples.TryGetValue(name, out var examples))
        {
            terminal.Out.WriteLine("Examples:");
            foreach (var example in examples)
            {
                terminal.Out.WriteLine($"  {example}");
            }

            terminal.Out.WriteLine();
        }

        terminal.Out.WriteLine("Exit codes:");
        terminal.Out.WriteLine("  0 done   1 a case has problems   2 usage   3 rulesets do not load");
        terminal.Out.WriteLine();
        return code;
    }
}
