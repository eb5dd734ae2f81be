using Keikocho.App.Tests.Students;
using Keikocho.Core.Evening;
using Keikocho.Store.Marks;
using Keikocho.Store.People;
using Keikocho.Testing;

namespace Keikocho.App.Tests.Sightings;

/// <summary>Falls, sightings, suggestions, stand-downs and agreed ways on one child's page.</summary>
public sealed class OneChildSeenTests
{
    [Fact]
    public async Task A_fall_is_entered_and_the_page_says_what_opens_the_gate()
    {
        await using var club = await SpringClub.StartAsync();
        var wren = await club.JoinOfTheExampleAsync();
        await club.MarkAsync(wren, new DateOnly(2026, 5, 12), MarkKind.Present);
        var page = $"/students/{wren}";
        // Every way is shut for the same reason: said once.
        Assert.Contains("Backward, to both sides, forward and rolling to both sides: shut Stage 1 (lying or sitting): shut; 2 more clean evenings open it", await club.WordsAsync(page), StringComparison.Ordinal);
        // The child was away for three weeks round the spring holiday: one stage lower first, then the stage, on one evening.
        foreach (var (day, stage) in new[] { (5, "2"), (5, "3"), (12, "3") })
            Assert.Contains("Stored: 1 mark.", await club.TakenAsync(page, $"{page}/fall", ("form", "fall"), ("fallLesson", club.Lesson(5, day).Id.ToString("D")), ("way", "back"), ("stage", stage), ("outcome", "clean")), StringComparison.Ordinal);
        Assert.Contains("Backward: open to stage 3 (standing)", await club.WordsAsync(page), StringComparison.Ordinal);
        var words = await club.TakenAsync(page, $"{page}/fall", ("form", "fall"), ("fallLesson", club.Lesson(5, 14).Id.ToString("D")), ("way", "back"), ("stage", "2"), ("outcome", "touched"));
        Assert.Contains("Backward: shut", words, StringComparison.Ordinal);
        Assert.Contains("the head touched tonight at stage 2 (squat), so no fall that way tonight.", words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("fall", "way", "up", "Choose which way the child fell.")]
    [InlineData("fall", "stage", "7", "Choose the stage.")]
    [InlineData("fall", "way", "front", "Forward there is no stage 4")]
    [InlineData("fall", "outcome", "", "Say whether the fall was clean or the head touched.")]
    [InlineData("fall", "fallLesson", "", "Choose the evening")]
    [InlineData("sighting", "item", "nothing-known", "Choose the item.")]
    [InlineData("sighting", "word", "", "Say what was seen")]
    [InlineData("stand-down", "scope", "", "Choose what the child may not do for now.")]
    [InlineData("stand-down", "standFrom", "2026-02-30", "“2026-02-30” is not a day of the calendar.")]
    [InlineData("stand-down", "reviewOn", "2026-05-01", "1 May 2026 is before the first day, 14 May 2026.")]
    [InlineData("way", "wayItem", "", "Choose the item.")]
    public async Task Bad_input_is_said_and_changes_nothing(string form, string field, string value, string sentence)
    {
        await using var club = await SpringClub.StartAsync();
        await club.PublishAsync();
        var wren = await club.JoinOfTheExampleAsync();
        var lesson = club.Lesson(5, 14).Id.ToString("D");
        var fields = new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["form"] = form,
            ["fallLesson"] = lesson,
            ["way"] = "back",
            ["stage"] = "4",
            ["outcome"] = "clean",
            ["seenLesson"] = lesson,
            ["item"] = "o-goshi",
            ["word"] = "good",
            ["scope"] = "no-falls",
            ["standFrom"] = "2026-05-14",
            ["wayItem"] = "o-goshi",
            ["wording"] = "sitting",
        };
        fields[field] = value;
        var html = await club.RefusedAsync($"/students/{wren}", $"/students/{wren}/{form}", [.. fields.Select(f => (f.Key, f.Value))]);
        Assert.Contains(sentence, html, StringComparison.Ordinal);
        using var db = club.Db();
        Assert.False(db.Marks.Any(m => m.ItemId != null) || db.StandDowns.Any() || db.Adaptations.Any());
    }

