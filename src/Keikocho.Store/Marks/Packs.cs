using System.Globalization;
using System.Text;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;

namespace Keikocho.Store.Marks;

/// <summary>
/// The evenings of one item as one short text: day, word (1 good, 2 prompted, 3 not yet, 0 for two words that disagree), then "s" for a
/// leader's suggestion and "x" for a sign-off that is enough by itself, then every word of the evening. "20261103.1.1 20261110.0s.13".
/// </summary>
public static class SeenPack
{
    /// <summary>Packs.</summary>
    public static string Pack(IReadOnlyList<SeenEvening> evenings)
    {
        ArgumentNullException.ThrowIfNull(evenings);
        var text = new StringBuilder();
        foreach (var evening in evenings)
        {
            if (text.Length > 0) text.Append(' ');
            text.Append(evening.On.ToString("yyyyMMdd", CultureInfo.InvariantCulture)).Append('.').Append((char)('0' + (int)(evening.Word ?? 0)));
            if (!evening.Confirmed) text.Append('s');
            if (evening.Settled) text.Append('x');
            text.Append('.');
            foreach (var word in evening.Seen) text.Append((char)('0' + (int)word));
        }

        return text.ToString();
    }

    /// <summary>Reads what <see cref="Pack"/> wrote.</summary>
    public static IReadOnlyList<SeenEvening> Unpack(string packed)
    {
        ArgumentNullException.ThrowIfNull(packed);
        if (packed.Length == 0) return [];
        var text = packed.AsSpan();
        var evenings = new List<SeenEvening>();
        Span<Range> fields = stackalloc Range[4];
        foreach (var range in text.Split(' '))
        {
            var part = text[range];
            if (part.Split(fields, '.') != 3) throw new FormatException($"“{part}” is no packed evening.");
            var said = part[fields[1]];
            var word = said[0] - '0';
            evenings.Add(new SeenEvening(PackedText.Day(part[fields[0]]), word == 0 ? null : (SeenWord)word, !said.Contains('s'), said.Contains('x'), Words(part[fields[2]])));
        }

        return evenings;
    }

    private static SeenWord[] Words(ReadOnlySpan<char> text)
    {
        var words = new SeenWord[text.Length];
        for (var i = 0; i < words.Length; i++) words[i] = (SeenWord)(text[i] - '0');
        return words;
    }
}

/// <summary>
/// The falls of one child as one short text: day, direction, side, stage, "c" clean or "t" head touched, "s" for a suggestion, the
/// device's number within this text and its own count. "20261103.1.0.3c.0.17".
/// </summary>
public static class FallPack
{
    /// <summary>Packs, by day, then device, then the device's own count; devices are numbered in that order, so that what is read back packs alike.</summary>
    public static string Pack(IEnumerable<FallMark> falls)
    {
        ArgumentNullException.ThrowIfNull(falls);
        var ordered = falls.OrderBy(f => f.On).ThenBy(f => f.Device.Value).ThenBy(f => f.Sequence).ToList();
        var devices = ordered.Select(f => f.Device).Distinct().OrderBy(device => device.Value).Select((device, number) => (device, number)).ToDictionary(d => d.device, d => d.number);
        return string.Join(' ', ordered.Select(f => string.Create(
            CultureInfo.InvariantCulture,
            $"{f.On:yyyyMMdd}.{(int)f.Direction}.{(int)f.Side}.{f.Stage}{(f.Clean ? 'c' : 't')}{(f.Confirmed ? "" : "s")}.{devices[f.Device]}.{f.Sequence}")));
    }

    /// <summary>
    /// Reads what <see cref="Pack"/> wrote. A device comes back as its number within the text: enough to know which falls were marked on
    /// the same one.
    /// </summary>
    public static IReadOnlyList<FallMark> Unpack(string packed)
    {
        ArgumentNullException.ThrowIfNull(packed);
        if (packed.Length == 0) return [];
        var text = packed.AsSpan();
        var falls = new List<FallMark>();
        Span<Range> f = stackalloc Range[7];
        foreach (var range in text.Split(' '))
        {
            var part = text[range];
            if (part.Split(f, '.') != 6) throw new FormatException($"“{part}” is no packed fall.");
            var how = part[f[3]];
            falls.Add(new FallMark(
                PackedText.Day(part[f[0]]),
                (FallDirection)PackedText.Whole(part[f[1]]),
                (FallSide)PackedText.Whole(part[f[2]]),
                how[0] - '0',
                how[1] == 'c',
                how.Length == 2,
                new DeviceId(new Guid(PackedText.Whole(part[f[4]]) + 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0)),
                PackedText.Whole(part[f[5]])));
        }

        return falls;
    }
}
