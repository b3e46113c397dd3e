using System.Globalization;
using System.Text;
using Criteria.Core.Facts;

namespace Criteria.Engine.Tests.Differential;

/// <summary>Writes a case as plain facts for the second rule program. Nothing that the library computes is among them.</summary>
internal static class ClipsFacts
{
    public static void Write(StringBuilder text, Case subject, IEnumerable<FactDefinition> definitions)
    {
        text.AppendLine("(begin)");
        var facts = subject.Nights is [var night, ..] ? night.Facts : subject.Facts;
        var entered = facts.Entered.ToDictionary(fact => fact.Definition.Slot);
        foreach (var definition in definitions)
        {
            Write(text, definition.Id, entered.GetValueOrDefault(definition.Slot) ?? Fact.Absent(definition));
        }

        foreach (var list in facts.Records)
        {
            foreach (var item in list.Items)
            {
                var id = item.Id.Replace(' ', '-');
                text.Append(CultureInfo.InvariantCulture, $"(record-entry {id} {list.Definition.At} \"{item.Kind}\")\n");
                foreach (var attribute in item.Attributes)
                {
                    Write(text, $"{id}/{Name(list.Definition, attribute.Definition)}", attribute);
                }
            }

            if (list.ClosedBy is not null)
            {
                text.Append(CultureInfo.InvariantCulture, $"(close-list {list.Definition.At})\n");
            }
        }
    }

    private static string Name(RecordDefinition list, FactDefinition attribute) => attribute.At![(list.At.Length + 1)..];

    private static void Write(StringBuilder text, string name, Fact fact) => text.AppendLine((fact.State, fact.Value) switch
    {
        (FactState.NotApplicable, _) => $"(no-such {name})",
        (_, null or TextValue) => $"(unknown-fact {name})",
        (_, YesNoValue value) => $"(word-fact {name} {(value.Yes ? "yes" : "no")})",
        (_, ChoiceValue value) => $"(word-fact {name} \"{value.Word}\")",
        (_, CodeValue value) => $"(word-fact {name} \"{value.Code}\")",
        (_, DateValue value) => $"(number-fact {name} {value.Date.DayNumber} {value.Date.DayNumber} TRUE)",
        (_, NumberValue { Range: var range }) =>
            $"(number-fact {name} {Text(range.Low)} {Text(range.High)} {(range.HighIncluded ? "TRUE" : "FALSE")})",
        (_, DurationsValue value) => $"(list-fact {name} {string.Join(' ', value.Times.Select(time => time is { } known ? Text(known) : "-1"))})",
        _ => throw new InvalidOperationException($"no way to write {name}"),
    });

    private static string Text(Ratio number) => number.Rounded.ToString("0.##########", CultureInfo.InvariantCulture);
}
