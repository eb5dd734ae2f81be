using Keikocho.App.Tests.Students;
using Keikocho.Core.Evening;
using Keikocho.Testing;

namespace Keikocho.App.Tests.Pairs;

/// <summary>The pairs of an end on the laptop.</summary>
public sealed class PairsPageTests
{
    [Fact]
    [Statement(33)]
    public async Task The_worked_example_comes_out_and_an_adult_is_offered_first()
    {
        await using var club = await PairsClub.StartAsync();
        await ApartAsync(club, "Cleo", "Dov");
        // Last time together: Ana with Ben, Ella with Finn; and the Thursday before, which counts no more.
        foreach (var (month, day, links) in new[] { (5, 12, new[] { ("Ana", "Ben"), ("Ella", "Finn") }), (5, 5, [("Ben", "Cleo")]) })
            Assert.Equal(1, await club.Club.House.Together.UseAsync(club.Club.Lesson(month, day).Id, 2, [.. links.Select(l => (club.Children[l.Item1], club.Children[l.Item2]))], null, club.Club.Head, club.Club.Tablet, SpringClub.Stop));
        Assert.Equal(
            ["Ana – Ben – Cleo: Ben in the middle; Ana and Cleo do not throw each other", "Dov – Ella", "Finn – Gus"],
            await club.LinesAsync(PairsClub.Backwards));
        await club.HelpAsync("Priya");
        var html = await club.Club.TextAsync($"/pairs?{PairsClub.Backwards}");
        Assert.Equal(["Ana – Priya", "Ben – Cleo", "Dov – Ella", "Finn – Gus"], PairsClub.Lines(html));
        Assert.True(html.IndexOf("Ana – Priya", StringComparison.Ordinal) < html.IndexOf("Ana – Ben – Cleo", StringComparison.Ordinal));
    }

    [Fact]
    [Statement(32), Statement(36)]
    public async Task A_gap_above_the_limit_leaves_a_child_over_and_the_page_says_why_and_what_helps()
    {
        await using var club = await PairsClub.StartAsync(names: ["Ana", "Ben", "Dov", "Ella"]);
        // Ana with Ben; Dov with Ella; and two more of whom one is far too big for anybody.
        await club.AddAsync("Hugo", 9);
        await club.AddAsync("Ines", 9);
        await club.WeighAsync(("Hugo", 30_500), ("Ines", 60_000));
        var html = await club.Club.TextAsync($"/pairs?{PairsClub.Backwards}");
        Assert.DoesNotContain(PairsClub.Lines(html), l => l.Contains("Ines", StringComparison.Ordinal));
        Assert.Matches("Needs? an adult: [^<]*Ines", html);
        Assert.Contains("Ines may work with none of the 5 others: 5 size gap above the limit", html, StringComparison.Ordinal);
        foreach (var weight in new[] { "60", "30.5", " kg", "30500" }) Assert.DoesNotContain($">{weight}", html, StringComparison.Ordinal);
        // With turn-ins the limit is wider, and without throwing the age counts no more; but 60 is still too far.
        Assert.DoesNotContain("Ines", string.Join(' ', await club.LinesAsync("activity=TurnIns")), StringComparison.Ordinal);
    }

    [Fact]
    [Statement(38)]
    public async Task The_order_of_the_list_is_the_registers_whatever_the_sizes()
    {
        await using var club = await PairsClub.StartAsync(names: ["Cleo", "Dov", "Ella", "Finn"]);
        foreach (var sizes in new[] { new[] { 30, 31, 32, 33 }, [33, 32, 31, 30], [30, 33, 31, 32], [36, 30, 36, 30] })
        {
            await club.WeighAsync(("Cleo", sizes[0] * 1000), ("Dov", sizes[1] * 1000), ("Ella", sizes[2] * 1000), ("Finn", sizes[3] * 1000));
            var lines = await club.LinesAsync("activity=TurnIns");
            Assert.Equal(2, lines.Count);
            Assert.StartsWith("Cleo – ", lines[0], StringComparison.Ordinal);
            var names = lines.Select(l => l.Split(" – ")).ToList();
            Assert.All(names, n => Assert.True(string.CompareOrdinal(n[0], n[1]) < 0));
            Assert.True(string.CompareOrdinal(names[0][0], names[1][0]) < 0);
        }
    }

    [Fact]
    [Statement(40)]
    public async Task A_child_who_comes_late_or_leaves_changes_at_most_two_pairs_and_takes_two_taps()
    {
        await using var club = await PairsClub.StartAsync(names: ["Ben", "Cleo", "Dov", "Ella", "Finn", "Gus"]);
        await club.UseAsync(PairsClub.Backwards);
        var before = await club.LinesAsync(PairsClub.Backwards);
        Assert.Equal(3, before.Count);
        Assert.Contains("These stand", await club.Club.TextAsync($"/pairs?{PairsClub.Backwards}"), StringComparison.Ordinal);

        await club.AddAsync("Jude", 9);
        await club.WeighAsync(("Jude", 29_500));
        var html = await club.Club.TextAsync($"/pairs?{PairsClub.Backwards}");
        Assert.Contains("Somebody came or left", html, StringComparison.Ordinal);
        var repaired = PairsClub.Lines(html).Select(l => l.Replace(" new", "", StringComparison.Ordinal)).ToList();
        Assert.Contains(repaired, l => l.Contains("Jude", StringComparison.Ordinal));
        Assert.InRange(before.Except(repaired).Count(), 1, 2);
        await club.UseAsync(PairsClub.Backwards);
        Assert.Equal(repaired, await club.LinesAsync(PairsClub.Backwards));
        using (var db = club.Club.Db()) Assert.Equal([1], db.Togethers.Where(t => t.UndoneAt == null).Select(t => t.Round).Distinct().ToList());

        await club.Club.MarkAsync(club.Children["Jude"], club.Club.Today, MarkKind.Left, new TimeOnly(18, 20));
        var left = (await club.LinesAsync(PairsClub.Backwards)).Select(l => l.Replace(" new", "", StringComparison.Ordinal)).ToList();
        Assert.DoesNotContain(left, l => l.Contains("Jude", StringComparison.Ordinal));
        Assert.InRange(repaired.Except(left).Count(), 1, 2);
    }

