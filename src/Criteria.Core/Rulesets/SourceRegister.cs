using System.Collections.Immutable;
using Criteria.Core.Reading;

namespace Criteria.Core.Rulesets;

/// <summary>The register of every document that may be cited.</summary>
public sealed class SourceRegister
{
    private readonly SortedDictionary<string, Source> _byId;

    private SourceRegister(SortedDictionary<string, Source> byId) => _byId = byId;

    /// <summary>All sources, in the order of their ids.</summary>
    public IEnumerable<Source> Sources => _byId.Values;

    /// <summary>The source of that id, or null.</summary>
    public Source? Find(string id) => _byId.GetValueOrDefault(id);

    internal static SourceRegister Read(IEnumerable<SourceFile> files, DiagnosticBag bag)
    {
        var byId = new SortedDictionary<string, Source>(StringComparer.Ordinal);
        foreach (var file in files)
        {
            if (TreeReader.Read(file.Name, file.Content.Span, bag) is not { } tree || Fields.Of(tree, "the register of sources", bag) is not { } fields)
            {
                continue;
            }

            var reviewBy = fields.Date("review_by");
            foreach (var item in fields.List("sources"))
            {
                if (ReadOne(item, reviewBy, bag) is { } source && !byId.TryAdd(source.Id, source))
                {
                    bag.Add(RulesetDiagnostics.Twice("source", source.Id, item.Span));
                }
            }

            fields.Done();
        }

        return new SourceRegister(byId);
    }

    private static Source? ReadOne(Node node, DateOnly? reviewBy, DiagnosticBag bag)
    {
        if (Fields.Of(node, "a source", bag) is not { } fields)
        {
            return null;
        }

        var source = new Source
        {
            Id = fields.RequiredText("id"),
            Issuer = fields.RequiredText("issuer"),
            Title = fields.RequiredText("title"),
            Number = fields.Text("number"),
            Version = fields.Text("version"),
            Effective = fields.Date("effective"),
            Address = fields.Text("address"),
            Verified = Verifications.Find(fields.Word("verified", "a level of verification", Verifications.All, required: true) ?? "") ?? Verification.Memory,
            VerifiedOn = fields.Date("verified_on"),
            ReviewBy = fields.Date("review_by") ?? reviewBy,
            Note = fields.Text("note"),
        };
        fields.Done();
        return source.Id.Length == 0 ? null : source;
    }
}

/// <summary>Reads citations: <c>lcd-l33718 "I.B.1-2"</c>, <c>ep-2009 "severity" (memory)</c>.</summary>
internal static class CitationReader
{
    public static ImmutableArray<Citation> Read(IEnumerable<ScalarNode> nodes, SourceRegister sources, DiagnosticBag bag)
    {
        var citations = ImmutableArray.CreateBuilder<Citation>();
        foreach (var node in nodes)
        {
            if (ReadOne(node, sources, bag) is { } citation)
            {
                citations.Add(citation);
            }
        }

        return citations.ToImmutable();
    }

    private static Citation? ReadOne(ScalarNode node, SourceRegister sources, DiagnosticBag bag)
    {
        var text = node.Text.Trim();
        var idEnd = text.IndexOfAny([' ', '"']);
        var id = idEnd < 0 ? text : text[..idEnd];
        var rest = idEnd < 0 ? "" : text[idEnd..].Trim();
        var section = "";
        Verification? level = null;
        if (rest.StartsWith('"'))
        {
            var end = rest.IndexOf('"', 1);
            if (end < 0)
            {
                bag.Add(RulesetDiagnostics.BadCitation(node.Text, node.Span));
                return null;
            }

            section = rest[1..end];
            rest = rest[(end + 1)..].Trim();
        }

        if (rest.Length > 0)
        {
            level = rest is ['(', .. var word, ')'] ? Verifications.Find(word) : null;
            if (level is null)
            {
                bag.Add(RulesetDiagnostics.BadCitation(node.Text, node.Span));
                return null;
            }
        }

        if (sources.Find(id) is not { } source)
        {
            bag.Add(RulesetDiagnostics.UnknownSource(id, NearestName.Of(id, sources.Sources.Select(known => known.Id)), node.Part(0, id.Length)));
            return null;
        }

        return new Citation(source, section, level ?? source.Verified);
    }
}
