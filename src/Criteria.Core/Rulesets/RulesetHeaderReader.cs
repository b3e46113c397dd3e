using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using Criteria.Core.Logic;
using Criteria.Core.Reading;

namespace Criteria.Core.Rulesets;

/// <summary>Reads what stands above the criteria of a ruleset.</summary>
internal sealed class RulesetHeaderReader(SourceRegister sources, DiagnosticBag bag)
{
    private static readonly Dictionary<string, RulesetStatus> Statuses = new(StringComparer.Ordinal)
    {
        ["draft"] = RulesetStatus.Draft,
        ["approved"] = RulesetStatus.Approved,
        ["active"] = RulesetStatus.Active,
        ["retired"] = RulesetStatus.Retired,
    };

    private static readonly Dictionary<string, Rounding> Roundings = new(StringComparer.Ordinal)
    {
        ["none"] = Rounding.None,
        ["as printed"] = Rounding.AsPrinted,
        ["to whole numbers"] = Rounding.ToWholeNumbers,
    };

    private static readonly Dictionary<string, int> DayCounts = new(StringComparer.Ordinal)
    {
        ["start is day 0"] = 0,
        ["start is day 1"] = 1,
    };

    public RulesetFile? Read(MapNode tree, SourceFile file)
    {
        var fields = Fields.Of(tree, "a ruleset", bag)!;
        var id = fields.RequiredScalar("ruleset");
        if (id is not null)
        {
            Names.Check(id, bag);
        }

        var function = fields.Word("function", "a function", ["clinical", "coverage"], required: true) == "coverage"
            ? RulesetFunction.Coverage
            : RulesetFunction.Clinical;
        var (from, until) = ReadEffective(fields);
        var (rounding, startDay) = ReadConventions(fields);
        var (nights, nightGrades) = new NightFigureReader(sources, bag).Read(fields);
        var (plain, plainGrades) = new PlainGradeReader(bag).Read(fields);
        var ruleset = new Ruleset
        {
            Id = id?.Text ?? "",
            Title = fields.RequiredText("title"),
            Heading = fields.RequiredText("heading"),
            Order = ReadOrder(fields),
            Function = function,
            Version = fields.RequiredText("version"),
            Status = Statuses.GetValueOrDefault(fields.Word("status", "a status", Statuses.Keys, required: true) ?? "draft"),
            EffectiveFrom = from,
            EffectiveUntil = until,
            Payer = fields.Text("payer"),
            Item = fields.Text("item"),
            Rounding = rounding,
            NumberOfStartDay = startDay,
            ReviewBy = fields.Date("review_by"),
            Settings = ReadSettings(fields),
            NightToNight = nights,
            PlainGrades = plain,
            Digest = Digests.Of([file]),
        };
        CheckPayer(ruleset, fields.Map.Span);
        var criteria = new List<MapNode>();
        foreach (var item in fields.List("criteria"))
        {
            if (item is MapNode map)
            {
                criteria.Add(map);
            }
            else
            {
                bag.Add(ReadingDiagnostics.Expected("a criterion: a map of keys and values", item.Described, item.Span));
            }
        }

        if (fields.Map["criteria"] is null)
        {
            bag.Add(ReadingDiagnostics.MissingKey("criteria", "the ruleset", StartOf(fields.Map)));
        }

        var windows = fields.List("windows");
        fields.Done();
        return id is null ? null : new RulesetFile { Ruleset = ruleset, Span = id.Span, Criteria = criteria, Windows = windows, NightGrades = nightGrades, PlainGrades = plainGrades };
    }

    private static SourceSpan StartOf(MapNode map) => map.Span with { EndLine = map.Span.Line, EndColumn = map.Span.Column };

    private void CheckPayer(Ruleset ruleset, SourceSpan span)
    {
        var start = span with { EndLine = span.Line, EndColumn = span.Column };
        if (ruleset.Function == RulesetFunction.Coverage && (ruleset.Payer is null || ruleset.Item is null))
        {
            bag.Add(RulesetDiagnostics.PayerMissing(ruleset.Id, start));
        }

        if (ruleset.Function == RulesetFunction.Clinical && (ruleset.Payer is not null || ruleset.Item is not null))
        {
            bag.Add(RulesetDiagnostics.PayerOnClinical(ruleset.Id, start));
        }
    }

