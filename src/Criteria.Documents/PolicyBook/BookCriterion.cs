using Criteria.Core.Logic;
using Criteria.Core.Rulesets;
using Criteria.Documents.Wording;

namespace Criteria.Documents.PolicyBook;

/// <summary>One criterion of the book.</summary>
internal sealed class BookCriterion(BookOrder order, BookTests tests, BookMarkdown text)
{
    private readonly ConditionWords _conditions = new(order.Rules);

    public void Write(Criterion criterion)
    {
        text.Heading(3, $"{criterion.Title} [{criterion.Id}]");
        if (_conditions.Applies(criterion).ToArray() is { Length: > 0 } applies)
        {
            text.Paragraph("It applies when:", "");
            text.List(applies);
        }

        text.Paragraph($"{Lead(criterion)}:", criterion.Body is OptionBody option ? option.Offer : "");
        text.List(_conditions.Body(criterion));
        if (criterion.Body is OptionBody { Strength: var strength, Certainty: var certainty })
        {
            text.Paragraph("Recommendation in the source:", $"{Words.Sentence(strength)} Certainty: {Words.Sentence(certainty)}");
        }

        foreach (var question in criterion.Silent)
        {
            Question(question);
        }

        text.Paragraph("Sources:", string.Join("; ", criterion.Cites.Select(citation => $"{citation} ({citation.Verified.Sentence()})")) + ".");
        if (!criterion.RestsOn.IsEmpty)
        {
            text.Paragraph("Rests on:", string.Join("; ", criterion.RestsOn.Select(Row)) + ".");
        }

        text.Paragraph("Tests:", Words.Sentence(tests.Of(criterion)));
    }

    private void Question(SilentQuestion question)
    {
        text.Paragraph("Left open by the source:", question.Question);
        text.List(question.Readings.Select((reading, at) => (0, $"Reading {at + 1}: {reading}")));
        text.Paragraph("Locally:", question.Answer is { } answer ? $"decided as {answer.As.Words()} by {answer.By}." : "not decided; the finding stays undetermined where the question arises.");
    }

    private string Row(string id) => order.Library.PublishedFacts?.Find(id) is { } fact ? $"{id}, {fact.Says} ({fact.VerifiedWords})" : id;

    private static string Lead(Criterion criterion) => criterion.Body switch
    {
        OptionBody => "Option",
        GradeBody => "Grade",
        ScoreBody => "Score",
        _ => "Met when",
    };
}
