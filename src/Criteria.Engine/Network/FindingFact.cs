using Criteria.Engine.Findings;
using NRules.RuleModel;

namespace Criteria.Engine.Network;

/// <summary>A finding as a fact of the network. Its identity is its criterion and its subject.</summary>
internal abstract class FindingFact(Finding finding, int subject) : IIdentityProvider
{
    public Finding Finding { get; } = finding;

    public int Criterion { get; } = finding.Criterion.Index;

    public int Subject { get; } = subject;

    public object GetIdentity() => (Criterion, Subject);
}

/// <summary>The findings of one shelf: the network tries a finding only at the conditions that ask for its type.</summary>
/// <typeparam name="TShelf">Tells the shelves apart; see <see cref="Shelves"/>.</typeparam>
internal sealed class FindingFact<TShelf>(Finding finding, int subject) : FindingFact(finding, subject);

/// <summary>Spreads findings over a few types, so that their number times the number of conditions stays small.</summary>
internal static class Shelves
{
    // Each finding is tried at every type and at every condition of its own: measured with 366 criteria, 8 to 20 shelves are best.
    private const int Count = 8;

    private static readonly (Type Type, Func<Finding, int, FindingFact> Make)[] All = [.. Enumerable.Range(0, Count).Select(Shelf)];

    /// <summary>The type of the findings of a criterion.</summary>
    public static Type TypeOf(int criterion) => All[criterion % Count].Type;

    /// <summary>A finding as a fact, in the type of its criterion.</summary>
    public static FindingFact Put(Finding finding, int subject) => All[finding.Criterion.Index % Count].Make(finding, subject);

    // The markers are arrays of more and more dimensions: as many types as are wanted, without naming each.
    private static (Type Type, Func<Finding, int, FindingFact> Make) Shelf(int number)
    {
        var marker = Enumerable.Range(0, number).Aggregate(typeof(object), (type, _) => type.MakeArrayType());
        var make = typeof(Shelves).GetMethod(nameof(Make), System.Reflection.BindingFlags.NonPublic | System.Reflection.BindingFlags.Static)!
            .MakeGenericMethod(marker).CreateDelegate<Func<Finding, int, FindingFact>>();
        return (typeof(FindingFact<>).MakeGenericType(marker), make);
    }

    private static FindingFact<TShelf> Make<TShelf>(Finding finding, int subject) => new(finding, subject);
}