    [Fact, Statement(17)]
    public async Task Tonight_says_which_way_a_child_is_thrown_who_may_not_fall_the_other_ways()
    {
        await using var club = await SpringClub.StartAsync();
        var wren = await club.JoinOfTheExampleAsync();
        await club.MarkAsync(wren, new DateOnly(2026, 5, 12), MarkKind.Present);
        await club.MarkAsync(wren, new DateOnly(2026, 5, 14), MarkKind.Present);
        var page = $"/students/{wren}";
        foreach (var (day, stage) in new[] { (5, "3"), (5, "4"), (12, "4") })
            await club.TakenAsync(page, $"{page}/fall", ("form", "fall"), ("fallLesson", club.Lesson(5, day).Id.ToString("D")), ("way", "back"), ("stage", stage), ("outcome", "clean"));
        Assert.Contains("Wren Throws tonight; is thrown backward only.", await club.WordsAsync($"/tonight?lesson={club.Lesson(5, 14).Id}"), StringComparison.Ordinal);
    }

    [Fact, Statement(20)]
    public async Task A_suggested_fall_waits_until_an_adult_with_the_right_confirms_it()
    {
        await using var club = await SpringClub.StartAsync();
        var wren = await club.JoinOfTheExampleAsync();
        await club.MarkAsync(wren, new DateOnly(2026, 5, 12), MarkKind.Present);
        var helper = await club.AddAdultAsync("Tobi", "Marlow", DutyKind.Assistant);
        await club.ActAsync(helper);
        var page = $"/students/{wren}";
        foreach (var day in new[] { 5, 12 })
            Assert.Contains("1 suggestion until somebody who may sign off confirms it", await club.TakenAsync(page, $"{page}/fall", ("form", "fall"), ("fallLesson", club.Lesson(5, day).Id.ToString("D")), ("way", "back"), ("stage", "1"), ("outcome", "clean")), StringComparison.Ordinal);
        var words = await club.WordsAsync(page);
        Assert.Contains("Backward, to both sides, forward and rolling to both sides: shut", words, StringComparison.Ordinal);
        Assert.Contains("Suggestions waiting", words, StringComparison.Ordinal);
        Assert.DoesNotContain("Confirm all", words, StringComparison.Ordinal);
        Guid[] marks;
        using (var db = club.Db()) marks = [.. db.Marks.Where(m => m.ItemId != null).Select(m => m.Id)];
        (string, string)[] all = [("mark", "all"), .. marks.Select(m => ("shown", m.ToString("D")))];
        Assert.Contains("Only an adult of 18 or over with that right may do this.", await club.TakenAsync(page, $"{page}/confirm", all), StringComparison.Ordinal);
        await club.ActAsync(club.Head);
        Assert.Contains("2 suggestions", await club.WordsAsync($"/tonight?lesson={club.Lesson(5, 14).Id}"), StringComparison.Ordinal);
        Assert.Contains("Wren Hollis 2 marks", await club.WordsAsync("/sightings/waiting"), StringComparison.Ordinal);
        words = await club.TakenAsync(page, $"{page}/confirm", all);
        Assert.Contains("Confirmed: 2 marks.", words, StringComparison.Ordinal);
        Assert.Contains("Backward: open to stage 1", words, StringComparison.Ordinal);
        Assert.DoesNotContain("Suggestions waiting", words, StringComparison.Ordinal);
    }

