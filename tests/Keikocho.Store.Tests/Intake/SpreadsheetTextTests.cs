using CsCheck;
using Keikocho.Store.Intake;

namespace Keikocho.Store.Tests.Intake;

public sealed class SpreadsheetTextTests
{
    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("@SUM(A1)", "'@SUM(A1)")]
    [InlineData("+cmd|' /C calc'!A0", "'+cmd|' /C calc'!A0")]
    [InlineData("-2+3", "'-2+3")]
    [InlineData("\t=1", "'\t=1")]
    [InlineData("\r=1", "'\r=1")]
    [InlineData("+44 7700 900000", "'+44 7700 900000")]
    [InlineData("-4", "-4")]
    [InlineData("+3.5", "+3.5")]
    [InlineData("12", "12")]
    [InlineData("Ada", "Ada")]
    [InlineData("", "")]
    public void Text_that_a_spreadsheet_would_run_gets_an_apostrophe_and_numbers_do_not(string text, string safe)
        => Assert.Equal(safe, SpreadsheetText.Safe(text));

    [Fact]
    public void No_text_comes_out_that_would_run() => Gen.String.Sample(text =>
    {
        var safe = SpreadsheetText.Safe(text);
        return safe.EndsWith(text, StringComparison.Ordinal) && (safe.Length == 0 || !"=@\t\r\n".Contains(safe[0], StringComparison.Ordinal));
    });
}
