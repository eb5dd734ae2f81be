using Keikocho.App.Club.About;
using Keikocho.Store.Club;

namespace Keikocho.App.Tests.Club;

public sealed class AboutTests
{
    [Fact]
    public async Task Name_zone_units_and_paper_are_saved()
    {
        await using var desk = await ClubDesk.FreshAsync();
        var said = await desk.TakenAsync("/club/about", ("club-name", " Weir Judo "), ("club-zone", "America/New_York"), ("club-units", "imperial"), ("club-paper", "letter"));
        Assert.Equal("The club is saved.", said);
        var club = desk.Book().Club;
        Assert.Equal(("Weir Judo", "America/New_York", UnitChoice.Imperial, PaperChoice.Letter), (club.Name, club.Zone, club.Units, club.Paper));
        Assert.Contains("<p class=\"club\">Weir Judo</p>", await desk.PageAsync("/club"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_club_without_a_name_comes_back_with_the_rest_as_it_was_typed()
    {
        await using var desk = await ClubDesk.FreshAsync();
        var html = await desk.RefusedAsync("/club/about", ("club-name", " "), ("club-zone", "Asia/Tokyo"), ("club-units", "imperial"), ("club-paper", "letter"));
        Assert.Contains("The club has no name. Type it as it stands on your papers.", html, StringComparison.Ordinal);
        Assert.Contains("<option selected>Asia/Tokyo</option>", html, StringComparison.Ordinal);
        Assert.Contains("value=\"imperial\" checked", html, StringComparison.Ordinal);
        Assert.Contains("value=\"letter\" checked", html, StringComparison.Ordinal);
        Assert.Equal("Osier Quay Judo Club", desk.Book().Club.Name);
    }

    [Theory]
    [InlineData("club-zone", "Atlantis/Quay", "Choose the time zone of the hall.")]
    [InlineData("club-units", "cubits", "Choose metres or feet.")]
    [InlineData("club-paper", "a5", "Choose A4 or US Letter.")]
    public async Task An_answer_that_is_none_of_those_offered_changes_nothing(string field, string value, string sentence)
    {
        await using var desk = await ClubDesk.FreshAsync();
        (string, string)[] all = [("club-name", "Weir"), ("club-zone", "Europe/London"), ("club-units", "metric"), ("club-paper", "a4")];
        var html = await desk.RefusedAsync("/club/about", [.. all.Where(f => f.Item1 != field), (field, value)]);
        Assert.Contains(sentence, html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_mat_is_stored_in_centimetres_from_metres_and_from_feet()
    {
        await using var desk = await ClubDesk.FreshAsync();
        var hall = desk.Book().Halls.Single().Id;
        var key = $"hall-{hall:N}-";
        await desk.TakenAsync("/club/hall", ("hall", hall.ToString()), (key + "name", "Quay Hall"), (key + "length", "14"), (key + "width", "8,5"), (key + "strip", "1"));
        var row = desk.Book().Halls.Single();
        Assert.Equal(("Quay Hall", 1400, 850, 100), (row.Name, row.MatLengthCm, row.MatWidthCm, row.StripCm));

        await desk.TakenAsync("/club/about", ("club-name", "Weir"), ("club-zone", "America/New_York"), ("club-units", "imperial"), ("club-paper", "letter"));
        Assert.Contains($"name=\"{key}length\" type=\"text\" value=\"45.93\"", (await desk.PageAsync("/club")).Replace("aria-describedby", "", StringComparison.Ordinal), StringComparison.Ordinal);
        await desk.TakenAsync("/club/hall", ("hall", hall.ToString()), (key + "name", "Quay Hall"), (key + "length", "46"), (key + "width", ""), (key + "strip", "3"));
        row = desk.Book().Halls.Single();
        // 46 ft x 30.48 cm = 1402.08 cm; 3 ft = 91.44 cm.
        Assert.Equal((1402, null, 91), (row.MatLengthCm, row.MatWidthCm, row.StripCm));
    }

    [Fact]
    public async Task A_strip_wider_than_the_mat_is_refused_with_what_may_be_meant()
    {
        await using var desk = await ClubDesk.FreshAsync();
        var hall = desk.Book().Halls.Single().Id;
        var key = $"hall-{hall:N}-";
        await desk.RefusedWithAsync("/club/hall", key + "strip", "The strip is 20 m, the mat is 14 m long. Did you mean 2?",
            ("hall", hall.ToString()), (key + "name", "Quay Hall"), (key + "length", "14"), (key + "width", "8"), (key + "strip", "20"));
        Assert.Null(desk.Book().Halls.Single().MatLengthCm);
    }

    [Theory]
    [InlineData("fourteen")]
    [InlineData("0.5")]
    [InlineData("-14")]
    [InlineData("140 m")]
    [InlineData("101")]
    public async Task A_length_that_is_none_is_refused(string length)
    {
        await using var desk = await ClubDesk.FreshAsync();
        var hall = desk.Book().Halls.Single().Id;
        var key = $"hall-{hall:N}-";
        await desk.RefusedWithAsync("/club/hall", key + "length", "Type a length from 1 to 100 metres, or nothing.",
            ("hall", hall.ToString()), (key + "name", "Quay Hall"), (key + "length", length), (key + "width", "8"), (key + "strip", "1"));
    }

    [Fact]
    public void Every_length_of_one_decimal_comes_back_as_it_was_typed_in_both_units()
    {
        foreach (var units in Enum.GetValues<UnitChoice>())
        {
            for (var tenths = 1; tenths <= 3000; tenths++)
            {
                var typed = (tenths / 10m).ToString("0.#", System.Globalization.CultureInfo.InvariantCulture);
                var shown = decimal.Parse(Lengths.Text(Lengths.Read(typed, units)!.Value, units), System.Globalization.CultureInfo.InvariantCulture);
                // A whole centimetre is 0.033 ft, so the shown length is the typed one at the decimal that was typed.
                Assert.Equal(tenths / 10m, Math.Round(shown, 1));
            }
        }
    }
}
