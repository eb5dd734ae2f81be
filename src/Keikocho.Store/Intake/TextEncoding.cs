using System.Text;

namespace Keikocho.Store.Intake;

/// <summary>Finds the encoding of a text file.</summary>
internal static class TextEncoding
{
    private const int SampleBytes = 1 << 20;

    /// <summary>The encoding, and what to say about it.</summary>
    internal static (Encoding Encoding, int Mark, string Said) Of(Stream file, string fileName)
    {
        var sample = new byte[(int)Math.Min(file.Length, SampleBytes)];
        file.Position = 0;
        file.ReadExactly(sample);
        file.Position = 0;
        ReadOnlySpan<byte> bytes = sample;
        if (bytes.StartsWith((byte[])[0xEF, 0xBB, 0xBF])) return (new UTF8Encoding(false), 3, "UTF-8 with a byte order mark");
        if (bytes.StartsWith((byte[])[0xFF, 0xFE])) return (Encoding.Unicode, 2, "UTF-16 (little end first)");
        if (bytes.StartsWith((byte[])[0xFE, 0xFF])) return (Encoding.BigEndianUnicode, 2, "UTF-16 (big end first)");
        if (ZerosAt(bytes, 1) is var odd && odd > 0.4 && ZerosAt(bytes, 0) < 0.05) return (Encoding.Unicode, 0, "UTF-16 (little end first), without a mark");
        if (ZerosAt(bytes, 0) > 0.4 && odd < 0.05) return (Encoding.BigEndianUnicode, 0, "UTF-16 (big end first), without a mark");

        var control = 0;
        foreach (var one in bytes)
            if (one < 32 && one is not (9 or 10 or 12 or 13)) control++;
        if (bytes.Contains((byte)0) || control * 100 > bytes.Length)
            throw new RefusedException($"'{fileName}' is not text and no workbook either; choose a file saved as .xlsx or .csv.");

        if (IsUtf8(bytes, wholeFile: sample.Length == file.Length)) return (new UTF8Encoding(false), 0, bytes.ContainsAnyInRange<byte>(0x80, 0xFF) ? "UTF-8" : "plain text");
        return Western(bytes) >= Central(bytes)
            ? (Encoding.GetEncoding(1252), 0, "Windows-1252 (Western Europe; ISO 8859-1 is part of it), by guess: look at the names with accents")
            : bytes.ContainsAnyInRange<byte>(0x80, 0x9F)
                ? (Encoding.GetEncoding(1250), 0, "Windows-1250 (Central Europe), by guess: look at the names with accents")
                : (Encoding.GetEncoding("iso-8859-2"), 0, "ISO 8859-2 (Central Europe), by guess: look at the names with accents");
    }

    private static double ZerosAt(ReadOnlySpan<byte> bytes, int from)
    {
        int zeros = 0, seen = 0;
        for (var i = from; i < bytes.Length; i += 2, seen++)
            if (bytes[i] == 0) zeros++;
        return seen < 2 ? 0 : (double)zeros / seen;
    }

    private static bool IsUtf8(ReadOnlySpan<byte> bytes, bool wholeFile)
    {
        // A sample may end inside a letter.
        if (!wholeFile)
            for (var cut = 0; cut < 3 && bytes.Length > 0 && bytes[^1] >= 0x80; cut++) bytes = bytes[..^1];
        return System.Text.Unicode.Utf8.IsValid(bytes);
    }

    // The two alphabets share most letters. These bytes tell them apart: in one they are letters that names have, in the other signs or
    // letters that names hardly have. Counted, because single ones mislead. From the code tables; the choice of letters is ours.
    private static int Western(ReadOnlySpan<byte> bytes) => Count(bytes, [0xE0, 0xE8, 0xEA, 0xEC, 0xEE, 0xEF, 0xF1, 0xF2, 0xF5, 0xF8, 0xFB, 0xE5, 0xE6, 0xC5, 0xD8, 0xC8, 0xD1, 0x92, 0x93, 0x94, 0xE3, 0xFF]) + Count(bytes, [0xEB, 0xE7, 0xF4]);

    // ł š ž č ě ř ů ż ś ą ę ň ď ť ő ű ć ń ź đ
    private static int Central(ReadOnlySpan<byte> bytes) => Count(bytes, [0xB3, 0xA3, 0xB9, 0xBC, 0xBE, 0xB1, 0xB6, 0xBF, 0x9C, 0x9F, 0x9D, 0x8C, 0x8F, 0xE8, 0xEC, 0xF8, 0xF9, 0xC8, 0xD8, 0xEA, 0xF2, 0xEF, 0xF5, 0xFB, 0xE6, 0xF1, 0xF0, 0x9A, 0x9E, 0x8A, 0x8E, 0xA9, 0xAE]);

    private static int Count(ReadOnlySpan<byte> bytes, ReadOnlySpan<byte> letters)
    {
        var count = 0;
        foreach (var one in bytes)
            if (letters.Contains(one)) count++;
        return count;
    }
}
