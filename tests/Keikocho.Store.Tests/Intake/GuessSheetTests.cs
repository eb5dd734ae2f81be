using Keikocho.Core.Intake;
using Keikocho.Store.Intake;
using Keikocho.Store.Starter;

namespace Keikocho.Store.Tests.Intake;

public sealed class GuessSheetTests
{
    [Theory]
    [InlineData("messy-roster.xlsx", SheetKind.Roster)]
    [InlineData("messy-roster-comma-utf8.csv", SheetKind.Roster)]
    [InlineData("accents-tab-utf16.csv", SheetKind.Roster)]
    [InlineData("central-semicolon-1250.csv", SheetKind.Roster)]
    [InlineData("days1904.xlsx", SheetKind.Roster)]
    [InlineData("messy-register.xlsx", SheetKind.Register)]
    [InlineData("messy-register-utf16.csv", SheetKind.Register)]
    [InlineData("row-register.xlsx", SheetKind.Register)]
    [InlineData("row-register-semicolon-1252.csv", SheetKind.Register)]
    public void A_sheet_is_taken_for_what_it_holds(string file, SheetKind kind) => Assert.Equal(kind, GuessSheet.Guess(IntakeFiles.Sheet(file), IntakeFiles.Today));

    [Theory]
    [InlineData("messy-roster.xlsx", SheetKind.Roster)]
    [InlineData("messy-register.xlsx", SheetKind.Register)]
    [InlineData("messy-register-utf16.csv", SheetKind.Register)]
    [InlineData("row-register.xlsx", SheetKind.Register)]
    [InlineData("days1904.xlsx", SheetKind.Roster)]
    [InlineData("messy-signoffs.xlsx", SheetKind.SignOffs)]
    [InlineData("messy-signoffs-turned-semicolon-utf8.csv", SheetKind.SignOffs)]
    public void With_a_syllabus_a_sign_off_grid_is_told_from_the_others(string file, SheetKind kind)
    {
        var willow = Assert.IsType<SyllabusReading.Read>(StarterKit.Ladder("ladder-willow.toml")).Edition;
        var names = SyllabusNames.Of(willow);
        Assert.Equal(kind, GuessSheet.Guess(IntakeFiles.Sheet(file), IntakeFiles.Today, names.Items, names.Techniques));
    }

    [Fact]
    public void A_sheet_of_numbers_is_neither()
        => Assert.Equal(SheetKind.Neither, GuessSheet.Guess(new Sheet("Sums", [[Cell.OfText("1"), Cell.OfText("2")], [Cell.OfText("3"), Cell.OfText("4")]]), IntakeFiles.Today));
}