    [Fact, Statement(21)]
    public async Task A_stand_down_holds_past_its_review_day_is_listed_and_is_lifted_with_name_day_and_reason()
    {
        await using var club = await SpringClub.StartAsync();
        var wren = await club.JoinOfTheExampleAsync();
        await club.MarkAsync(wren, new DateOnly(2026, 5, 14), MarkKind.Present);
        var page = $"/students/{wren}";
        Assert.Contains("Do not write what is wrong with the child.", await club.WordsAsync(page), StringComparison.Ordinal);
        var words = await club.TakenAsync(page, $"{page}/stand-down", ("form", "stand-down"), ("scope", "no-falls"), ("standFrom", "2026-05-05"), ("reviewOn", "2026-05-12"), ("whoseWord", "the family and a letter"));
        Assert.Contains("The review of 12 May 2026 is due; it stands all the same.", words, StringComparison.Ordinal);
        Assert.Contains("Wren Hollis no falls since 5 May 2026, review due since 12 May 2026", await club.WordsAsync("/sightings/waiting"), StringComparison.Ordinal);
        var tonight = await club.WordsAsync($"/tonight?lesson={club.Lesson(5, 14).Id}");
        Assert.Contains("Wren Throws tonight, is not thrown.", tonight, StringComparison.Ordinal);
        Assert.DoesNotContain("letter", tonight, StringComparison.Ordinal);
        Assert.DoesNotContain("stand-down", tonight, StringComparison.OrdinalIgnoreCase);
        string id;
        using (var db = club.Db()) id = db.StandDowns.Single().Id.ToString("D");
        var head = club.Head.ToString("D");
        Assert.Contains("The reason is missing.", await club.RefusedAsync(page, $"{page}/lift", ("form", "lift"), ("liftWhich", id), ("liftBy", head), ("liftOn", "2026-05-14"), ("liftWhy", " ")), StringComparison.Ordinal);
        Assert.Contains("before the stand-down began", await club.RefusedAsync(page, $"{page}/lift", ("form", "lift"), ("liftWhich", id), ("liftBy", head), ("liftOn", "2026-05-04"), ("liftWhy", "seen")), StringComparison.Ordinal);
        Assert.Contains("Choose the adult who lifts it.", await club.RefusedAsync(page, $"{page}/lift", ("form", "lift"), ("liftWhich", id), ("liftBy", wren.ToString("D")), ("liftOn", "2026-05-14"), ("liftWhy", "seen")), StringComparison.Ordinal);
        Assert.Contains("1 June 2026", await club.TakenAsync(page, $"{page}/move-review", ("form", "move"), ("moveWhich", id), ("moveTo", "2026-06-01")), StringComparison.Ordinal);
        words = await club.TakenAsync(page, $"{page}/lift", ("form", "lift"), ("liftWhich", id), ("liftBy", head), ("liftOn", "2026-05-14"), ("liftWhy", "the letter was shown"));
        Assert.Contains("Lifted on 14 May 2026 by Ruth Aldersey: the letter was shown.", words, StringComparison.Ordinal);
        using (var db = club.Db()) Assert.Equal(new DateOnly(2026, 5, 14), db.StandDowns.Single().LiftedOn);
    }

    [Fact]
    public async Task A_sighting_is_entered_taken_back_and_an_agreed_way_stands_on_the_page()
    {
        await using var club = await SpringClub.StartAsync();
        await club.PublishAsync();
        var wren = await club.JoinOfTheExampleAsync();
        var page = $"/students/{wren}";
        var words = await club.TakenAsync(page, $"{page}/sighting", ("form", "sighting"), ("seenLesson", club.Lesson(5, 14).Id.ToString("D")), ("item", "o-goshi"), ("word", "prompted"));
        Assert.Contains("O-goshi prompted on 14 May 2026; good on 0 evenings", words, StringComparison.Ordinal);
        Assert.Contains("Taken back.", await club.TakenAsync(page, $"{page}/correct-seen", ("mark", Newest(club)), ("to", "nothing")), StringComparison.Ordinal);
        Assert.DoesNotContain("O-goshi prompted on", await club.WordsAsync(page), StringComparison.Ordinal);
        words = await club.TakenAsync(page, $"{page}/way", ("form", "way"), ("wayItem", "o-goshi"), ("wording", "sitting instead of standing"));
        Assert.Contains("O-goshi sitting instead of standing, agreed on 14 May 2026 by Ruth Aldersey", words, StringComparison.Ordinal);
        using var db = club.Db();
        Assert.Equal(2, db.Marks.Count(m => m.ItemId != null && (m.Code & MarkCode.ByRight) != 0));
    }

