using Criteria.Core.Facts;
using Criteria.Engine.Tests.Support;
using CsCheck;

namespace Criteria.Engine.Tests;

/// <summary>A changed set is the set that would have been made from the changed facts.</summary>
public sealed class FactSetTests
{
    [Fact]
    public void With_AFewFacts_IsTheSetMadeAnew() => Gen.Select(RandomCases.Any, RandomCases.Change.Array[1, 6]).Sample(
        (subject, changes) =>
        {
            foreach (var facts in subject.Nights.Select(night => night.Facts).Prepend(subject.Facts))
            {
                var changed = facts.With(changes);
                var anew = FactSet.Of(facts.Vocabulary, facts.Entered.Concat(changes), facts.Records);

                Texts(changed).ShouldBe(Texts(anew));
            }
        },
        iter: Samples.Of(200));

    [Fact]
    public void With_AnotherList_IsTheSetMadeAnew() => Gen.Select(RandomCases.Any, RandomCases.Lists).Sample(
        (subject, lists) => Texts(subject.Facts.With(lists[1])).ShouldBe(Texts(FactSet.Of(
            subject.Facts.Vocabulary, subject.Facts.Entered, [subject.Facts.Records[0], lists[1]]))),
        iter: Samples.Of(200));

    private static IEnumerable<string> Texts(FactSet facts) =>
        facts.Vocabulary.Facts.Select(definition => $"{definition.Id}: {facts[definition].Text} from {facts[definition].Origin.Words}");
}
