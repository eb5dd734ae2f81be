using Keikocho.Paper.Register;
using Keikocho.Testing;
using Xunit;

namespace Keikocho.Paper.Tests;

public sealed class GoldenTests
{
    [Theory]
    [InlineData(14, PaperSize.A4)]
    [InlineData(14, PaperSize.Letter)]
    [InlineData(80, PaperSize.A4)]
    public void Register_of_an_evening_reads_as_committed(int children, PaperSize size) =>
        Golden.Check($"tests/Keikocho.Paper.Tests/Golden/register-{children}-{size}.txt", PdfReading.Places(RegisterSheet.Render(Samples.Sheet(children), size).Pdf));

    [Theory]
    [InlineData(14, 9, PaperSize.A4)]
    [InlineData(14, 9, PaperSize.Letter)]
    [InlineData(40, 26, PaperSize.A4)]
    [InlineData(40, 26, PaperSize.Letter)]
    public void Blank_register_reads_as_committed(int children, int evenings, PaperSize size) =>
        Golden.Check($"tests/Keikocho.Paper.Tests/Golden/blank-{children}-{evenings}-{size}.txt", PdfReading.Places(BlankRegister.Render(Samples.Blank(children, evenings), size).Pdf));

    [Fact]
    public void A_moved_line_is_a_difference()
    {
        if (Environment.GetEnvironmentVariable("KEIKOCHO_UPDATE_GOLDEN") == "1")
            Assert.Skip("Golden files are being rewritten.");
        var places = PdfReading.Places(RegisterSheet.Render(Samples.Sheet(13), PaperSize.A4).Pdf);
        var difference = Assert.ThrowsAny<Xunit.Sdk.XunitException>(() => Golden.Check("tests/Keikocho.Paper.Tests/Golden/register-14-A4.txt", places));
        Assert.Contains("Line ", difference.Message, StringComparison.Ordinal);
    }
}
