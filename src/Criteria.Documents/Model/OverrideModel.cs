using Criteria.Core.Facts;
using Criteria.Documents.Wording;

namespace Criteria.Documents.Model;

/// <summary>A reader who differs from a finding. The finding stays what the rules make it.</summary>
internal sealed class OverrideModel(CaseRecord record, RecordDefinition list)
{
    private static readonly string[] Needed = ["of", "reads", "reason", "by", "on"];

    /// <summary>The name of the finding.</summary>
    internal string Of => Text("of");

    /// <summary>The night, as a finding names it, or null for any.</summary>
    internal string? Night => Fact("night").IsKnown ? Fact("night").Text : null;

    /// <summary>What the reader holds it to be.</summary>
    public string Reads => Text("reads");

    /// <summary>The coded reason and the note; empty when they are not to be printed.</summary>
    public string Reason => Fact("print_reason").Value is YesNoValue { Yes: false }
        ? ""
        : string.Join("; ", new[] { Text("reason"), Text("note") }.Where(text => text.Length > 0));

    /// <summary>Who differs.</summary>
    public string By => Text("by");

    /// <summary>When, in words.</summary>
    public string On => Fact("on").Value is DateValue { Date: var date } ? Words.Date(date) : "";

    /// <summary>What is lacking for it to count, in words; empty when it is whole.</summary>
    internal string Lacking => Words.List(Needed.Where(name => !Fact(name).IsKnown).Select(name => $"`{name}`"));

    /// <summary>A word for where it was already read whole.</summary>
    internal const string Short = "(The reader differs.)";

    /// <summary>The whole of it in one sentence.</summary>
    public string Sentence
    {
        get
        {
            var reason = Reason;
            return $"The reader differs: {Reads}{(reason.Length > 0 ? $" ({reason})" : "")}, {By}, {On}.";
        }
    }

    /// <summary>
    /// The same in words for the patient. What is read is named only when it is a grade of the finding in plain letters: anything else would
    /// be in a reader's words, or one more number.
    /// </summary>
    internal string PlainSentence(IEnumerable<string> grades)
    {
        var reads = Reads;
        return grades.Contains(reads, StringComparer.OrdinalIgnoreCase) && !reads.Any(char.IsDigit)
            ? $"Your clinician reads this as {Words.Small(reads)}."
            : "Your clinician reads this in another way and will tell you how.";
    }

    private Fact Fact(string name) => record[list.Attribute(name)!];

    private string Text(string name) => Fact(name) is { IsKnown: true } fact ? fact.Text : "";
}
