using System.Collections.Immutable;
using Criteria.Core.Logic;
using Criteria.Core.Reading;

namespace Criteria.Core.Rulesets;

/// <summary>Applies local overlays to their base rulesets; every change is kept with its reason and approver.</summary>
internal sealed class OverlayReader(DiagnosticBag bag)
{
    public void Apply(MapNode tree, SourceFile file, IReadOnlyList<RulesetFile> rulesets, IReadOnlyDictionary<RulesetFile, List<SourceFile>> filesOf)
    {
        var fields = Fields.Of(tree, "an overlay", bag)!;
        var name = fields.RequiredText("overlay");
        var extends = fields.RequiredScalar("extends");
        var version = fields.RequiredText("version");
        var changes = fields.List("changes");
        fields.Done();
        if (extends is null)
        {
            return;
        }

        var bases = rulesets.Where(ruleset => ruleset.Ruleset.Id == extends.Text).ToArray();
        if (bases.Length == 0)
        {
            bag.Add(RulesetDiagnostics.OverlayBase(extends.Text, NearestName.Of(extends.Text, rulesets.Select(ruleset => ruleset.Ruleset.Id)), extends.Span));
            return;
        }

        foreach (var target in bases)
        {
            filesOf[target].Add(file);
            target.Ruleset = target.Ruleset with
            {
                Version = $"{target.Ruleset.Version}+{name}.{version}",
                Digest = Digests.Of(filesOf[target]),
            };
            foreach (var change in changes)
            {
                if (Fields.Of(change, "a change", bag) is { } changeFields)
                {
                    ApplyChange(changeFields, name, target);
                }
            }
        }
    }

    private void ApplyChange(Fields fields, string overlay, RulesetFile target)
    {
        var set = fields.Scalar("set");
        var answer = fields.Scalar("answer");
        var replace = fields.Scalar("replace");
        var add = fields.Node("add");
        var to = fields.Scalar("to");
        var of = fields.Scalar("of");
        var answerAs = fields.Word("as", "an answer", ["met", "not met"]);
        var with = fields.Node("with");
        var reason = fields.RequiredText("reason");
        var approvedBy = fields.RequiredText("approved_by");
        var approvedOn = fields.Date("approved_on");
        fields.RequiredNode("approved_on");
        fields.Done();

        var what = (set, answer, replace, add) switch
        {
            ({ } setting, null, null, null) => Set(target, setting, to, fields),
            (null, { } question, null, null) => Answer(target, question, of, answerAs, $"{approvedBy}, {fields.Text("approved_on")}", fields),
            (null, null, { } id, null) => Replace(target, id, with, fields),
            (null, null, null, MapNode criterion) => Add(target, criterion),
            _ => null,
        };
        if (what is null)
        {
            if (new[] { set, answer, replace, add }.Count(part => part is not null) != 1 || add is not (null or MapNode))
            {
                bag.Add(RulesetDiagnostics.OverlayChange(fields.Map.Span));
            }

            return;
        }

        target.Ruleset = target.Ruleset with
        {
            Differences = target.Ruleset.Differences.Add(new LocalDifference(overlay, what, reason, approvedBy, approvedOn ?? DateOnly.MinValue)),
        };
    }

    private string? Set(RulesetFile target, ScalarNode name, ScalarNode? to, Fields fields)
    {
        var setting = target.Ruleset.Settings.FirstOrDefault(candidate => candidate.Name == name.Text);
        if (setting is null)
        {
            bag.Add(RulesetDiagnostics.OverlayTarget("setting", name.Text, NearestName.Of(name.Text, target.Ruleset.Settings.Select(known => known.Name)), name.Span));
            return null;
        }

        if (to is null || !setting.Allowed.Contains(to.Text))
        {
            bag.Add(RulesetDiagnostics.SettingNotAllowed(to?.Text ?? "", setting.Name, setting.Allowed, to?.Span ?? fields.Map.Span));
            return null;
        }

        if (!IsFirstChange(target, "setting", name))
        {
            return null;
        }

        target.Ruleset = target.Ruleset with { Settings = target.Ruleset.Settings.Replace(setting, setting with { Is = to.Text }) };
        return $"setting {setting.Name} is {to.Text}, was {setting.Is}";
    }

    private string? Answer(RulesetFile target, ScalarNode question, ScalarNode? of, string? answerAs, string by, Fields fields)
    {
        if (of is null || answerAs is null)
        {
            // A word that is no answer was reported already.
            if (of is null || fields.Map["as"] is null)
            {
                bag.Add(ReadingDiagnostics.MissingKey(of is null ? "of" : "as", "the change", fields.Map.Span));
            }

            return null;
        }

        var criterion = target.Criteria.FirstOrDefault(candidate => RulesetFile.IdOf(candidate) == of.Text);
        if (criterion is null)
        {
            bag.Add(RulesetDiagnostics.OverlayTarget("criterion", of.Text, NearestName.Of(of.Text, target.Criteria.Select(RulesetFile.IdOf)), of.Span));
            return null;
        }

        var questions = (criterion["silent"] as ListNode)?.Items.OfType<MapNode>().Select(item => (item["id"] as ScalarNode)?.Text).OfType<string>().ToArray() ?? [];
        if (!questions.Contains(question.Text))
        {
            bag.Add(RulesetDiagnostics.OverlayTarget("silent question", question.Text, NearestName.Of(question.Text, questions), question.Span));
            return null;
        }

        if (!target.Answers.TryAdd((of.Text, question.Text), new LocalAnswer(answerAs == "met" ? Truth.Met : Truth.NotMet, by)))
        {
            bag.Add(RulesetDiagnostics.AnsweredTwice(question.Text, of.Text, question.Span));
            return null;
        }

        return $"{of.Text}: the open question {question.Text} is answered as {answerAs}";
    }

    // Where two files change one thing, their names must not decide which change counts.
    private bool IsFirstChange(RulesetFile target, string what, ScalarNode name)
    {
        if (target.Changed.Add((what, name.Text)))
        {
            return true;
        }

        bag.Add(RulesetDiagnostics.ChangedTwice(what, name.Text, name.Span));
        return false;
    }

    private string? Replace(RulesetFile target, ScalarNode id, Node? with, Fields fields)
    {
        var index = target.Criteria.FindIndex(candidate => RulesetFile.IdOf(candidate) == id.Text);
        if (index < 0)
        {
            bag.Add(RulesetDiagnostics.OverlayTarget("criterion", id.Text, NearestName.Of(id.Text, target.Criteria.Select(RulesetFile.IdOf)), id.Span));
            return null;
        }

        if (with is not MapNode criterion)
        {
            bag.Add(ReadingDiagnostics.MissingKey("with", "the change", fields.Map.Span));
            return null;
        }

        if (!IsFirstChange(target, "criterion", id))
        {
            return null;
        }

        target.Criteria[index] = criterion;
        var by = RulesetFile.IdOf(criterion);
        target.ReplacedBy[id.Text] = by;
        return by == id.Text ? $"{id.Text} is replaced" : $"{id.Text} is replaced by {by}";
    }

    private static string Add(RulesetFile target, MapNode criterion)
    {
        target.Criteria.Add(criterion);
        return $"{RulesetFile.IdOf(criterion)} is added";
    }
}
