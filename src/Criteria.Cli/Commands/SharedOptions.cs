using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using Criteria.Core.Reading;

namespace Criteria.Cli.Commands;

/// <summary>Options that several commands take.</summary>
internal static class SharedOptions
{
    public static Option<string?> Rulesets() => new("--rulesets")
    {
        Description = "A folder of rules. With a vocabulary in it, it replaces the shipped rules; without, it adds to them (local overlays).",
        HelpName = "DIR",
    };

    public static Option<DateOnly?> AsOf()
    {
        var option = new Option<DateOnly?>("--as-of")
        {
            Description = "The date whose rules count. Default: the date of service of the case, else the date it is assessed on.",
            HelpName = "DATE",
            CustomParser = result =>
            {
                var text = result.Tokens[0].Value;
                if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date))
                {
                    return date;
                }

                result.AddError($"--as-of: `{text}` is not a date; write it as 2026-07-01");
                return null;
            },
        };
        return option;
    }

    public static Option<string?> Out() => new("--out")
    {
        Description = "Write to this file instead of the screen. The file is written whole or not at all.",
        HelpName = "PATH",
    };

    public static Option<bool> Force() => new("--force") { Description = "Overwrite what is there already." };

    public static Option<string> Format(params string[] formats)
    {
        var option = new Option<string>("--format")
        {
            Description = $"One of {string.Join(", ", formats)}.",
            DefaultValueFactory = _ => formats[0],
            HelpName = string.Join('|', formats),
        };
        option.AcceptOnlyFromAmong(formats);
        return option;
    }

    public static Argument<string[]> Cases()
    {
        var files = new Argument<string[]>("FILE")
        {
            Description = "Case files in YAML or JSON; `-` reads standard input.",
            Arity = ArgumentArity.OneOrMore,
        };
        files.Validators.Add(RefuseOptions);
        return files;
    }

    /// <summary>A misspelt option must not be taken for a file.</summary>
    public static void RefuseOptions(ArgumentResult result)
    {
        foreach (var token in result.Tokens.Where(token => token.Value.Length > 1 && token.Value[0] == '-'))
        {
            var known = (result.Parent as CommandResult)?.Command.Options.Select(option => option.Name) ?? [];
            var near = NearestName.Of(token.Value, known);
            result.AddError($"Unknown option `{token.Value}`.{(near is null ? "" : $" Did you mean `{near}`?")}");
        }
    }
}
