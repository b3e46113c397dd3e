using Criteria.Core.Cases;
using Criteria.Core.Facts;

namespace Criteria.Benchmarks.Peers;

/// <summary>One case of the workload: a value for each known fact, a number, a yes or no, or a word.</summary>
internal sealed record MadeUpCase(IReadOnlyDictionary<string, object?> Facts)
{
    /// <summary>Cases that are always the same.</summary>
    /// <param name="count">How many.</param>
    /// <param name="unknownOf20">Of how many facts in twenty nothing is known.</param>
    public static MadeUpCase[] Row(int count, int unknownOf20)
    {
        var state = 20260618UL;
        return [.. Enumerable.Range(0, count).Select(_ => new MadeUpCase(Draw()))];

        Dictionary<string, object?> Draw()
        {
            var facts = new Dictionary<string, object?>(StringComparer.Ordinal);
            foreach (var (name, from, to) in Workload.Numbers)
            {
                facts[name] = Next(20) < unknownOf20 ? null : from + Next(to - from + 1);
            }

            foreach (var name in Workload.Answers)
            {
                facts[name] = Next(20) < unknownOf20 ? null : Next(2) == 0;
            }

            foreach (var (name, words) in Workload.Choices)
            {
                facts[name] = Next(20) < unknownOf20 ? null : words[Next(words.Length)];
            }

            return facts;
        }

        // Knuth's linear congruence: the same row on every machine, and nothing of the library's random numbers.
        int Next(int below)
        {
            state = unchecked((state * 6364136223846793005UL) + 1442695040888963407UL);
            return (int)((state >> 33) % (ulong)below);
        }
    }

    /// <summary>The case as the program reads it.</summary>
    public Case ToCase(Vocabulary vocabulary)
    {
        var known = Facts.Where(fact => fact.Value is not null).Select(fact => (Definition: vocabulary.Find(fact.Key)!, Value: fact.Value!))
            .Select(fact => Fact.Known(fact.Definition, ValueOf(fact.Value), Provenance.Entered)).ToLookup(fact => fact.Definition.Scope);
        var ofCase = FactSet.Of(vocabulary, known[FactScope.Case]);
        return new Case("made up", NumberedCase.Date, ofCase, [new Night("night 1", ofCase.With(known[FactScope.Night]))]);
    }

    private static FactValue ValueOf(object value) => value switch
    {
        bool yes => new YesNoValue(yes),
        string word => new ChoiceValue(word),
        var number => new NumberValue(Interval.Exactly((int)number)),
    };
}
