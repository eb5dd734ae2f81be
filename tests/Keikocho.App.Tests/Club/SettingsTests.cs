using Keikocho.App.Club.Settings;
using Keikocho.Store.Club;

namespace Keikocho.App.Tests.Club;

public sealed class SettingsTests
{
    private const string Late = "setting-attendance-lateAfterMinutes-";

    [Fact]
    public async Task A_value_of_the_clubs_own_is_kept_with_day_hand_and_reason()
    {
        await using var desk = await ClubDesk.FreshAsync();
        Assert.Contains("Late is later than this after the bow</b><small> 5 minutes (proposed)</small>", await desk.PageAsync("/club"), StringComparison.Ordinal);
        var said = await desk.TakenAsync("/club/settings", Set("attendance.lateAfterMinutes", "10", why: "The bus comes at 17:35"));
        Assert.Equal("Late is later than this after the bow: 10 minutes from 25 November 2026. Proposed is 5 minutes.", said);
        var page = await desk.PageAsync("/club");
        Assert.Contains("10 minutes (the club’s own)", page, StringComparison.Ordinal);
        Assert.Contains("from 25 November 2026, by Maren Holt", page, StringComparison.Ordinal);
        Assert.Contains("The bus comes at 17:35", page, StringComparison.Ordinal);
        Assert.Contains("Source: ours, no source.", page, StringComparison.Ordinal);
        Assert.Equal("10", desk.Book().Setting("attendance.lateAfterMinutes", ClubDesk.Today));

        // Two of one day: the later one holds; one equal to the proposed value shows as such.
        desk.Time.Step(TimeSpan.FromSeconds(1));
        await desk.TakenAsync("/club/settings", Set("attendance.lateAfterMinutes", "5"));
        Assert.Contains("5 minutes (proposed)", await desk.PageAsync("/club"), StringComparison.Ordinal);
        Assert.Equal(["5"], SettingHistory.Of(desk.Book(), "attendance.lateAfterMinutes").Select(e => e.Value));
    }

    [Fact]
    public async Task A_value_from_a_day_to_come_waits_for_its_day()
    {
        await using var desk = await ClubDesk.FreshAsync();
        await desk.TakenAsync("/club/settings", Set("attendance.lateAfterMinutes", "15", "2026-12-02"));
        Assert.Contains("5 minutes (proposed)", await desk.PageAsync("/club"), StringComparison.Ordinal);
        desk.Time.Step(TimeSpan.FromDays(7));
        Assert.Contains("15 minutes (the club’s own)", await desk.PageAsync("/club"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("31", "2026-11-25", "value", "Late is later than this after the bow: give a whole number from 0 to 30.")]
    [InlineData("soon", "2026-11-25", "value", "Late is later than this after the bow: give a whole number from 0 to 30.")]
    [InlineData("10", "2026-11-24", "from", "24 November 2026 is over. A setting holds from today on, or from a day to come.")]
    public async Task A_value_that_is_not_allowed_is_refused_with_a_sentence(string value, string from, string field, string sentence)
    {
        await using var desk = await ClubDesk.FreshAsync();
        await desk.RefusedWithAsync("/club/settings", Late + field, sentence, Set("attendance.lateAfterMinutes", value, from, "The bus"));
        Assert.Empty(desk.Book().Settings);
    }

    [Fact]
    public async Task Values_that_do_not_go_together_are_refused_also_on_a_later_day()
    {
        await using var desk = await ClubDesk.FreshAsync();
        var html = await desk.RefusedAsync("/club/settings", Set("return.fallsAfterDays", "43"));
        Assert.Contains("The longer list comes after 42 days, the falls only after 43: the falls come first.", html, StringComparison.Ordinal);
        await desk.TakenAsync("/club/settings", Set("return.moreAfterDays", "28", "2026-12-02"));
        html = await desk.RefusedAsync("/club/settings", Set("return.fallsAfterDays", "30"));
        Assert.Contains("The longer list comes after 28 days, the falls only after 30", html, StringComparison.Ordinal);
        html = await desk.RefusedAsync("/club/settings", Set("ageOut.schoolYearEndMonth", "6"));
        Assert.Contains("June has no day 31 in most years.", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_setting_of_every_sum_can_be_set_to_its_proposed_value()
    {
        await using var desk = await ClubDesk.FreshAsync();
        foreach (var setting in ClubSettings.Sums.SelectMany(s => s.Settings))
            await desk.TakenAsync("/club/settings", Set(setting.Key, setting.Proposed));
        var page = await desk.PageAsync("/club");
        Assert.DoesNotContain("(the club’s own)", page, StringComparison.Ordinal);
        Assert.Equal(ClubSettings.Sums.Count, Count(page, "all as proposed"));
    }

    [Fact]
    public async Task The_settings_are_shut_until_somebody_asks()
    {
        await using var desk = await ClubDesk.FreshAsync();
        var page = await desk.PageAsync("/club");
        var settings = page[page.IndexOf("id=\"settings-part\"", StringComparison.Ordinal)..page.IndexOf("<aside", StringComparison.Ordinal)];
        Assert.DoesNotContain("<details class=\"fold\" open", settings, StringComparison.Ordinal);
        Assert.Equal(ClubSettings.Sums.Count + ClubSettings.Sums.Sum(s => s.Settings.Count), Count(settings, "<details class=\"fold\""));
    }

    private static int Count(string text, string part) => (text.Length - text.Replace(part, "", StringComparison.Ordinal).Length) / part.Length;

    private static (string, string)[] Set(string key, string value, string from = "2026-11-25", string why = "")
    {
        var field = $"setting-{key.Replace('.', '-')}-";
        return [("setting", key), (field + "value", value), (field + "from", from), (field + "why", why)];
    }
}
