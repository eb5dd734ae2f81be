using System.Net;
using Keikocho.App.Tests.Sightings;
using Keikocho.App.Tests.Students;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Store.People;
using Keikocho.Store.Safety;
using Keikocho.Testing;

namespace Keikocho.App.Tests.Cards;

/// <summary>Tonight's cards on the laptop: at 18:00 of Thursday 14 May 2026, half an hour into the lesson.</summary>
public sealed class CardsTests
{
    private static readonly DateOnly Evening = new(2026, 5, 14);

    [Fact]
    public async Task Both_cards_stand_minute_by_minute_with_falls_before_the_slots_and_now_on_the_line()
    {
        await using var club = await EveningAsync();
        var page = await club.TextAsync(Cards(club));
        Assert.Contains("data-minutes=\"75\"", page, StringComparison.Ordinal);
        Assert.Contains("<span class=\"now\" data-at=\"30\">now</span>", page, StringComparison.Ordinal);
        Assert.DoesNotContain("style=", page, StringComparison.Ordinal);
        var words = SpringClub.Plain(page);
        Assert.Contains("Beginners’ end Tobias", words, StringComparison.Ordinal);
        Assert.Contains("Main group Ruth", words, StringComparison.Ordinal);
        var line = words[words.IndexOf("minute by minute", StringComparison.Ordinal)..];
        Assert.True(line.IndexOf("Falls", StringComparison.Ordinal) < line.IndexOf("O-goshi", StringComparison.Ordinal));
        Assert.Contains("Words tonight Stop. Mark right or wrong", words, StringComparison.Ordinal);
        Assert.Contains("O-goshi: never shown to 2", words, StringComparison.Ordinal);
    }

