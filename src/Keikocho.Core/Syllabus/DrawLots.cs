using System.Text;

namespace Keikocho.Core.Syllabus;

/// <summary>
/// Draws by lot, so that the printed number of a draw repeats it for ever and on every machine. Each item gets a ticket: the 64-bit
/// FNV-1a number of the text "rank/requirement|number|item" in UTF-8, stirred by the last step of SplitMix64. The smallest tickets are
/// drawn. An item that is added or barred changes no other ticket.
/// </summary>
internal static class DrawLots
{
    private const ulong Start = 14695981039346656037;
    private const ulong Prime = 1099511628211;

    /// <summary>The draw of one requirement, ready for its items.</summary>
    public static ulong Urn(string rank, string requirement, int number) =>
        Hash(Hash(Hash(Hash(Hash(Start, rank), "/"), requirement), "|"), number.ToString(System.Globalization.CultureInfo.InvariantCulture) + "|");

    /// <summary>The ticket of an item.</summary>
    public static ulong Ticket(ulong urn, string item)
    {
        unchecked
        {
            var z = Hash(urn, item);
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
            return z ^ (z >> 31);
        }
    }

    private static ulong Hash(ulong hash, string text)
    {
        unchecked
        {
            Span<byte> few = stackalloc byte[256];
            var bytes = text.Length <= 64 ? few[..Encoding.UTF8.GetBytes(text, few)] : Encoding.UTF8.GetBytes(text);
            foreach (var b in bytes)
                hash = (hash ^ b) * Prime;
            return hash;
        }
    }
}
