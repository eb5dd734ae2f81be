using System.IO.Compression;
using System.Text;

namespace Keikocho.Store.Intake;

/// <summary>Looks through a zip before it is believed: what it is, and what its parts really come to when inflated.</summary>
internal static class WorkbookParts
{
    private const int SmallPart = 1 << 20;

    /// <summary>The value of the workbook's <c>date1904</c>; empty where it has none. Anything that is no safe workbook is refused.</summary>
    internal static string Check(Stream file, string fileName, ReadLimits limits, IProgress<double>? progress, CancellationToken cancel)
    {
        using var zip = new ZipArchive(file, ZipArchiveMode.Read, leaveOpen: true);
        if (zip.Entries.Count > limits.Entries) throw new RefusedException($"'{fileName}' has more than {limits.Entries:#,0} parts, which no list of a club has; save the sheet of the children as .xlsx or .csv and read that.");
        Kind(zip, fileName);
        var from1904 = "";
        long total = 0, stored = 0;
        var all = Math.Max(1, zip.Entries.Sum(entry => entry.CompressedLength));
        var buffer = new byte[81_920];
        foreach (var entry in zip.Entries)
        {
            // The header's sizes are the file's own word; what counts is what comes out.
            long inflated = 0;
            var workbook = entry.FullName == "xl/workbook.xml" ? new MemoryStream() : null;
            using (var part = entry.Open())
                for (int read; (read = part.Read(buffer, 0, buffer.Length)) > 0;)
                {
                    cancel.ThrowIfCancellationRequested();
                    inflated += read;
                    total += read;
                    if (total > limits.InflatedBytes || inflated > SmallPart && inflated > Math.Max(1, entry.CompressedLength) * limits.InflatedRatio)
                        throw new RefusedException($"'{fileName}' swells to far more than it should when it is opened, as a file made to do harm would; save the sheet of the children again as .xlsx or .csv and read that.");
                    if (workbook is not null && workbook.Length < SmallPart) workbook.Write(buffer, 0, read);
                }
            if (workbook is not null) from1904 = Counts1904(Encoding.UTF8.GetString(workbook.GetBuffer(), 0, (int)workbook.Length));
            workbook?.Dispose();
            stored += entry.CompressedLength;
            progress?.Report(0.3 * Math.Min(1.0, (double)stored / all));
        }
        return from1904;
    }

    private static void Kind(ZipArchive zip, string fileName)
    {
        if (zip.GetEntry("xl/workbook.xml") is not null) return;
        if (zip.GetEntry("xl/workbook.bin") is not null) throw FileKind.Is(fileName, "a binary workbook (.xlsb)");
        if (zip.GetEntry("mimetype") is { } type)
        {
            using var text = new StreamReader(type.Open(), Encoding.ASCII);
            var start = new char[100];
            var said = new string(start, 0, text.ReadBlock(start, 0, start.Length));
            throw FileKind.Is(fileName, said.Contains("opendocument.spreadsheet", StringComparison.Ordinal) ? "an OpenDocument spreadsheet (.ods)" : "an OpenDocument file");
        }
        if (zip.GetEntry("word/document.xml") is not null) throw FileKind.Is(fileName, "a text document (.docx)");
        if (zip.GetEntry("ppt/presentation.xml") is not null) throw FileKind.Is(fileName, "a presentation (.pptx)");
        throw FileKind.Is(fileName, "a compressed file (zip) without a workbook in it");
    }

    private static string Counts1904(string workbook)
    {
        var at = workbook.IndexOf("date1904", StringComparison.Ordinal);
        if (at < 0) return "";
        var value = workbook.AsSpan(at + 8).TrimStart(" =\"'");
        var end = value.IndexOfAny('"', '\'');
        return end < 0 ? "" : value[..end].ToString();
    }
}
