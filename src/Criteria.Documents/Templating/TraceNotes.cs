using System.Globalization;
using Criteria.Documents.Model;

namespace Criteria.Documents.Templating;

/// <summary>Collects what the sentences of one document rest on, and numbers it in the order of first mention.</summary>
/// <param name="plainOverrides">Whether an override is told in words for the patient.</param>
internal sealed class TraceNotes(bool plainOverrides = false)
{
    private readonly List<ITraced> _notes = [];
    private readonly HashSet<OverrideModel> _overrides = [];
    private readonly Dictionary<string, int> _numbers = new(StringComparer.Ordinal);

    /// <summary>The name under which a rendering finds its notes.</summary>
    public const string Key = "trace notes";

    /// <summary>What was mentioned, in order; the first has number 1.</summary>
    public IReadOnlyList<ITraced> Notes => _notes;

    /// <summary>What is printed of an override behind a sentence on its finding: whole at the first, short at the others.</summary>
    public string Of(FindingModel finding, OverrideModel differs) =>
        plainOverrides ? finding.PlainOverride : _overrides.Add(differs) ? differs.Sentence : OverrideModel.Short;

    /// <summary>The mark behind a sentence; empty for what names itself.</summary>
    public string Mark(ITraced traced)
    {
        if (traced.NamesItself)
        {
            return "";
        }

        if (!_numbers.TryGetValue(traced.Key, out var number))
        {
            _notes.Add(traced);
            number = _notes.Count;
            _numbers.Add(traced.Key, number);
        }

        return $"[^{number.ToString(CultureInfo.InvariantCulture)}]";
    }
}
