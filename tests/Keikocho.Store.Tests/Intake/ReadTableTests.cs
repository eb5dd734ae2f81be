using System.IO.Compression;
using System.Text;
using Keikocho.Core.Intake;
using Keikocho.Store.Intake;

namespace Keikocho.Store.Tests.Intake;

public sealed class ReadTableTests
{
    [Theory]
    [InlineData("accents.xlsx", "")]
    [InlineData("accents-comma-utf8.csv", "UTF-8; its columns are parted by a comma")]
    [InlineData("accents-comma-utf8-bom.csv", "UTF-8 with a byte order mark; its columns are parted by a comma")]
    [InlineData("accents-semicolon-1252.csv", "Windows-1252 (Western Europe")]
    [InlineData("accents-tab-utf16.csv", "UTF-16 (little end first); its columns are parted by a tab")]
    [InlineData("accents-bar-utf8.csv", "UTF-8; its columns are parted by a bar")]
    public void Each_encoding_and_separator_gives_the_same_names(string file, string said)
    {
        var read = IntakeFiles.Good(file);
        var sheet = read.Sheets[0];
        Assert.Equal(5, sheet.Rows);
        Assert.Equal(["Zoé", "Lefèvre-Écluse", "14/03/2015", "0032 470 000 001"], Enumerable.Range(1, 4).Select(column => sheet[2, column].Text));
        Assert.Equal(["Søren Åkanal", "Jürgen Groß", "Íñigo Peña; del Río"], Enumerable.Range(3, 3).Select(row => $"{sheet[row, 1].Text} {sheet[row, 2].Text}"));
        if (said.Length > 0) Assert.Contains(said, read.Notes[0], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("central-semicolon-1250.csv", "Windows-1250")]
    [InlineData("central-semicolon-8859-2.csv", "ISO 8859-2")]
    public void Central_European_files_are_guessed_and_said(string file, string said)
    {
        var read = IntakeFiles.Good(file);
        Assert.Contains(said, read.Notes[0], StringComparison.Ordinal);
        Assert.Contains("by guess", read.Notes[0], StringComparison.Ordinal);
        Assert.Equal(["Łucja Śluza", "Žofie Řeháčková", "Ľuboš Kováč", "Ágnes Zsilipő"], Enumerable.Range(2, 4).Select(row => $"{read.Sheets[0][row, 1].Text} {read.Sheets[0][row, 2].Text}"));
    }

    [Theory]
    [InlineData("UTF-16LE")]
    [InlineData("UTF-16BE")]
    public void Utf16_without_a_mark_is_found_by_its_zeros(string encoding)
    {
        var read = Assert.IsType<TableReading.Read>(IntakeFiles.Read(Encoding.GetEncoding(encoding).GetBytes("Name;Born\r\nAda Lück;2015-01-02\r\n"), "list.csv"));
        Assert.Equal("Ada Lück", read.Sheets[0][2, 1].Text);
    }

    [Fact]
    public void A_workbook_cell_keeps_its_kind()
    {
        var sheet = IntakeFiles.Sheet("cells.xlsx");
        Assert.Equal((CellKind.Text, "word"), (sheet[1, 1].Kind, sheet[1, 1].Text));
        Assert.Equal((CellKind.Number, "12.5"), (sheet[1, 2].Kind, sheet[1, 2].Text));
        Assert.Equal((CellKind.Number, "7"), (sheet[1, 3].Kind, sheet[1, 3].Text));
        Assert.Equal((CellKind.Date, new DateOnly(2016, 2, 29)), (sheet[1, 5].Kind, sheet[1, 5].Day!.Value));
        Assert.Equal((CellKind.Time, new TimeOnly(17, 50)), (sheet[1, 6].Kind, sheet[1, 6].Clock!.Value));
        Assert.Equal("5", sheet[1, 7].Text);                 // a formula's saved value
        Assert.NotEqual(CellKind.Number, sheet[1, 8].Kind);  // a formula that failed is no number
        Assert.Equal("=1+1", sheet[1, 9].Text);              // text that looks like a formula stays text
        Assert.Equal("blanks", sheet[1, 10].Text);
    }

    [Fact]
    public void A_merged_cell_fills_what_it_covers()
    {
        var read = IntakeFiles.Good("cells.xlsx");
        var sheet = read.Sheets[0];
        foreach (var (row, column) in new[] { (2, 2), (3, 1), (3, 2) })
            Assert.Equal(("over two", true), (sheet[row, column].Text, sheet[row, column].FromMerge));
        Assert.False(sheet[2, 1].FromMerge);
        Assert.Equal("below", sheet[3, 3].Text);
        Assert.Contains(read.Notes, note => note.Contains("merged", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("true")]
    [InlineData("1")]
    public void Days_counted_from_1904_are_the_same_days(string said)
    {
        using var file = new MemoryStream();
        file.Write(File.ReadAllBytes(IntakeFiles.PathOf("days1904.xlsx")));
        using (var zip = new ZipArchive(file, ZipArchiveMode.Update, leaveOpen: true))
        {
            string text;
            using (var old = new StreamReader(zip.GetEntry("xl/workbook.xml")!.Open())) text = old.ReadToEnd();
            Assert.Contains("date1904=\"true\"", text, StringComparison.Ordinal);
            zip.GetEntry("xl/workbook.xml")!.Delete();
            using var made = new StreamWriter(zip.CreateEntry("xl/workbook.xml").Open());
            made.Write(text.Replace("date1904=\"true\"", $"date1904=\"{said}\"", StringComparison.Ordinal));
        }
        var sheet = Assert.IsType<TableReading.Read>(IntakeFiles.Read(file.ToArray(), "days.xlsx")).Sheets[0];
        Assert.True(sheet.From1904);
        Assert.Equal(new DateOnly(2015, 3, 14), sheet[2, 2].Day);
        Assert.Equal(new DateOnly(2016, 2, 29), sheet[3, 2].Day);
    }

    [Fact]
    public void A_hidden_sheet_is_read_and_noted()
    {
        var read = IntakeFiles.Good("messy-roster.xlsx");
        Assert.Equal([("Juniors", false), ("Old", true)], read.Sheets.Select(sheet => (sheet.Name, sheet.Hidden)));
        Assert.Contains(read.Notes, note => note.Contains("'Old' is hidden", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("accents.pdf", "a PDF document")]
    [InlineData("accents.html", "a web page (HTML)")]
    [InlineData("accents.xls", "an old or protected office file")]
    [InlineData("accents.ods", "an OpenDocument spreadsheet")]
    public void What_is_no_table_is_refused_by_what_it_is_whatever_its_name(string file, string what)
    {
        foreach (var name in new[] { file, "list.xlsx", "list.csv" })
        {
            var refused = Assert.IsType<TableReading.Refused>(IntakeFiles.Read(File.ReadAllBytes(IntakeFiles.PathOf(file)), name));
            Assert.Contains(what, refused.Sentence, StringComparison.Ordinal);
            Assert.Contains("save it as .xlsx or .csv", refused.Sentence, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_workbook_called_csv_and_text_called_xlsx_are_read_as_what_they_are()
    {
        Assert.IsType<TableReading.Read>(IntakeFiles.Read(File.ReadAllBytes(IntakeFiles.PathOf("accents.xlsx")), "list.csv"));
        Assert.IsType<TableReading.Read>(IntakeFiles.Read(File.ReadAllBytes(IntakeFiles.PathOf("accents-comma-utf8.csv")), "list.xlsx"));
    }

    [Theory]
    [InlineData("Name;Born\rAda;1\rBen;2\r")]
    [InlineData("Name;Born\nAda;1\nBen;2")]
    [InlineData("Name;Born\r\nAda;1\nBen;2\r")]
    [InlineData("\"Name\";\"Born\"\r\n\"Ada\";\"1\"\r\n\"Ben\";\"2\"\r\n\r\n\r\n")]
    public void Every_line_end_is_a_line_end(string text)
    {
        var sheet = Assert.IsType<TableReading.Read>(IntakeFiles.Read(Encoding.UTF8.GetBytes(text), "a.csv")).Sheets[0];
        Assert.Equal(3, sheet.Rows);
        Assert.Equal(["Ada", "1", "Ben", "2"], new[] { sheet[2, 1].Text, sheet[2, 2].Text, sheet[3, 1].Text, sheet[3, 2].Text });
    }

    [Fact]
    public void Quoted_separators_line_ends_and_quotes_stay_in_their_cell_and_blank_lines_keep_the_row_numbers()
    {
        var sheet = Assert.IsType<TableReading.Read>(IntakeFiles.Read("a,b\n\n\"x, y\",\"one\ntwo\"\n\"say \"\"hi\"\"\",z"u8.ToArray(), "a.csv")).Sheets[0];
        Assert.Equal("x, y", sheet[3, 1].Text);
        Assert.Equal("one\ntwo", sheet[3, 2].Text);
        Assert.Equal("say \"hi\"", sheet[4, 1].Text);
    }

    [Fact]
    public void An_empty_file_and_one_of_blanks_are_refused()
    {
        Assert.Contains("empty", Assert.IsType<TableReading.Refused>(IntakeFiles.Read([], "a.csv")).Sentence, StringComparison.Ordinal);
        Assert.Contains("blanks", Assert.IsType<TableReading.Refused>(IntakeFiles.Read(" ;;\r\n\r\n"u8.ToArray(), "a.csv")).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_of_fifty_megabytes_is_read_or_refused_within_bounded_memory()
    {
        var line = Encoding.UTF8.GetBytes("Ada,Lock,2015-01-02,yellow," + new string('n', 400) + "\n");
        var bytes = new byte[50 << 20];
        for (var at = 0; at < bytes.Length; at += line.Length) line.AsSpan(0, Math.Min(line.Length, bytes.Length - at)).CopyTo(bytes.AsSpan(at));
        var before = GC.GetAllocatedBytesForCurrentThread();
        var refused = Assert.IsType<TableReading.Refused>(IntakeFiles.Read(bytes, "big.csv"));
        Assert.Contains("more than 100,000 rows", refused.Sentence, StringComparison.Ordinal);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 500L << 20);

        var small = Assert.IsType<TableReading.Refused>(IntakeFiles.Read(bytes, "big.csv", ReadLimits.Proposed with { FileBytes = 10 << 20 }));
        Assert.Contains("50 MB, more than the 10 MB", small.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_stream_that_cannot_seek_is_copied_once_up_to_the_limit()
    {
        using var endless = new Endless();
        var refused = Assert.IsType<TableReading.Refused>(ReadTable.Read(endless, "a.csv", ReadLimits.Proposed with { FileBytes = 1 << 20 }, null, TestContext.Current.CancellationToken));
        Assert.Contains("1 MB", refused.Sentence, StringComparison.Ordinal);
        Assert.InRange(endless.Given, 1 << 20, 2 << 20);
    }

    [Fact]
    public void A_zip_bomb_is_refused_by_what_comes_out_of_it()
    {
        var bomb = Zip(("[Content_Types].xml", 10), ("xl/workbook.xml", 10), ("xl/worksheets/sheet1.xml", 300 << 20));
        Assert.True(bomb.Length < 1 << 20);
        var before = GC.GetAllocatedBytesForCurrentThread();
        var refused = Assert.IsType<TableReading.Refused>(IntakeFiles.Read(bomb, "list.xlsx"));
        Assert.Contains("swells", refused.Sentence, StringComparison.Ordinal);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 20L << 20);
    }

    [Fact]
    public void A_zip_bomb_that_lies_about_its_sizes_is_refused_too()
    {
        var bomb = Zip(("[Content_Types].xml", 10), ("xl/workbook.xml", 10), ("xl/worksheets/sheet1.xml", 30 << 20));
        // The uncompressed size stands in the local header and in the directory (at 22 and 24 bytes of each; APPNOTE 4.3.7 and 4.3.12, from memory).
        var size = BitConverter.GetBytes(30 << 20);
        for (var at = 0; at + 4 <= bomb.Length; at++)
            if (bomb.AsSpan(at, 4).SequenceEqual(size)) BitConverter.GetBytes(1000).CopyTo(bomb.AsSpan(at));
        Assert.IsType<TableReading.Refused>(IntakeFiles.Read(bomb, "list.xlsx"));
    }

    [Fact]
    public void A_zip_of_thousands_of_parts_is_refused()
        => Assert.Contains("parts", Assert.IsType<TableReading.Refused>(IntakeFiles.Read(Zip([.. Enumerable.Range(0, 2100).Select(i => ($"xl/{i}.xml", 1))]), "list.xlsx")).Sentence, StringComparison.Ordinal);

    [Fact]
    public void Limits_on_rows_columns_cells_and_length_are_each_refused_with_one_sentence()
    {
        TableReading Read(string text, ReadLimits limits) => IntakeFiles.Read(Encoding.UTF8.GetBytes(text), "a.csv", limits);
        var tall = string.Concat(Enumerable.Repeat("a,b\n", 50));
        Assert.Contains("10 rows", Assert.IsType<TableReading.Refused>(Read(tall, ReadLimits.Proposed with { Rows = 10 })).Sentence, StringComparison.Ordinal);
        Assert.Contains("10 filled cells", Assert.IsType<TableReading.Refused>(Read(tall, ReadLimits.Proposed with { Cells = 10 })).Sentence, StringComparison.Ordinal);
        Assert.Contains("1 columns", Assert.IsType<TableReading.Refused>(Read(tall, ReadLimits.Proposed with { Columns = 1 })).Sentence, StringComparison.Ordinal);
        Assert.Contains("quotation mark", Assert.IsType<TableReading.Refused>(Read("a,\"" + new string('b', 200) + "\"\n", ReadLimits.Proposed with { CellCharacters = 100 })).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_damaged_workbook_is_refused()
    {
        var bytes = File.ReadAllBytes(IntakeFiles.PathOf("accents.xlsx"));
        var refused = Assert.IsType<TableReading.Refused>(IntakeFiles.Read(bytes[..(bytes.Length / 2)], "list.xlsx"));
        Assert.Contains("damaged", refused.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Progress_rises_to_one_and_a_cancelled_reading_stops()
    {
        var told = new List<double>();
        using var file = File.OpenRead(IntakeFiles.PathOf("messy-register.xlsx"));
        ReadTable.Read(file, "a.xlsx", ReadLimits.Proposed, new Told(told), TestContext.Current.CancellationToken);
        Assert.Equal(told.Order(), told);
        Assert.Equal(1, told[^1]);
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.Throws<OperationCanceledException>(() => ReadTable.Read(file, "a.xlsx", ReadLimits.Proposed, null, stop.Token));
    }

    [Theory]
    [InlineData("<row r=\"2000000000\"><c r=\"A2000000000\"><v>1</v></c></row>", "")]
    [InlineData("<row r=\"1\"><c r=\"ZZZZZZ1\"><v>1</v></c></row>", "")]
    [InlineData("<row r=\"1\"><c r=\"XFD1\"><v>1</v></c></row><row r=\"900000\"><c r=\"A900000\"><v>1</v></c></row>", "")]
    [InlineData("<row r=\"1\"><c r=\"A1\"><v>1</v></c></row><row r=\"90000\"><c r=\"A90000\"><v>1</v></c></row>", "<mergeCells count=\"1\"><mergeCell ref=\"A1:XFD1048576\"/></mergeCells>")]
    public void A_sheet_that_claims_to_be_huge_is_refused_within_bounded_memory(string rows, string after)
    {
        var before = GC.GetAllocatedBytesForCurrentThread();
        var reading = IntakeFiles.Read(WithSheet($"<?xml version=\"1.0\" encoding=\"UTF-8\"?><worksheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><sheetData>{rows}</sheetData>{after}</worksheet>"), "list.xlsx");
        Assert.IsType<TableReading.Refused>(reading);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 400L << 20);
    }

    [Fact]
    public void A_document_type_in_a_workbook_is_not_followed()
    {
        var refused = IntakeFiles.Read(WithSheet("<?xml version=\"1.0\"?><!DOCTYPE w [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;&a;\">]><worksheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><sheetData><row r=\"1\"><c r=\"A1\" t=\"str\"><v>&b;</v></c></row></sheetData></worksheet>"), "list.xlsx");
        Assert.IsType<TableReading.Refused>(refused);
    }

    private static byte[] WithSheet(string xml)
    {
        using var file = new MemoryStream();
        file.Write(File.ReadAllBytes(IntakeFiles.PathOf("cells.xlsx")));
        using (var zip = new ZipArchive(file, ZipArchiveMode.Update, leaveOpen: true))
        {
            zip.GetEntry("xl/worksheets/sheet1.xml")!.Delete();
            using var made = new StreamWriter(zip.CreateEntry("xl/worksheets/sheet1.xml").Open());
            made.Write(xml);
        }
        return file.ToArray();
    }

    private static byte[] Zip(params (string Name, int Bytes)[] parts)
    {
        using var made = new MemoryStream();
        using (var zip = new ZipArchive(made, ZipArchiveMode.Create, leaveOpen: true))
            foreach (var (name, bytes) in parts)
            {
                using var part = zip.CreateEntry(name).Open();
                var zeros = new byte[1 << 16];
                for (var left = bytes; left > 0; left -= zeros.Length) part.Write(zeros, 0, Math.Min(left, zeros.Length));
            }
        return made.ToArray();
    }

    private sealed class Told(List<double> told) : IProgress<double>
    {
        public void Report(double value) => told.Add(value);
    }

    private sealed class Endless : Stream
    {
        public long Given { get; private set; }
        public override bool CanRead => true;
        public override bool CanSeek => false;
        public override bool CanWrite => false;
        public override long Length => throw new NotSupportedException();
        public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }
        public override int Read(byte[] buffer, int offset, int count)
        {
            buffer.AsSpan(offset, count).Fill((byte)'a');
            Given += count;
            return count;
        }
        public override void Flush() => throw new NotSupportedException();
        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();
        public override void SetLength(long value) => throw new NotSupportedException();
        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
