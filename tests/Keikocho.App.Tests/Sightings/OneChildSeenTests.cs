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
        var page = $"/students/{wren}";
        Assert.Contains("Backward: shut Stage 1 (lying or sitting): shut; 2 more clean evenings open it", await club.WordsAsync(page), StringComparison.Ordinal);
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

    [Fact, Statement(20)]
    public async Task A_suggested_fall_waits_until_an_adult_with_the_right_confirms_it()
    {
        await using var club = await SpringClub.StartAsync();
        var wren = await club.JoinOfTheExampleAsync();
        var helper = await club.AddAdultAsync("Tobi", "Marlow", DutyKind.Assistant);
        await club.ActAsync(helper);
        var page = $"/students/{wren}";
        foreach (var day in new[] { 5, 12 })
            Assert.Contains("1 suggestion until somebody who may sign off confirms it", await club.TakenAsync(page, $"{page}/fall", ("form", "fall"), ("fallLesson", club.Lesson(5, day).Id.ToString("D")), ("way", "back"), ("stage", "1"), ("outcome", "clean")), StringComparison.Ordinal);
        var words = await club.WordsAsync(page);
        Assert.Contains("Backward: shut", words, StringComparison.Ordinal);
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
        Assert.Contains("Wren throws tonight, is not thrown.", tonight, StringComparison.Ordinal);
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
        Guid mark;
        using (var db = club.Db()) mark = db.Marks.Single(m => m.ItemId != null).Id;
        Assert.Contains("Taken back.", await club.TakenAsync(page, $"{page}/take-back", ("mark", mark.ToString("D"))), StringComparison.Ordinal);
        Assert.DoesNotContain("O-goshi prompted on", await club.WordsAsync(page), StringComparison.Ordinal);
        words = await club.TakenAsync(page, $"{page}/way", ("form", "way"), ("wayItem", "o-goshi"), ("wording", "sitting instead of standing"));
        Assert.Contains("O-goshi sitting instead of standing, agreed on 14 May 2026 by Ruth Aldersey", words, StringComparison.Ordinal);
        using (var db = club.Db()) Assert.Equal(2, db.Marks.Count(m => m.ItemId != null && (m.Code & MarkCode.ByRight) != 0));
    }
}
