using System.Text;

namespace Criteria.Core.Tests.Support;

/// <summary>Damages bytes the same way in every run.</summary>
internal static class Damage
{
    private static readonly string[] Pieces =
    [
        "{", "}", "[", "]", ":", ": ", "- ", "\n", "\r\n", "\t", "\"", "'", "&a ", "*a", "!!x ", "---\n", "...\n", "? ", "| ", ">-\n", "#", ",", "~", "\0", "\u00e9",
        "\ud83d\ude00", "\u2028", "\u0085", "\ufeff", "unknown", "not applicable", "yes", "no", "-1", "1e9", "99999999", "0", "{}", "[]", "[[", "{a: {a: {a: 1}}}", "<<: ",
    ];

    /// <summary>The first <paramref name="count"/> of every so many beginnings.</summary>
    public static IEnumerable<byte[]> Beginnings(byte[] content, int count)
    {
        for (var i = 0; i < count; i++)
        {
            yield return content[..(int)((long)content.Length * i / count)];
        }
    }

    /// <summary>Bytes changed, left out, doubled, or with pieces of syntax put in.</summary>
    public static IEnumerable<byte[]> Mutations(byte[] content, int count, int seed)
    {
        var random = new Random(seed);
        for (var i = 0; i < count; i++)
        {
            var bytes = content.ToList();
            for (var change = random.Next(1, 4); change > 0; change--)
            {
                var at = random.Next(bytes.Count);
                var length = Math.Min(random.Next(1, 30), bytes.Count - at);
                switch (random.Next(6))
                {
                    case 0:
                        bytes[at] = (byte)random.Next(256);
                        break;
                    case 1:
                        bytes[at] = (byte)random.Next(32, 127);
                        break;
                    case 2:
                        bytes.RemoveRange(at, length);
                        break;
                    case 3:
                        bytes.InsertRange(at, bytes.GetRange(at, length));
                        break;
                    default:
                        bytes.InsertRange(at, Encoding.UTF8.GetBytes(Pieces[random.Next(Pieces.Length)]));
                        break;
                }

                if (bytes.Count == 0)
                {
                    break;
                }
            }

            yield return [.. bytes];
        }
    }

    /// <summary>Bytes that mean nothing, and pieces of syntax in no order.</summary>
    public static IEnumerable<byte[]> Noise(int count, int seed)
    {
        var random = new Random(seed);
        for (var i = 0; i < count; i++)
        {
            var noise = new byte[random.Next(1, 200)];
            random.NextBytes(noise);
            yield return noise;
            yield return Encoding.UTF8.GetBytes(string.Concat(Enumerable.Range(0, random.Next(1, 40)).Select(_ => Pieces[random.Next(Pieces.Length)])));
        }
    }
}
