using System.Collections.Immutable;
using Criteria.Core.Reading;

namespace Criteria.Core.Rulesets;

/// <summary>Reads what grades mean in words for the patient.</summary>
internal sealed class PlainGradeReader(DiagnosticBag bag)
{
    /// <summary>The key in a ruleset.</summary>
    public const string Key = "plain_grades";

    /// <summary>The words, and the names of grades with their places, to be checked once the grades are known.</summary>
    public (ImmutableArray<PlainGrade> Words, ImmutableArray<ScalarNode> Grades) Read(Fields ruleset)
    {
        var words = ImmutableArray.CreateBuilder<PlainGrade>();
        var named = ImmutableArray.CreateBuilder<ScalarNode>();
        foreach (var item in ruleset.Node(Key) is null ? [] : ruleset.List(Key))
        {
            if (Fields.Of(item, "the plain words of a grade", bag) is not { } fields)
            {
                continue;
            }

            fields.RequiredNode("grades");
            var grades = fields.Words("grades").ToImmutableArray();
            var say = fields.RequiredText("say");
            fields.Done();
            named.AddRange(grades);
            words.Add(new PlainGrade([.. grades.Select(grade => grade.Text)], say));
        }

        return (words.ToImmutable(), named.ToImmutable());
    }
}
