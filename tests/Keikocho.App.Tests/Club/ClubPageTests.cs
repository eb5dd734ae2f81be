using System.Text.RegularExpressions;

namespace Keikocho.App.Tests.Club;

public sealed class ClubPageTests
{
    [Fact]
    public async Task The_page_and_the_calendar_hold_no_childs_name()
    {
        await using var desk = await ClubDesk.DemoAsync();
        var book = desk.Book();
        var onDuty = book.Duties.Select(d => d.PersonId).ToHashSet();
        var children = book.Programmes.SelectMany(p => book.EnrolmentsOf(p.Id)).Select(e => e.PersonId).Where(id => !onDuty.Contains(id)).Distinct().Select(id => book.Person(id)!).ToList();
        Assert.True(children.Count > 50);
        var adults = onDuty.SelectMany(id => book.Person(id)!.FullName.Split(' ')).ToHashSet();
        foreach (var address in new[] { "/club", "/club/calendar.ics" })
        {
            var page = await desk.PageAsync(address);
            Assert.All(children, child => Assert.DoesNotContain(child.FullName, page, StringComparison.Ordinal));
            foreach (var name in children.SelectMany(c => new[] { c.CallName, c.Family }).OfType<string>().Where(n => n.Length > 2 && !adults.Contains(n)).Distinct())
                Assert.False(Regex.IsMatch(page, $@"(?<![\w/-]){Regex.Escape(name)}(?![\w-])"), $"{address} holds {name}");
        }
    }

    [Fact]
    public async Task The_parts_that_other_pages_lead_to_are_there_and_every_id_stands_once()
    {
        await using var desk = await ClubDesk.DemoAsync();
        var page = await desk.PageAsync("/club");
        foreach (var part in new[] { "hours-part", "hall-part", "closures-part", "adults-part", "terms-part", "programmes-part", "tests-part", "settings-part", "club-part", "screen-part" })
            Assert.Contains($"id=\"{part}\"", page, StringComparison.Ordinal);
        var twice = Regex.Matches(page, " id=\"([^\"]+)\"").Select(m => m.Groups[1].Value).GroupBy(id => id).Where(g => g.Count() > 1).Select(g => g.Key);
        Assert.Empty(twice);
        Assert.Contains("href=\"/club/import\"", page, StringComparison.Ordinal);
        Assert.Contains("href=\"/acting?from=%2Fclub\"", page, StringComparison.Ordinal);
        Assert.Contains("club.keikocho</code>", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Papers_and_club_are_in_the_contents()
    {
        await using var desk = await ClubDesk.FreshAsync();
        var page = await desk.PageAsync("/papers");
        Assert.Contains("<a href=\"/papers\" aria-current=\"page\">Papers</a>", page, StringComparison.Ordinal);
        Assert.Contains("<a href=\"/club\">Club</a>", page, StringComparison.Ordinal);
    }
}
