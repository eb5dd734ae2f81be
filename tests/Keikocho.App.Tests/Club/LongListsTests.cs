using System.Text.RegularExpressions;
using Keikocho.App.Club;

namespace Keikocho.App.Tests.Club;

/// <summary>A club of many programmes, adults or tests: the page stays small, and every form is one link away.</summary>
public sealed partial class LongListsTests
{
    [Fact]
    public async Task Twelve_entries_carry_their_forms_and_thirteen_are_lines_with_links()
    {
        await using var desk = await ClubDesk.FreshAsync();
        await AddProgrammesAsync(desk, 12);
        var twelve = await desk.PageAsync("/club");
        Assert.Equal(12, NameFields().Count(twelve));
        Assert.DoesNotContain("?edit=", twelve, StringComparison.Ordinal);
        await AddProgrammesAsync(desk, 13);
        var thirteen = await desk.PageAsync("/club");
        Assert.Equal(0, NameFields().Count(thirteen));
        Assert.Equal(13, Links(thirteen, "programme-").Count);
        Assert.Contains("<b>Group 13</b><small> first course not said yet</small>", thirteen, StringComparison.Ordinal);
        // The one weekly hour of a short list stays as it was.
        Assert.Empty(Links(thirteen, "hour-"));
    }

    [Fact]
    public async Task The_link_leads_to_the_one_form_open_and_with_what_is_stored()
    {
        await using var desk = await ClubDesk.FreshAsync();
        await AddProgrammesAsync(desk, 13);
        var asked = Links(await desk.PageAsync("/club"), "programme-")[4];
        Assert.EndsWith("#asked", asked, StringComparison.Ordinal);
        var page = await desk.PageAsync(asked);
        Assert.Equal(12, Links(page, "programme-").Count);
        Assert.Equal(1, NameFields().Count(page));
        Assert.Contains("<details class=\"fold\" id=\"asked\" open>", page, StringComparison.Ordinal);
        Assert.Contains("value=\"Group 5\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_entry_that_is_not_there_shows_the_lines_alone()
    {
        await using var desk = await ClubDesk.FreshAsync();
        await AddProgrammesAsync(desk, 13);
        var page = await desk.PageAsync("/club?edit=%22%3E%3Cscript%3E");
        Assert.Equal(13, Links(page, "programme-").Count);
        Assert.DoesNotContain("\"><script>", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_refused_form_of_a_long_list_comes_back_with_what_was_typed()
    {
        await using var desk = await ClubDesk.FreshAsync();
        await AddProgrammesAsync(desk, 13);
        var programme = desk.Book().Programmes[6];
        var key = $"programme-{programme.Id:N}-";
        await desk.RefusedWithAsync("/club/programmes/change", key + "lessons", "Lessons of the first course: type a whole number from 1 to 200, or nothing.",
            ("programme", programme.Id.ToString()), (key + "name", "Otters"), (key + "lessons", "many"), (key + "weeks", "9"), (key + "trials", "2"));
    }

    [Fact]
    public async Task A_form_of_a_long_list_is_taken()
    {
        await using var desk = await ClubDesk.FreshAsync();
        await AddProgrammesAsync(desk, 13);
        var programme = desk.Book().Programmes[6];
        var key = $"programme-{programme.Id:N}-";
        Assert.Equal("Otters is saved.", await desk.TakenAsync("/club/programmes/change",
            ("programme", programme.Id.ToString()), (key + "name", "Otters"), (key + "lessons", ""), (key + "weeks", ""), (key + "trials", "")));
    }

    [Fact]
    public async Task Settings_are_lines_beside_many_programmes_and_each_opens_within_its_sum()
    {
        await using var desk = await ClubDesk.FreshAsync();
        await AddProgrammesAsync(desk, 13);
        var asked = Links(await desk.PageAsync("/club"), "setting-")[0];
        var page = await desk.PageAsync(asked);
        Assert.Equal(1, Regex.Count(page, "name=\"setting\""));
        Assert.Matches("<details class=\"fold\" open>(?:(?!</details>)[\\s\\S])*<details class=\"fold\" id=\"asked\" open>", page);
    }

    [Fact]
    public async Task Of_thirteen_tests_each_is_removed_behind_its_link()
    {
        await using var desk = await ClubDesk.FreshAsync();
        var programme = desk.Book().Programmes.Single();
        for (var week = 1; week <= 13; week++)
            await desk.TakenAsync("/club/tests/add", ("test-programme", programme.Id.ToString()), ("test-date", ClubDesk.Today.AddDays(7 * week).ToString("O")));
        var page = await desk.PageAsync("/club");
        Assert.DoesNotContain("name=\"test\"", page, StringComparison.Ordinal);
        var links = Links(page, "test-");
        Assert.Equal(13, links.Count);
        var test = desk.Book().Tests[2];
        Assert.Contains($"<button name=\"test\" value=\"{test.Id}\">", await desk.PageAsync(links[2]), StringComparison.Ordinal);
        Assert.Equal("The test on 16 December 2026 is removed.", await desk.TakenAsync("/club/tests/remove", ("test", test.Id.ToString())));
        Assert.Equal(12, Regex.Count(await desk.PageAsync("/club"), "<button name=\"test\""));
    }

    private static async Task AddProgrammesAsync(ClubDesk desk, int upTo)
    {
        for (var number = desk.Book().Programmes.Length + 1; number <= upTo; number++)
            await desk.TakenAsync("/club/programmes/add", ("programme-new-name", $"Group {number}"));
    }

    private static List<string> Links(string page, string kind) =>
        [.. Regex.Matches(page, $"<a class=\"fold-line\" href=\"({Regex.Escape(ClubAddress.Page)}\\?edit={kind}[^\"]+)\"").Select(m => m.Groups[1].Value)];

    [GeneratedRegex("name=\"programme-[0-9a-f]{32}-name\"")]
    private static partial Regex NameFields();
}