    [Fact, Statement(45)]
    public async Task The_assistant_is_marked_not_coming_and_the_next_tap_shows_a_new_card_for_both_ends()
    {
        // Ten minutes before the bow: the assistant is not marked, and may still come.
        await using var club = await EveningAsync(at: "2026-05-14T16:20", assistantIsHere: false);
        var lesson = club.Lesson(Evening);
        var assistant = Assistant(club);
        Assert.DoesNotContain("Plan B: the ends", await club.WordsAsync(Cards(club)), StringComparison.Ordinal);
        // One tap on the register.
        using (var tap = await club.PostAsync($"/register?lesson={lesson.Id:D}", "/register/mark", ("lesson", lesson.Id.ToString("D")), ("absent", assistant.ToString("D"))))
            Assert.Equal(HttpStatusCode.SeeOther, tap.StatusCode);
        // The second leads here.
        Assert.Contains($"href=\"/cards?lesson={lesson.Id:D}\"", await club.TextAsync($"/register?lesson={lesson.Id:D}"), StringComparison.Ordinal);
        var words = await club.WordsAsync(Cards(club));
        Assert.Contains("Plan B: the ends are joined, nothing is thrown.", words, StringComparison.Ordinal);
        Assert.Contains("One card, minute by minute", words, StringComparison.Ordinal);
        Assert.Contains("Kesa-gatame", words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Going_to_the_next_slot_is_one_tap_that_is_stored_and_can_be_taken_back()
    {
        await using var club = await EveningAsync();
        var lesson = club.Lesson(Evening);
        var item = club.Item("o-goshi");
        (string, string)[] next = [("command", Guid.CreateVersion7().ToString("D")), ("lesson", lesson.Id.ToString("D")), ("end", "0"), ("slot", "1"), ("item", item.ToString("D"))];
        Assert.Contains("Beginners’ end: next, O-goshi", await club.WordsAsync(Cards(club)), StringComparison.Ordinal);
        Assert.Contains("O-goshi, shown", await club.TakenAsync(Cards(club), "/cards/slot", next), StringComparison.Ordinal);
        await club.TakenAsync(Cards(club), "/cards/slot", next);
        using (var db = club.Db())
            Assert.Equal((0, item, 1, club.Head), db.Showings.Where(s => s.TakenBackAt == null).Select(s => new ValueTuple<int, Guid, int, Guid>(s.End, s.ItemId, s.Slot, s.ById)).Single());
        var back = await club.TakenAsync(Cards(club), "/cards/slot", ("command", Guid.CreateVersion7().ToString("D")), ("lesson", lesson.Id.ToString("D")), ("end", "0"), ("slot", "1"));
        Assert.DoesNotContain("O-goshi, shown", back, StringComparison.Ordinal);
        using (var db = club.Db()) Assert.NotNull(db.Showings.Single().TakenBackAt);
    }

    [Fact]
    public async Task What_was_shown_to_a_child_who_was_there_is_not_new_to_it_at_the_next_lesson()
    {
        await using var club = await EveningAsync();
        var before = club.Lesson(5, 12);
        await club.House.Showings.ShowAsync(Guid.CreateVersion7(), before.Id, (int)MatEnd.Beginners, 1, club.Item("o-goshi"), club.Head, club.Tablet, SpringClub.Stop);
        // Wren was there on the 12th; Pippa came for the first time tonight.
        Assert.Contains("O-goshi: never shown to 1, shown to 1 and not signed", await club.WordsAsync(Cards(club)), StringComparison.Ordinal);
    }

    [Fact, Statement(49)]
    public async Task When_all_at_an_end_are_absent_its_card_says_so()
    {
        await using var club = await EveningAsync(beginners: false);
        var words = await club.WordsAsync(Cards(club));
        Assert.Contains("Nobody is at the beginners' end tonight, so there is no card.", words, StringComparison.Ordinal);
        Assert.Contains("Main group Ruth", words, StringComparison.Ordinal);
    }

    [Fact, Statement(18), Statement(23)]
    public async Task A_stand_down_is_tori_only_on_the_card_and_its_reason_stands_nowhere()
    {
        await using var club = await EveningAsync();
        var wren = Child(club, "Wren");
        await club.House.StandDowns.EnterAsync(new NewStandDown(Guid.CreateVersion7(), wren, StandDownScope.NoFalls, new DateOnly(2026, 5, 5), null, "a note from the surgery"), club.Head, club.Tablet, SpringClub.Stop);
        var words = await club.WordsAsync(Cards(club));
        Assert.Matches("Wren( \\((back|new)\\))? (White; )?tori only", words);
        Assert.DoesNotContain("surgery", words, StringComparison.Ordinal);
        Assert.DoesNotContain("stand-down", words, StringComparison.OrdinalIgnoreCase);
        using var paper = await club.Browser.GetAsync($"/cards/cards.pdf?lesson={club.Lesson(Evening).Id:D}", SpringClub.Stop);
        Assert.Equal("application/pdf", paper.Content.Headers.ContentType?.MediaType);
    }

    [Fact]
    public async Task A_child_who_walks_in_is_on_the_card_and_what_was_shown_stays()
    {
        await using var club = await EveningAsync();
        var lesson = club.Lesson(Evening);
        await club.House.Showings.ShowAsync(Guid.CreateVersion7(), lesson.Id, 0, 1, club.Item("o-goshi"), club.Head, club.Tablet, SpringClub.Stop);
        await club.JoinAsync("Casimir", "Hollis", Evening);
        var words = await club.WordsAsync(Cards(club));
        Assert.Contains("Casimir (new)", words, StringComparison.Ordinal);
        Assert.Contains("O-goshi, shown", words, StringComparison.Ordinal);
    }

    private static string Cards(SpringClub club) => $"/cards?lesson={club.Lesson(Evening).Id:D}";

    private static Guid Child(SpringClub club, string given)
    {
        using var db = club.Db();
        var ids = db.Enrolments.Select(e => e.PersonId).ToList();
        return club.House.Books.Now(club.Reading(), club.Tablet, Evening) is { } now ? ids.Single(i => now.Book.Person(i)?.CallName == given) : Guid.Empty;
    }

    private static Guid Assistant(SpringClub club)
    {
        using var db = club.Db();
        return db.Duties.Single(d => d.Kind == DutyKind.Assistant).PersonId;
    }

    // Wren and Pippa at the beginners' end, Edda and Kofi in the main group; Ruth and Tobias are here and may lead.
    private static async Task<SpringClub> EveningAsync(bool beginners = true, string at = "2026-05-14T17:00", bool assistantIsHere = true)
    {
        var club = await SpringClub.StartAsync(at);
        await club.PublishAsync();
        var vetted = new DateOnly(2028, 1, 1);
        using (var db = club.Db())
        {
            var duty = db.Duties.Single();
            Assert.True(await club.House.People.ChangeDutyAsync(duty.Id, vetted, vetted, null, club.Head, club.Tablet, SpringClub.Stop));
        }

        var tobias = Guid.CreateVersion7();
        Assert.True(await club.House.People.AddDutyAsync(
            new NewDuty(tobias, "Tobias", "Wrenfield", new DateOnly(1990, 1, 1), DutyKind.Assistant, vetted, null), new DateOnly(2026, 1, 1), club.Head, club.Tablet, SpringClub.Stop));
        foreach (var adult in assistantIsHere ? [club.Head, tobias] : new[] { club.Head }) await club.MarkAsync(adult, Evening, MarkKind.Present);
        var wren = await club.JoinAsync("Wren", "Hollis", SpringClub.FirstLesson);
        await club.MarkAsync(wren, new DateOnly(2026, 5, 12), MarkKind.Present);
        await club.MarkAsync(wren, Evening, beginners ? MarkKind.Present : MarkKind.Absent);
        if (beginners) await club.JoinAsync("Pippa", "Hollis", Evening);
        foreach (var given in new[] { "Edda", "Kofi" })
        {
            var child = await club.JoinAsync(given, "Marsh", SpringClub.FirstLesson);
            await club.House.People.CrossAsync(child, club.Programme, MatEnd.Main, SpringClub.FirstLesson, null, club.Head, club.Tablet, SpringClub.Stop);
            await club.MarkAsync(child, Evening, MarkKind.Present);
        }

        return club;
    }
}
