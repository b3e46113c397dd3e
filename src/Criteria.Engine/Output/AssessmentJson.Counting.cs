using System.Text.Json;
using Criteria.Engine.Counting;
using Criteria.Engine.Findings;

namespace Criteria.Engine.Output;

/// <summary>How near a grade lies to its boundaries, and what counting alone leaves open.</summary>
public static partial class AssessmentJson
{
    private const int Decimals = 4;

    private static void WriteCloseness(Utf8JsonWriter writer, Closeness? closeness)
    {
        if (closeness is null)
        {
            return;
        }

        writer.WriteStartObject("closeness");
        writer.WriteNumber("events", closeness.Events);
        writer.WriteNumber("minutes", closeness.Minutes);
        writer.WriteStartArray("boundaries");
        foreach (var boundary in new[] { closeness.Below, closeness.Above }.OfType<Boundary>())
        {
            writer.WriteStartObject();
            writer.WriteNumber("at", Plain(boundary.At));
            writer.WriteString("side", boundary.Above ? "above" : "below");
            writer.WriteString("grade", boundary.Grade);
            WriteOptional(writer, boundary.Above ? "more_events" : "fewer_events", boundary.Events);
            WriteOptional(writer, boundary.Above ? "fewer_minutes" : "more_minutes", boundary.Minutes);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteStartObject("counting_error");
        writer.WriteString("method", "exact Poisson interval (Garwood); shares with the Jeffreys prior; a floor, because events cluster and nights differ");
        writer.WriteNumber("level", closeness.Level);
        writer.WriteNumber("low", Math.Round(closeness.Low, Decimals));
        writer.WriteNumber("high", Math.Round(closeness.High, Decimals));
        writer.WriteStartArray("shares");
        foreach (var share in closeness.Shares)
        {
            writer.WriteStartObject();
            writer.WriteString("grade", share.Grade);
            writer.WriteNumber("share", Math.Round(share.Share, Decimals));
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteEndObject();
        writer.WriteEndObject();
    }

    private static void WriteNightToNight(Utf8JsonWriter writer, Finding finding)
    {
        var figures = finding.NightToNight.ToArray();
        if (figures.Length == 0)
        {
            return;
        }

        writer.WriteStartArray("night_to_night");
        foreach (var figure in figures)
        {
            writer.WriteStartObject();
            writer.WriteNumber("low_percent", figure.LowPercent);
            writer.WriteNumber("high_percent", figure.HighPercent);
            writer.WriteString("of", figure.Of);
            WriteCites(writer, figure.Cites);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private static void WriteOptional(Utf8JsonWriter writer, string name, int? value)
    {
        if (value is { } number)
        {
            writer.WriteNumber(name, number);
        }
        else
        {
            writer.WriteNull(name);
        }
    }
}
