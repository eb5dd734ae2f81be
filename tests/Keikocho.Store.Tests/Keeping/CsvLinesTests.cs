using CsCheck;
using Keikocho.Store.Keeping.OpenArchive;

namespace Keikocho.Store.Tests.Keeping;

public sealed class CsvLinesTests
{
    private static readonly Gen<string?> Texts = Gen.OneOf(
        Gen.Const((string?)null),
        Gen.String[Gen.Char["=+-@'\"\r\n\t, ab1é帳"], 0, 6].Select(t => (string?)t));

    [Fact]
    public void Any_texts_come_back_exactly() => Texts.Array[1, 5].Array[0, 5].Sample(records =>
    {
        using var to = new StringWriter();
        foreach (var record in records)
        {
            for (var at = 0; at < record.Length; at++)
            {
                if (at > 0) to.Write(',');
                CsvLines.WriteCell(to, record[at], isText: true);
            }

            to.Write("\r\n");
        }

        var reading = new CsvReading(new StringReader(to.ToString()), 1000);
        var cells = new List<string?>();
        foreach (var record in records)
        {
            Assert.True(reading.Next(cells));
            Assert.Equal(record, cells.Select(c => c is null ? null : CsvLines.Unguarded(c)));
        }

        Assert.False(reading.Next(cells));
    });

    [Theory]
    [InlineData("plain", "plain")]
    [InlineData("a,b", "\"a,b\"")]
    [InlineData("say \"ippon\"", "\"say \"\"ippon\"\"\"")]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("'tis", "''tis")]
    [InlineData("-5,1", "\"'-5,1\"")]
    [InlineData("", "\"\"")]
    [InlineData(null, "")]
    public void A_cell_is_written_so(string? text, string written)
    {
        using var to = new StringWriter();
        CsvLines.WriteCell(to, text, isText: true);
        Assert.Equal(written, to.ToString());
    }

    [Theory]
    [InlineData("a\"b\r\n", "quotation mark in the middle")]
    [InlineData("\"a\"b\r\n", "goes on after a closed quotation mark")]
    [InlineData("\"a", "never closed")]
    [InlineData("abcdefghijk", "too long")]
    public void What_is_not_well_formed_is_refused(string text, string says)
    {
        var reading = new CsvReading(new StringReader(text), 10);
        Assert.Contains(says, Assert.Throws<FormatException>(() => reading.Next([])).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Lines_are_counted_through_texts_of_several_lines()
    {
        var reading = new CsvReading(new StringReader("a\r\n\"b\r\nb\"\r\nc\r\n"), 10);
        List<int> lines = [];
        while (reading.Next([])) lines.Add(reading.Line);
        Assert.Equal([1, 2, 4], lines);
    }
}
