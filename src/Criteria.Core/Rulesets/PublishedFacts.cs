using System.Collections.Immutable;
using Criteria.Core.Reading;

namespace Criteria.Core.Rulesets;

/// <summary>The register of published facts, in its own order.</summary>
public sealed class PublishedFacts
{
    /// <summary>What may use a fact besides criteria.</summary>
    internal static readonly string[] Users = ["vocabulary", "measure", "setting", "caution", "report", "program"];

    private readonly Dictionary<string, PublishedFact> _byId;

    private PublishedFacts(ImmutableArray<PublishedFact> rows)
    {
        Rows = rows;
        _byId = rows.ToDictionary(row => row.Id, StringComparer.Ordinal);
    }

    /// <summary>All rows.</summary>
    public ImmutableArray<PublishedFact> Rows { get; }

    /// <summary>The row of that id, or null.</summary>
    public PublishedFact? Find(string id) => _byId.GetValueOrDefault(id);

    /// <summary>Whether criteria may name a row; where not, it was reported.</summary>
    internal bool Check(ScalarNode id, DiagnosticBag bag)
    {
        if (Find(id.Text) is not null)
        {
            return true;
        }

        bag.Add(RulesetDiagnostics.UnknownPublishedFact(id.Text, NearestName.Of(id.Text, _byId.Keys), id.Span));
        return false;
    }

    /// <summary>The register, or null when no file holds one; then rows are not checked.</summary>
    internal static PublishedFacts? Read(IReadOnlyCollection<SourceFile> files, SourceRegister sources, DiagnosticBag bag)
    {
        if (files.Count == 0)
        {
            return null;
        }

        var rows = ImmutableArray.CreateBuilder<PublishedFact>();
        var carriers = new List<ScalarNode>();
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var reader = new PublishedFactReader(sources, bag);
        foreach (var file in files)
        {
            if (TreeReader.Read(file.Name, file.Content.Span, bag) is not { } tree || Fields.Of(tree, "the register of published facts", bag) is not { } fields)
            {
                continue;
            }

            foreach (var item in fields.List("published_facts"))
            {
                if (reader.Read(item, carriers) is not { } row)
                {
                    continue;
                }

                if (seen.Add(row.Id))
                {
                    rows.Add(row);
                }
                else
                {
                    bag.Add(RulesetDiagnostics.Twice("published fact", row.Id, item.Span));
                }
            }

            fields.Done();
        }

        var facts = new PublishedFacts(rows.ToImmutable());
        foreach (var carrier in carriers)
        {
            facts.Check(carrier, bag);
        }

        return facts;
    }
}

/// <summary>Reads one row of the register of published facts.</summary>
internal sealed class PublishedFactReader(SourceRegister sources, DiagnosticBag bag)
{
    /// <summary>The row, or null (and a diagnostic); the rows that carry it are checked when all are known.</summary>
    public PublishedFact? Read(Node node, List<ScalarNode> carriers)
    {
        if (Fields.Of(node, "a published fact", bag) is not { } fields)
        {
            return null;
        }

        var id = fields.RequiredScalar("id");
        var says = fields.RequiredText("says");
        var verified = fields.Word("verified", "a level of verification", FactBases.All, required: true);
        var inPart = fields.Word("in_part", "a level of verification", FactBases.All);
        var stated = fields.Words("sources").Select(FindSource).OfType<Source>().ToImmutableArray();
        var usedBy = fields.Node("used_by") is { } users ? ReadUsers(users) : [];
        var carriedBy = fields.Words("carried_by").ToImmutableArray();
        var reason = fields.Text("not_a_criterion");
        fields.Done();
        if (id is null)
        {
            return null;
        }

        if (!IsId(id.Text))
        {
            bag.Add(RulesetDiagnostics.BadPublishedFactId(id.Text, id.Span));
        }

        if (new[] { !usedBy.IsEmpty, !carriedBy.IsEmpty, reason is not null }.Count(said => said) > 1)
        {
            bag.Add(RulesetDiagnostics.OneUseOfFact(id.Text, id.Span));
        }

        carriers.AddRange(carriedBy);
        return new PublishedFact
        {
            Id = id.Text,
            Says = says,
            Verified = FactBases.Find(verified ?? "") ?? FactBasis.Memory,
            InPart = FactBases.Find(inPart ?? ""),
            Sources = stated,
            UsedBy = usedBy,
            CarriedBy = [.. carriedBy.Select(row => row.Text)],
            NotACriterion = reason,
        };
    }

    private static bool IsId(string text) =>
        text.Length > 0 && char.IsAsciiLetterUpper(text[0]) && text.All(c => char.IsAsciiLetterUpper(c) || char.IsAsciiDigit(c) || c == '-');

    private Source? FindSource(ScalarNode name)
    {
        var source = sources.Find(name.Text);
        if (source is null)
        {
            bag.Add(RulesetDiagnostics.UnknownSource(name.Text, NearestName.Of(name.Text, sources.Sources.Select(known => known.Id)), name.Span));
        }

        return source;
    }

    private ImmutableArray<FactUse> ReadUsers(Node node)
    {
        if (Fields.Of(node, "`used_by`", bag) is not { } fields)
        {
            return [];
        }

        var uses = PublishedFacts.Users.Select(what => new FactUse(what, [.. fields.Words(what).Select(name => name.Text)])).Where(use => !use.Names.IsEmpty).ToImmutableArray();
        fields.Done();
        return uses;
    }
}
