using Criteria.Core.Cases;
using Criteria.Tests;

namespace Criteria.Core.Tests;

/// <summary>What others may build upon: a change of it is a line in a difference, and holds no type of another library.</summary>
public sealed class PublicApiTests
{
    [Fact]
    public void PublicSurface_IsTheOneThatWasAgreed() => PublicApi.ShouldBeThatOf(typeof(CaseReader).Assembly);

    [Fact]
    public void PublicSurface_HoldsNoTypeOfAnotherLibrary() =>
        PublicApi.AssembliesShown(typeof(CaseReader).Assembly).Where(name => !name.StartsWith("System.", StringComparison.Ordinal)).ShouldBe(["Criteria.Core"]);
}