    [Fact]
    public async Task A_wrong_mark_is_put_right_and_the_first_one_stays_to_be_seen_with_who_and_when()
    {
        await using var club = await SpringClub.StartAsync();
        await club.PublishAsync();
        var wren = await club.JoinOfTheExampleAsync();
        var tobi = await club.AddAdultAsync("Tobi", "Marlow", DutyKind.Assistant);
        var page = $"/students/{wren}";
        await club.ActAsync(tobi);
        await club.TakenAsync(page, $"{page}/sighting", ("form", "sighting"), ("seenLesson", club.Lesson(5, 14).Id.ToString("D")), ("item", "o-goshi"), ("word", "good"));
        var first = Newest(club);
        Assert.Contains("Entered wrongly : O-goshi: good", await club.WordsAsync(page), StringComparison.Ordinal);
        await club.ActAsync(club.Head);
        var words = await club.TakenAsync(page, $"{page}/correct-seen", ("mark", first), ("to", "not-yet"));
        Assert.Contains("Put right.", words, StringComparison.Ordinal);
        Assert.Contains("O-goshi not yet on 14 May 2026", words, StringComparison.Ordinal);
        Assert.Contains("O-goshi: good, 14 May 2026: marked by Tobi Marlow on 14 May 2026 at 21:00; then not yet, by Ruth Aldersey on 14 May 2026 at 21:00.", words, StringComparison.Ordinal);
        Assert.Contains("That mark does not stand any more.", await club.TakenAsync(page, $"{page}/correct-seen", ("mark", first), ("to", "good")), StringComparison.Ordinal);
        using (var bad = await club.PostAsync(page, $"{page}/correct-seen", ("mark", Newest(club)), ("to", "splendid"))) Assert.Equal(System.Net.HttpStatusCode.BadRequest, bad.StatusCode);
        await club.ActAsync(tobi);
        var shown = await club.WordsAsync(page);
        Assert.DoesNotContain("What was put right", shown, StringComparison.Ordinal);
        Assert.DoesNotContain("Entered wrongly", shown, StringComparison.Ordinal);
        Assert.Contains("Only an adult of 18 or over with that right may do this.", await club.TakenAsync(page, $"{page}/correct-seen", ("mark", Newest(club)), ("to", "good")), StringComparison.Ordinal);
        using var db = club.Db();
        Assert.Equal(2, db.Marks.Count(m => m.ItemId != null));
    }

