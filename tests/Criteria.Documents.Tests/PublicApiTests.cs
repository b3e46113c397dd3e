using Criteria.Tests;

namespace Criteria.Documents.Tests;

/// <summary>What others may build upon: a change of it is a line in a difference, and holds no type of another library.</summary>
public sealed class PublicApiTests
{
    [Fact]
    public void PublicSurface_IsTheOneThatWasAgreed() => PublicApi.ShouldBeThatOf(typeof(DocumentWriter).Assembly);

    [Fact]
    public void PublicSurface_HoldsNoTypeOfAnotherLibrary() =>
        PublicApi.AssembliesShown(typeof(DocumentWriter).Assembly).Where(name => !name.StartsWith("System.", StringComparison.Ordinal))
            .ShouldBe(["Criteria.Core", "Criteria.Documents", "Criteria.Engine"]);
}
