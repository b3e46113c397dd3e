using System.Text;

namespace Criteria.Documents.Tests.Support;

/// <summary>Reads a calendar file by the lines of RFC 5545 alone: unfolds, parts names from values, undoes escapes.</summary>
internal static class IcsText
{
    /// <summary>The file's own lines and its events, each a map from a property with its parameters to its value.</summary>
    public static (IReadOnlyList<string> Head, IReadOnlyList<IReadOnlyDictionary<string, string>> Events) Read(ReadOnlyMemory<byte> file)
    {
        var text = Encoding.UTF8.GetString(file.Span);
        text.Replace("\r\n", "", StringComparison.Ordinal).ShouldNotContain('\n');
        text.Replace("\r\n", "", StringComparison.Ordinal).ShouldNotContain('\r');
        text.ShouldEndWith("\r\n");
        text.Split("\r\n").ShouldAllBe(line => Encoding.UTF8.GetByteCount(line) <= 75);
        var lines = text.Replace("\r\n ", "", StringComparison.Ordinal).TrimEnd().Split("\r\n");
        lines[0].ShouldBe("BEGIN:VCALENDAR");
        lines[^1].ShouldBe("END:VCALENDAR");

        var head = new List<string>();
        var events = new List<IReadOnlyDictionary<string, string>>();
        Dictionary<string, string>? current = null;
        foreach (var line in lines[1..^1])
        {
            switch (line)
            {
                case "BEGIN:VEVENT":
                    current.ShouldBeNull();
                    current = new Dictionary<string, string>(StringComparer.Ordinal);
                    break;
                case "END:VEVENT":
                    events.Add(current.ShouldNotBeNull());
                    current = null;
                    break;
                default:
                    if (current is null)
                    {
                        head.Add(line);
                    }
                    else
                    {
                        var colon = line.IndexOf(':', StringComparison.Ordinal);
                        current.Add(line[..colon], Plain(line[(colon + 1)..]));
                    }

                    break;
            }
        }

        current.ShouldBeNull();
        return (head, events);
    }

    private static string Plain(string value)
    {
        var text = new StringBuilder();
        for (var at = 0; at < value.Length; at++)
        {
            if (value[at] != '\\')
            {
                value[at].ShouldNotBe(';');
                value[at].ShouldNotBe(',');
                text.Append(value[at]);
                continue;
            }

            at++;
            text.Append(value[at] switch
            {
                'n' or 'N' => '\n',
                '\\' or ',' or ';' => value[at],
                var other => throw new InvalidOperationException($"no escape \\{other}"),
            });
        }

        return text.ToString();
    }
}
