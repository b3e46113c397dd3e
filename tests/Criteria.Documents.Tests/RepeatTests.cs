using System.Globalization;
using Criteria.Documents.Renderers;
using Criteria.Documents.Tests.Support;

namespace Criteria.Documents.Tests;

/// <summary>The same case, rules and program give the same bytes.</summary>
public sealed class RepeatTests
{
    public static TheoryData<string> Formats => [.. DocumentFormats.All];

    [Theory]
    [MemberData(nameof(Formats))]
    public void Document_WrittenTwice_HasTheSameBytes(string format)
    {
        var usual = Write(format);
        var before = CultureInfo.CurrentCulture;
        try
        {
            // A culture of its own making: the runtime of these tests carries no data of others.
            var other = (CultureInfo)CultureInfo.InvariantCulture.Clone();
            other.NumberFormat.NumberDecimalSeparator = ",";
            other.NumberFormat.NegativeSign = "~";
            other.DateTimeFormat.DateSeparator = ".";
            CultureInfo.CurrentCulture = other;

            Write(format).ShouldBe(usual);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static byte[] Write(string format) => DocumentFormats.Render(Written.Document(Written.ExampleText("oral-appliance-mild"), "impression").Page!, format).ToArray();
}
