using System.Text.RegularExpressions;
using Keikocho.App.Tests.Students;
using Keikocho.Core.Evening;
using Keikocho.Core.Safety;
using Keikocho.Store.Marks;
using Keikocho.Store.Safety;
using Keikocho.Testing;

namespace Keikocho.App.Tests.Sightings;

/// <summary>Whom Tonight names and whom it only counts.</summary>
public sealed partial class TonightCareTests
{
    private static readonly DateOnly Evening = new(2026, 5, 14);
    private static readonly string[] Names = ["Ada", "Bram", "Cleo", "Dov", "Esme", "Finn"];

    [Fact]
    public async Task While_nobody_s_falls_are_marked_one_sentence_says_so()
    {
        await using var club = await SpringClub.StartAsync();
        await FilledAsync(club);
        var box = await BoxAsync(club);
        Assert.Equal("注 Take care Nobody’s falls are marked yet: mark them , or nobody is thrown.", box);
        Assert.Contains($"/sightings/falls?lesson={club.Lesson(5, 14).Id:D}", await club.TextAsync(Tonight(club)), StringComparison.Ordinal);
    }

    [Fact, Statement(18), Statement(23)]
    public async Task Only_who_is_special_is_named_and_no_reason_is_given()
    {
        await using var club = await SpringClub.StartAsync();
        var people = await FilledAsync(club);
        // Ada falls cleanly, Bram’s head touched, Cleo is under a stand-down; the others were not seen falling.
        await FallAsync(club, people[0], 5, clean: true);
        await FallAsync(club, people[1], 5, clean: false);
        await club.House.StandDowns.EnterAsync(new NewStandDown(Guid.CreateVersion7(), people[2], StandDownScope.NoFalls, new DateOnly(2026, 5, 5), null, "the family"), club.Head, club.Tablet, SpringClub.Stop);
        var box = await BoxAsync(club);
        Assert.Equal("注 Take care Bram, Cleo Throw tonight, are not thrown. 4 others throw tonight and are not thrown Ada, Dov, Esme, Finn", box);
        Assert.DoesNotContain("touched", box, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_is_new_is_named_with_the_others_and_who_may_not_fall_is_not_asked_to_show_a_fall()
    {
        await using var club = await SpringClub.StartAsync();
        var people = await FilledAsync(club);
        await FallAsync(club, people[0], 5, clean: true);
        var wren = await club.JoinAsync("Wren", "Hollis", new DateOnly(2026, 5, 5));
        await club.MarkAsync(wren, Evening, MarkKind.Present);
        var tove = await club.JoinAsync("Tove", "Hollis", new DateOnly(2026, 3, 3));
        await club.MarkAsync(tove, Evening, MarkKind.Present);
        var box = await BoxAsync(club, SpringClub.Plain);
        Assert.Contains("Wren", box, StringComparison.Ordinal);
        await club.House.StandDowns.EnterAsync(new NewStandDown(Guid.CreateVersion7(), tove, StandDownScope.NoFalls, new DateOnly(2026, 5, 5), null, "the family"), club.Head, club.Tablet, SpringClub.Stop);
        Assert.DoesNotContain("Tove Back", await BoxAsync(club), StringComparison.Ordinal);
    }

    private static string Tonight(SpringClub club) => $"/tonight?lesson={club.Lesson(5, 14).Id}";

    private static async Task<string> BoxAsync(SpringClub club, Func<string, string>? plain = null) =>
        (plain ?? SpringClub.Plain)(Box().Match(await club.TextAsync(Tonight(club))).Groups[1].Value).Trim();

    // Six children who have come since March, often enough that nobody is new or back after an absence, with a birth date.
    private static async Task<Guid[]> FilledAsync(SpringClub club)
    {
        var people = new List<Guid>();
        foreach (var name in Names)
        {
            var person = await club.JoinAsync(name, "Hollis", SpringClub.FirstLesson);
            foreach (var (month, day) in new[] { (3, 5), (3, 10), (3, 12), (3, 17), (3, 19), (3, 24), (4, 21), (4, 28), (5, 5), (5, 12), (5, 14) })
                await club.MarkAsync(person, new DateOnly(2026, month, day), MarkKind.Present);
            people.Add(person);
        }

        return [.. people];
    }

    private static Task<EvidenceAnswer> FallAsync(SpringClub club, Guid person, int day, bool clean) => club.House.Sightings.AddAsync(
        [SeenTap.OfFall(Guid.CreateVersion7(), club.Lesson(5, day).Id, person, FallWay.All[0], 3, clean)], Evening, club.Head, club.Tablet, SpringClub.Stop);

    [GeneratedRegex("""<aside class="care-box"[^>]*>(.*?)</aside>""", RegexOptions.Singleline)]
    private static partial Regex Box();
}
