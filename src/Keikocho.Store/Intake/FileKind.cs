using System.Text;

namespace Keikocho.Store.Intake;

/// <summary>Says what a file is by its first bytes, never by its name.</summary>
internal static class FileKind
{
    internal enum Kind
    {
        Zip,
        Text,
    }

    private static readonly (byte[] Start, string What)[] Known =
    [
        ("%PDF"u8.ToArray(), "a PDF document"),
        ([0xD0, 0xCF, 0x11, 0xE0, 0xA1, 0xB1, 0x1A, 0xE1], "an old or protected office file (.xls, or a workbook with a password)"),
        ([0x89, 0x50, 0x4E, 0x47], "a picture (PNG)"),
        ([0xFF, 0xD8, 0xFF], "a picture (JPEG)"),
        ("GIF8"u8.ToArray(), "a picture (GIF)"),
        ("RIFF"u8.ToArray(), "a picture or a sound"),
        ("II*\0"u8.ToArray(), "a picture (TIFF)"),
        ("MM\0*"u8.ToArray(), "a picture (TIFF)"),
        ([0x1F, 0x8B], "a compressed file (gzip)"),
        ("Rar!"u8.ToArray(), "a compressed file (RAR)"),
        ([0x37, 0x7A, 0xBC, 0xAF, 0x27, 0x1C], "a compressed file (7z)"),
        ("SQLite format 3\0"u8.ToArray(), "a database"),
        ("{\\rtf"u8.ToArray(), "a text document (RTF)"),
        ([0x7F, 0x45, 0x4C, 0x46], "a program"),
        ("MZ\u0090\0"u8.ToArray(), "a program"),
    ];

    /// <summary>A zip or text; anything else is refused by what it is.</summary>
    internal static Kind Of(ReadOnlySpan<byte> start, string fileName)
    {
        if (start.Length == 0) throw new RefusedException($"'{fileName}' is empty; choose the file that holds the club's list.");
        if (start.StartsWith("PK\x03\x04"u8) || start.StartsWith("PK\x05\x06"u8)) return Kind.Zip;
        foreach (var (signature, what) in Known)
            if (start.StartsWith(signature)) throw Is(fileName, what);
        if (start.Length > 11 && start[4..8].SequenceEqual("ftyp"u8)) throw Is(fileName, "a picture or a film");
        var text = Encoding.Latin1.GetString(start[..Math.Min(start.Length, 1024)]).TrimStart('\u00EF', '\u00BB', '\u00BF', ' ', '\t', '\r', '\n');
        if (text.StartsWith("<!doctype html", StringComparison.OrdinalIgnoreCase) || text.StartsWith("<html", StringComparison.OrdinalIgnoreCase) || text.StartsWith("<table", StringComparison.OrdinalIgnoreCase) || text.StartsWith("<meta", StringComparison.OrdinalIgnoreCase))
            throw Is(fileName, "a web page (HTML), even if its name says otherwise");
        if (text.StartsWith("<?xml", StringComparison.OrdinalIgnoreCase)) throw Is(fileName, "an XML file");
        return Kind.Text;
    }

    internal static RefusedException Is(string fileName, string what)
        => new($"'{fileName}' is {what}, not a spreadsheet that can be read; open it in the program it was made with and save it as .xlsx or .csv.");
}
