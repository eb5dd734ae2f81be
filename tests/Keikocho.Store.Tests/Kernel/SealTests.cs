using CsCheck;
using Keikocho.Store.Kernel;

namespace Keikocho.Store.Tests.Kernel;

public sealed class SealTests
{
    [Fact]
    public void What_is_closed_opens_again()
    {
        Gen.String[Gen.Char["aé帳 '\n"], 0, 20].Sample(text => Assert.Equal(text, Seal.Open(Seal.Close(text))));
        Gen.Int.Sample(number => Assert.Equal(number, Seal.Open(Seal.Close(number))));
        Gen.Byte.Array[0, 50].Sample(bytes => Assert.Equal(bytes, Seal.Open(Seal.Close(bytes))));
        Gen.Int[0, 3_652_058].Select(DateOnly.FromDayNumber).Sample(day => Assert.Equal(day, Seal.Open(Seal.Close(day))));
    }

    [Fact]
    public void A_sealed_value_never_shows_itself() => Assert.Equal("sealed", $"{Seal.Close("Kim")}");

    [Fact]
    public void Blank_text_is_missing()
    {
        Assert.Null(Seal.CloseIfAny(" \t"));
        Assert.Equal("Kim", Seal.Open(Seal.CloseIfAny(" Kim ")));
    }

    [Theory]
    [InlineData("")]
    [InlineData("0102")]
    [InlineData("00FFFE")]
    [InlineData("00010203040506")]
    public void Damaged_bytes_never_open_as_something_else(string hexadecimal)
    {
        var bytes = Convert.FromHexString(hexadecimal);
        // Control characters are a text, though no name.
        if (bytes is not [0, 1, ..]) Assert.Throws<InvalidDataException>(() => Seal.Open(new Sealed<string>(bytes)));
        Assert.Throws<InvalidDataException>(() => Seal.Open(new Sealed<DateOnly>(bytes)));
        Assert.Throws<InvalidDataException>(() => Seal.Open(new Sealed<int>(bytes)));
    }
}
