using System.Collections.Immutable;
using Criteria.Core.Reading;

namespace Criteria.Core.Facts;

/// <summary>Reads code sets.</summary>
internal sealed partial class VocabularyReader
{
    private void ReadCodeSet(Node node)
    {
        if (Fields.Of(node, "a code set", bag) is not { } fields)
        {
            return;
        }

        var id = fields.RequiredScalar("id");
        var system = fields.RequiredText("system");
        var label = fields.RequiredText("label");
        var codes = ImmutableArray.CreateBuilder<DatedCode>();
        foreach (var item in fields.List("codes"))
        {
            if (Fields.Of(item, "a code", bag) is { } entry && ReadCode(entry) is { } code)
            {
                codes.Add(code);
            }
        }

        fields.Done();
        if (codes.Count == 0)
        {
            bag.Add(VocabularyDiagnostics.NoCodes(id?.Text ?? "", fields.Map.Span));
        }

        if (id is not null && _codeSets.Any(set => set.Id == id.Text))
        {
            bag.Add(VocabularyDiagnostics.Twice("code set", Wording.Quote(id.Text), id.Span));
        }

        _codeSets.Add(new CodeSet(id?.Text ?? "", system, label, codes.ToImmutable()));
    }

    private DatedCode? ReadCode(Fields entry)
    {
        var code = entry.RequiredScalar("code");
        var label = entry.RequiredText("label");
        var from = entry.Date("from");
        var until = entry.Date("until");
        entry.Done();
        if (code is null)
        {
            return null;
        }

        if (!CodeSet.IsCode(code.Text))
        {
            bag.Add(VocabularyDiagnostics.BadCode(code.Text, code.Span));
            return null;
        }

        if (from is { } first && until is { } last && last < first)
        {
            bag.Add(VocabularyDiagnostics.CodeEndsFirst(code.Text, code.Span));
        }

        return new DatedCode(code.Text, label, from, until);
    }
}