    private int ReadOrder(Fields fields)
    {
        if (fields.RequiredScalar("order") is not { } node)
        {
            return 0;
        }

        if (int.TryParse(node.Text, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var order))
        {
            return order;
        }

        bag.Add(ReadingDiagnostics.Expected("a whole number for `order`", node.Described, node.Span));
        return 0;
    }

    private (DateOnly? From, DateOnly? Until) ReadEffective(Fields fields)
    {
        if (fields.RequiredNode("effective") is not { } node || Fields.Of(node, "`effective`", bag) is not { } effective)
        {
            return (null, null);
        }

        var from = effective.Date("from");
        var until = effective.Date("until");
        effective.RequiredNode("from");
        effective.Done();
        if (from is { } start && until is { } end && end <= start)
        {
            bag.Add(RulesetDiagnostics.EffectiveOrder(node.Span));
        }

        return (from, until);
    }

    private (Rounding Rounding, int? StartDay) ReadConventions(Fields fields)
    {
        if (fields.RequiredNode("conventions") is not { } node || Fields.Of(node, "`conventions`", bag) is not { } conventions)
        {
            return (Rounding.None, null);
        }

        var rounding = Roundings.GetValueOrDefault(conventions.Word("rounding", "a rounding", Roundings.Keys, required: true) ?? "none");
        var days = conventions.Word("day_count", "a day count", DayCounts.Keys);
        conventions.Done();
        return (rounding, days is null ? null : DayCounts[days]);
    }

    private ImmutableArray<Setting> ReadSettings(Fields fields)
    {
        if (fields.Node("settings") is not { } node)
        {
            return [];
        }

        if (node is not MapNode map)
        {
            bag.Add(ReadingDiagnostics.Expected("a map of settings", node.Described, node.Span));
            return [];
        }

        var settings = ImmutableArray.CreateBuilder<Setting>();
        foreach (var entry in map.Entries)
        {
            if (Fields.Of(entry.Value, $"the setting `{entry.Key}`", bag) is not { } setting)
            {
                continue;
            }

            Names.Check(new ScalarNode(entry.Key, false, entry.KeySpan), bag);
            var value = setting.RequiredScalar("is");
            var allowed = setting.Words("allowed").Select(word => word.Text).ToImmutableArray();
            var why = setting.RequiredText("why");
            var cites = CitationReader.Read(setting.Words("cites"), sources, bag);
            setting.Done();
            if (value is not null && !allowed.Contains(value.Text))
            {
                bag.Add(RulesetDiagnostics.SettingNotAllowed(value.Text, entry.Key, allowed, value.Span));
            }

            if (cites.IsEmpty)
            {
                bag.Add(RulesetDiagnostics.NoCitation(entry.Key, entry.KeySpan));
            }

            settings.Add(new Setting(entry.Key, value?.Text ?? "", allowed, why, cites));
        }

        return settings.ToImmutable();
    }
}

/// <summary>The form of names of rulesets, criteria and settings.</summary>
internal static class Names
{
    public static void Check(ScalarNode id, DiagnosticBag bag)
    {
        if (id.Text.Length == 0 || !char.IsAsciiLetterLower(id.Text[0]) || id.Text.Any(c => !(char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c is '_' or '.' or '-')))
        {
            bag.Add(RulesetDiagnostics.BadId(id.Text, id.Span));
        }
    }
}

/// <summary>Digests of files, the same on every machine.</summary>
internal static class Digests
{
    /// <summary>The digest of one file; of several, the digest of theirs, so that no text can move from one to the next.</summary>
    public static string Of(IReadOnlyList<SourceFile> files) => "sha256:" + (files.Count == 1
        ? OfText(Encoding.UTF8.GetString(files[0].Content.Span))
        : OfText(string.Concat(files.Select(file => OfText(Encoding.UTF8.GetString(file.Content.Span)) + "\n"))));

    /// <summary>The digest of lines, whatever order they come in.</summary>
    public static string OfLines(IEnumerable<string> lines) => "sha256:" + OfText(string.Concat(lines.Order(StringComparer.Ordinal).Select(line => line + "\n")));

    private static string OfText(string text) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.Replace("\r\n", "\n", StringComparison.Ordinal))));
}
