using Keikocho.Paper.Keys;
using Keikocho.Testing;
using Xunit;

namespace Keikocho.Paper.Tests;

public sealed class RecoveryKeyPaperTests
{
    private static readonly RecoveryKeyContent Key = new("Osier Quay Judo Club", "2345-6789-ABCD-EFGH-JKLM-NPQR-STUV-WXYZ", new DateOnly(2026, 3, 3));

    [Theory]
    [InlineData(PaperSize.A4)]
    [InlineData(PaperSize.Letter)]
    public void A_recovery_key_is_one_page_and_reads_as_committed(PaperSize size)
    {
        var paper = RecoveryKeyPaper.Draw(Key, size);
        Assert.Equal(1, PdfReading.PageCount(paper.Pdf));
        Assert.Empty(paper.MissingGlyphs);
        Golden.Check($"tests/Keikocho.Paper.Tests/Golden/recovery-key-{size}.txt", PdfReading.Places(paper.Pdf));
    }

    [Fact]
    public void Without_a_key_there_is_no_paper() => Assert.Throws<ArgumentException>(() => RecoveryKeyPaper.Draw(Key with { Key = " " }, PaperSize.A4));
}
