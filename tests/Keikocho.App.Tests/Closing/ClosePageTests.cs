using System.Text.RegularExpressions;
using Keikocho.App.Tests.Sightings;
using Keikocho.App.Tests.Students;
using Keikocho.Core.Evening;
using Keikocho.Core.Safety;
using Keikocho.Store.Kernel;
using Keikocho.Store.Marks;
using Keikocho.Store.People;
using Keikocho.Store.Safety;
using Keikocho.Testing;

namespace Keikocho.App.Tests.Closing;

/// <summary>Closing the evening of Thursday 14 May.</summary>
public sealed partial class ClosePageTests
{
    private static readonly DateOnly Evening = new(2026, 5, 14);

    [Fact, Statement(25)]
    public async Task The_evening_is_not_closed_until_the_slip_has_gone_home()
    {
        await using var club = await SpringClub.StartAsync();
        var wren = await club.JoinOfTheExampleAsync();
        var knock = await KnockAsync(club, wren, KnockActivity.Game);
        var page = await club.WordsAsync(Page(club));
        Assert.Contains("Slips of knocks 1 to hand over", page, StringComparison.Ordinal);
        Assert.Contains("Wren Hollis game", page, StringComparison.Ordinal);
        Assert.Contains("Not closed. The slip of Wren Hollis has not gone home: hand it over, or ring the family, and write it into the accident record.", await CloseAsync(club), StringComparison.Ordinal);
        await club.House.Writer.RunAsync(session =>
        {
            session.Db.KnockLines.Add(new KnockLineRow { Club = session.Club, Id = session.NewId(), KnockId = knock, Kind = KnockLine.HandedOver, Words = Seal.Close("the mother"), ById = club.Head, DeviceId = club.Tablet, MadeAt = session.Now });
            session.Db.SaveChanges();
            return true;
        }, SpringClub.Stop);
        Assert.Contains("The evening is closed.", await CloseAsync(club), StringComparison.Ordinal);
        Assert.Contains("Closed on 14 May 2026 at 21:00 by Ruth.", await club.WordsAsync(Page(club)), StringComparison.Ordinal);
        Assert.Contains("The evening is open again.", await club.TakenAsync(Page(club), "/close/open-again", Lesson(club)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_child_still_on_the_roll_is_asked_about_and_bars_nothing()
    {
        await using var club = await SpringClub.StartAsync();
        var wren = await club.JoinOfTheExampleAsync();
        await club.MarkAsync(wren, Evening, MarkKind.Present);
        Assert.Contains("Have all of them been collected?", await club.WordsAsync(Page(club)), StringComparison.Ordinal);
        Assert.Contains("The evening is closed.", await CloseAsync(club), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Suggestions_are_confirmed_by_evening_and_nothing_critical_is_ticked_beforehand()
    {
        await using var club = await SpringClub.StartAsync();
        await club.PublishAsync();
        var wren = await club.JoinOfTheExampleAsync();
        var bram = await club.JoinAsync("Bram", "Oakes", SpringClub.FirstLesson);
        var leader = await club.AddAdultAsync("Leo", "Ash", DutyKind.JuniorLeader);
        var lesson = club.Lesson(5, 14).Id;
        var way = new FallWay(FallDirection.Back, FallSide.None);
        SeenTap[] taps =
        [
            new(Guid.CreateVersion7(), lesson, wren, club.Item("o-goshi"), MarkKind.Sighting, EvidenceCode.OfWord(SeenWord.Good)),
            new(Guid.CreateVersion7(), lesson, bram, club.Item("o-goshi"), MarkKind.Sighting, EvidenceCode.OfWord(SeenWord.NotYet)),
            new(Guid.CreateVersion7(), lesson, wren, club.Item("stop"), MarkKind.Words, EvidenceCode.OfWord(SeenWord.Good)),
            SeenTap.OfFall(Guid.CreateVersion7(), lesson, wren, way, 3, true),
        ];
        Assert.Equal(4, (await club.House.Sightings.AddAsync(taps, club.Today, leader, club.Tablet, SpringClub.Stop)).Suggestions);
        var page = await club.TextAsync(Page(club));
        var boxes = Boxes().Matches(page).Select(m => (Mark: Guid.Parse(m.Groups[1].Value), Ticked: m.Groups[2].Length > 0)).ToList();
        Assert.Equal([taps[3].Id, taps[2].Id, taps[0].Id, taps[1].Id], boxes.OrderBy(b => b.Ticked).ThenBy(b => Array.FindIndex(taps, t => t.Id == b.Mark) is 3 ? 0 : 1).Select(b => b.Mark));
        Assert.Equal([false, false, true, true], boxes.Select(b => b.Ticked));
        Assert.Matches("All, but those you untick\\s+(Stop[^A-Z]*)?.*O-goshi\\s+good: Wren; not yet: Bram", SpringClub.Plain(page));
        Assert.Matches("Tick each that you stand behind\\s+Falls\\s+1: Wren", SpringClub.Plain(page));
        var said = await club.TakenAsync(Page(club), "/close/confirm", Lesson(club), ("command", Guid.CreateVersion7().ToString("D")),
            ("mark", taps[0].Id.ToString("D")), ("mark", taps[3].Id.ToString("D")), ("mark", Guid.CreateVersion7().ToString("D")));
        Assert.Contains("Confirmed: 2 marks.", said, StringComparison.Ordinal);
        Assert.Equal(2, Boxes().Count(await club.TextAsync(Page(club))));
    }

    [Fact, Statement(31)]
    public async Task Fewer_than_three_knocks_are_said_to_be_too_few_and_near_misses_stand_apart()
    {
        await using var club = await SpringClub.StartAsync();
        var wren = await club.JoinOfTheExampleAsync();
        await KnockAsync(club, wren, KnockActivity.WarmUp);
        await KnockAsync(club, wren, KnockActivity.Game, nearMiss: true);
        var page = await club.WordsAsync(Page(club));
        Assert.Contains("All together: 1 knock in 12 child-evenings: too few to say. 1 near miss besides.", page, StringComparison.Ordinal);
        Assert.Contains("warm-up: 1 knock in 12 child-evenings: too few to say.", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_missed_two_running_in_the_first_course_is_to_be_rung()
    {
        await using var club = await SpringClub.StartAsync();
        await club.JoinOfTheExampleAsync();
        var bram = await club.JoinAsync("Bram", "Oakes", new DateOnly(2026, 5, 5));
        await club.MarkAsync(bram, Evening, MarkKind.Absent);
        Assert.Contains("Bram Oakes 2 lessons missed running since 12 May 2026, last there on 5 May 2026; first course", await club.WordsAsync(Page(club)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_leader_who_marked_others_at_a_lesson_helped_there()
    {
        await using var club = await SpringClub.StartAsync();
        var wren = await club.JoinOfTheExampleAsync();
        var leader = await club.AddAdultAsync("Leo", "Ash", DutyKind.JuniorLeader);
        await club.MarkAsync(wren, Evening, MarkKind.Present, by: leader);
        Assert.Contains("Leo: 1 evening, helped 1, trained 0; at least 50 % trained is 1: 1 evening of their own training owed.", await club.WordsAsync(Page(club)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Two_children_of_one_name_are_told_apart()
    {
        await using var club = await SpringClub.StartAsync();
        await club.PublishAsync();
        var first = await club.JoinAsync("Mia", "Oakes", SpringClub.FirstLesson);
        await club.JoinAsync("Mia", "Fairlamb", SpringClub.FirstLesson);
        var leader = await club.AddAdultAsync("Leo", "Ash", DutyKind.JuniorLeader);
        await club.House.Sightings.AddAsync(
            [new SeenTap(Guid.CreateVersion7(), club.Lesson(5, 14).Id, first, club.Item("o-goshi"), MarkKind.Sighting, EvidenceCode.OfWord(SeenWord.Good))], club.Today, leader, club.Tablet, SpringClub.Stop);
        Assert.Contains("Mia O", await club.WordsAsync(Page(club)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_two_tablets_say_differently_is_shown_with_both_words()
    {
        await using var club = await SpringClub.StartAsync();
        var wren = await club.JoinOfTheExampleAsync();
        var lesson = club.Lesson(5, 14).Id;
        var way = new FallWay(FallDirection.Back, FallSide.None);
        await club.House.Sightings.AddAsync([SeenTap.OfFall(Guid.CreateVersion7(), lesson, wren, way, 3, true)], club.Today, club.Head, club.Tablet, SpringClub.Stop);
        await club.House.Sightings.AddAsync([SeenTap.OfFall(Guid.CreateVersion7(), lesson, wren, way, 3, false)], club.Today, club.Head, await club.AddTabletAsync(), SpringClub.Stop);
        var page = await club.WordsAsync(Page(club));
        Assert.Contains("stage 3 (standing) clean", page, StringComparison.Ordinal);
        Assert.Contains("stage 3 (standing) head touched", page, StringComparison.Ordinal);
        Assert.Contains("Head touched stands: the evening is not clean backward, whoever tapped first.", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Marks_that_come_after_closing_are_taken()
    {
        await using var club = await SpringClub.StartAsync();
        var wren = await club.JoinOfTheExampleAsync();
        Assert.Contains("The evening is closed.", await CloseAsync(club), StringComparison.Ordinal);
        await club.MarkAsync(wren, Evening, MarkKind.Left, new TimeOnly(18, 45));
        using var reading = club.Reading();
        Assert.Equal(AttendanceWord.Left, AttendanceReader.OfLesson(reading, club.Lesson(5, 14).Id)[wren].Word);
    }

    [Fact]
    public async Task A_lesson_that_is_not_there_closes_nothing()
    {
        await using var club = await SpringClub.StartAsync();
        Assert.Contains("Nothing was changed.", await club.TakenAsync(Page(club), "/close/evening", ("lesson", Guid.CreateVersion7().ToString("D"))), StringComparison.Ordinal);
    }

    private static string Page(SpringClub club) => $"/close?lesson={club.Lesson(5, 14).Id:D}";

    private static (string, string) Lesson(SpringClub club) => ("lesson", club.Lesson(5, 14).Id.ToString("D"));

    private static Task<string> CloseAsync(SpringClub club) => club.TakenAsync(Page(club), "/close/evening", Lesson(club));

    private static async Task<Guid> KnockAsync(SpringClub club, Guid child, KnockActivity activity, bool nearMiss = false)
    {
        var id = Guid.CreateVersion7();
        var lesson = club.Lesson(5, 14).Id;
        await club.House.Writer.RunAsync(session =>
        {
            session.Db.Knocks.Add(new KnockRow { Club = session.Club, Id = id, PersonId = child, LessonId = lesson, On = Evening, Activity = (int)activity, NearMiss = nearMiss, MadeAt = session.Now });
            session.Db.SaveChanges();
            return true;
        }, SpringClub.Stop);
        return id;
    }

    [GeneratedRegex("<input type=\"checkbox\" name=\"mark\" value=\"([0-9a-f-]{36})\"( checked)?")]
    private static partial Regex Boxes();
}