    [Fact]
    [Statement(41)]
    public async Task A_middle_over_the_cap_is_said_before_the_drill_with_a_lighter_one()
    {
        await using var club = await PairsClub.StartAsync();
        await ApartAsync(club, "Cleo", "Dov");
        var words = await club.Club.WordsAsync($"/pairs?{PairsClub.Backwards}&throws=5&sides=1&rounds=3");
        Assert.Contains("Before the drill: over 20 falls: Ben; a lighter drill is ready", words, StringComparison.Ordinal);
        Assert.Contains("Ana and Cleo throw by turns, 8 and 7 times, and watch in between", words, StringComparison.Ordinal);
        Assert.DoesNotContain("Before the drill", await club.Club.WordsAsync($"/pairs?{PairsClub.Backwards}&throws=3&sides=1&rounds=3"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_the_lock_open_it_says_so_and_pairs_by_age()
    {
        await using var club = await PairsClub.StartAsync();
        club.Club.House.Lock.Shut();
        var html = await club.Club.TextAsync("/pairs?activity=TurnIns&without=" + club.Children["Gus"]);
        Assert.Contains("The club’s lock is shut.", html, StringComparison.Ordinal);
        Assert.Equal(["Ana – Ben", "Cleo – Dov", "Ella – Finn"], PairsClub.Lines(html));
        Assert.Contains("No size is held of anybody here", html, StringComparison.Ordinal);
    }

    [Fact]
    [Statement(35), Statement(37)]
    public async Task Two_who_are_kept_apart_are_in_no_pair_and_no_three_and_no_page_of_the_mat_says_why()
    {
        await using var club = await PairsClub.StartAsync(names: ["Ana", "Ben", "Cleo"]);
        Assert.Equal(["Ana – Ben – Cleo: Ben in the middle; Ana and Cleo do not throw each other"], await club.LinesAsync(PairsClub.Backwards));
        await ApartAsync(club, "Ana", "Cleo");
        Assert.Contains("Kept apart from", await club.Club.TextAsync($"/students/{club.Children["Ana"]}"), StringComparison.Ordinal);
        Assert.DoesNotContain(await club.LinesAsync(PairsClub.Backwards), l => l.Contains("Ana", StringComparison.Ordinal) && l.Contains("Cleo", StringComparison.Ordinal));
        Assert.Equal(await club.LinesAsync(PairsClub.Backwards), await club.LinesAsync(PairsClub.Backwards));
        foreach (var page in new[] { "/tonight", "/register", "/students", "/roll" }) Assert.DoesNotContain("apart", await club.Club.WordsAsync(page), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Pairs_seen_before_somebody_left_are_not_put_to_use()
    {
        await using var club = await PairsClub.StartAsync(names: ["Ana", "Ben"]);
        using var answer = await club.Club.PostAsync("/pairs", "/pairs/use", ("activity", "TurnIns"), ("offer", "Pairs"), ("seen", "0123456789abcdef"));
        Assert.Equal(System.Net.HttpStatusCode.SeeOther, answer.StatusCode);
        using var db = club.Club.Db();
        Assert.Empty(db.Togethers);
    }

    private static async Task ApartAsync(PairsClub club, string one, string other)
    {
        using var answer = await club.Club.PostAsync($"/students/{club.Children[one]}", $"/students/{club.Children[one]}/pair-wish", ("other", club.Children[other].ToString("D")), ("wish", "apart"));
        Assert.Equal($"/students/{club.Children[one]:D}#partners", answer.Headers.Location?.ToString());
    }

    [Fact]
    [Statement(36)]
    public async Task Where_nobody_may_be_thrown_the_page_says_so_once_and_leads_to_what_can_be_done()
    {
        await using var club = await PairsClub.StartAsync(names: ["Ana", "Ben", "Dov", "Ella"]);
        var html = await club.Club.TextAsync("/pairs?activity=Throwing&stage=6");
        Assert.Contains("Nobody here may be thrown tonight: for throwing any way, stage 6 (thrown by a child) no fall gate is open. In turn-ins and holds there is a place for everybody.", html, StringComparison.Ordinal);
        Assert.DoesNotContain("may work with none", html, StringComparison.Ordinal);
        Assert.DoesNotContain("adults as partners", html, StringComparison.Ordinal);
        Assert.Matches("href=\"/pairs\\?[^\"]*activity=TurnIns[^\"]*\">Turn-ins</a>", html);
    }

    [Fact]
    public async Task Pairs_put_to_use_stand_although_one_child_needs_an_adult()
    {
        await using var club = await PairsClub.StartAsync(names: ["Ana", "Ben", "Dov", "Ella"]);
        await club.AddAsync("Hugo", 9);
        await club.AddAsync("Ines", 9);
        await club.WeighAsync(("Hugo", 30_500), ("Ines", 60_000));
        var before = await club.LinesAsync("activity=TurnIns");
        Assert.Equal(2, before.Count);
        await club.UseAsync("activity=TurnIns");
        var html = await club.Club.TextAsync("/pairs?activity=TurnIns");
        Assert.Contains("These stand", html, StringComparison.Ordinal);
        Assert.Equal(before, PairsClub.Lines(html));
        Assert.Matches("Need an adult: [^<]*Ines", html);
    }
}