    [Fact]
    public async Task A_fall_that_was_entered_wrongly_is_put_right_and_stays_in_the_history()
    {
        await using var club = await SpringClub.StartAsync();
        var wren = await club.JoinOfTheExampleAsync();
        var page = $"/students/{wren}";
        await club.TakenAsync(page, $"{page}/fall", ("form", "fall"), ("fallLesson", club.Lesson(5, 14).Id.ToString("D")), ("way", "back"), ("stage", "2"), ("outcome", "clean"));
        var words = await club.TakenAsync(page, $"{page}/correct-seen", ("mark", Newest(club)), ("to", "touched"));
        Assert.Contains("the head touched tonight at stage 2 (squat), so no fall that way tonight.", words, StringComparison.Ordinal);
        Assert.Contains("Fall backward, stage 2 (squat): clean, 14 May 2026: marked by Ruth Aldersey on 14 May 2026 at 21:00; then head touched, by Ruth Aldersey", words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_was_seen_at_a_lesson_that_was_closed_afterwards_counts_on_and_the_page_says_so()
    {
        await using var club = await SpringClub.StartAsync();
        await club.PublishAsync();
        var wren = await club.JoinOfTheExampleAsync();
        await club.MarkAsync(wren, new DateOnly(2026, 5, 12), MarkKind.Present);
        var page = $"/students/{wren}";
        var lesson = club.Lesson(5, 12).Id;
        await club.TakenAsync(page, $"{page}/sighting", ("form", "sighting"), ("seenLesson", lesson.ToString("D")), ("item", "o-goshi"), ("word", "good"));
        await club.CloseAsync("Hall flooded", new DateOnly(2026, 5, 12), new DateOnly(2026, 5, 12), lesson);
        var words = await club.WordsAsync(page);
        Assert.Contains("O-goshi good on 12 May 2026 (the lesson was closed afterwards); good on 1 evening", words, StringComparison.Ordinal);
        Assert.Contains("O-goshi: good, 12 May 2026 by Ruth Aldersey; the lesson was closed afterwards", words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(MarkKind.Absent, "Wren is marked absent in the register of Thursday 14 May 2026: put the register right first, or choose another evening.")]
    [InlineData(MarkKind.Excused, "Wren is marked excused in the register of Thursday 14 May 2026: put the register right first, or choose another evening.")]
    public async Task Nothing_seen_is_entered_for_an_evening_on_which_the_child_was_not_there(MarkKind kind, string sentence)
    {
        await using var club = await SpringClub.StartAsync();
        await club.PublishAsync();
        var wren = await club.JoinAsync("Wren", "Hollis", SpringClub.FirstLesson);
        await club.MarkAsync(wren, new DateOnly(2026, 5, 14), kind);
        await RefusedAsync(club, wren, sentence);
    }

    [Fact]
    public async Task Nothing_seen_is_entered_for_an_evening_off_the_mat_but_a_late_mark_of_a_tablet_is_kept()
    {
        await using var club = await SpringClub.StartAsync();
        await club.PublishAsync();
        var wren = await club.JoinAsync("Wren", "Hollis", SpringClub.FirstLesson);
        var page = $"/students/{wren}";
        await club.TakenAsync(page, $"{page}/stand-down", ("form", "stand-down"), ("scope", "off-the-mat"), ("standFrom", "2026-05-12"));
        await RefusedAsync(club, wren, "Wren was off the mat on Thursday 14 May 2026, by the stand-down of 12 May 2026: put the stand-down right first, or choose another evening.");
        var late = SeenTap.OfFall(Guid.CreateVersion7(club.Time.GetUtcNow()), club.Lesson(5, 14).Id, wren, new Core.Safety.FallWay(Core.Safety.FallDirection.Back, Core.Safety.FallSide.None), 1, clean: false);
        Assert.Equal(EvidenceOutcome.Stored, (await club.House.Sightings.AddAsync([late], club.Today, club.Head, club.Tablet, SpringClub.Stop)).Outcome);
    }

    [Fact]
    public async Task A_lifting_entered_for_an_earlier_day_says_from_which_day_falls_count()
    {
        await using var club = await SpringClub.StartAsync();
        var wren = await club.JoinAsync("Wren", "Hollis", SpringClub.FirstLesson);
        await club.MarkAsync(wren, new DateOnly(2026, 5, 14), MarkKind.Present);
        var page = $"/students/{wren}";
        await club.TakenAsync(page, $"{page}/stand-down", ("form", "stand-down"), ("scope", "no-falls"), ("standFrom", "2026-05-05"));
        string id;
        using (var db = club.Db()) id = db.StandDowns.Single().Id.ToString("D");
        var words = await club.TakenAsync(page, $"{page}/lift", ("form", "lift"), ("liftWhich", id), ("liftBy", club.Head.ToString("D")), ("liftOn", "2026-05-05"), ("liftWhy", "the letter was shown"));
        Assert.Contains("Lifted from 5 May 2026, entered today: falls count from today on, and are shown again first", words, StringComparison.Ordinal);
        Assert.Contains("Lifted on 5 May 2026, entered on 14 May 2026, by Ruth Aldersey: the letter was shown.", words, StringComparison.Ordinal);
        Assert.Contains("A stand-down was lifted on 5 May 2026, which was entered on 14 May 2026: falls count from 14 May 2026 on, the later of the two days", words, StringComparison.Ordinal);
    }

    private static async Task RefusedAsync(SpringClub club, Guid child, string sentence)
    {
        var (page, lesson) = ($"/students/{child}", club.Lesson(5, 14).Id.ToString("D"));
        Assert.Contains(sentence, await club.RefusedAsync(page, $"{page}/fall", ("form", "fall"), ("fallLesson", lesson), ("way", "back"), ("stage", "1"), ("outcome", "clean")), StringComparison.Ordinal);
        Assert.Contains(sentence, await club.RefusedAsync(page, $"{page}/sighting", ("form", "sighting"), ("seenLesson", lesson), ("item", "o-goshi"), ("word", "good")), StringComparison.Ordinal);
        using var db = club.Db();
        Assert.False(db.Marks.Any(m => m.ItemId != null));
    }

    private static string Newest(SpringClub club)
    {
        using var db = club.Db();
        return db.Marks.Where(m => m.ItemId != null).AsEnumerable().OrderByDescending(m => m.Sequence).First().Id.ToString("D");
    }
}
