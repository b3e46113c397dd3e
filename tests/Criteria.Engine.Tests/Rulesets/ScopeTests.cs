using Criteria.Core.Logic;
using Criteria.Engine.Tests.Support;

namespace Criteria.Engine.Tests.Rulesets;

public sealed class ScopeTests
{
    // Source: position paper 2017 on home tests in children: birth to 18.
    [Theory]
    [InlineData("0 years")]
    [InlineData("17 years")]
    public void Child_WhateverElseIsKnown_IsRefusedWithOneFinding(string age)
    {
        var findings = CaseText.Complete.With("patient.age", age).Assess();

        findings.Assessment.Refusal.ShouldNotBeNull().Id.ShouldBe("scope.adults");
        findings.Assessment.Findings.ShouldHaveSingleItem().ShouldBeSameAs(findings.Assessment.Refusal);
        findings["scope.adults"].ReadFirst.ShouldNotBeNull().ShouldStartWith($"The patient is {age} old.");
    }

    [Theory]
    [InlineData("18 years", Standing.NotMet)]
    [InlineData("19 years", Standing.NotMet)]
    [InlineData("unknown", Standing.Undetermined)]
    [InlineData(null, Standing.Undetermined)]
    public void Adult_OrUnknownAge_IsNotRefused(string? age, Standing expected)
    {
        var findings = CaseText.Complete.With("patient.age", age).Assess();

        findings.Assessment.Refusal.ShouldBeNull();
        findings.Of("scope.adults").ShouldBe(expected);
        findings.Of("severity.rei-4").ShouldBe(Standing.Met);
    }
}
