using System.Net;
using System.Text.Json.Nodes;
using Keikocho.Core.Evening;
using Keikocho.Store.Marks;
using Keikocho.Store.People;
using Keikocho.Testing;

namespace Keikocho.App.Tests.Hall;

public sealed class HandingInTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact, Statement(84)]
    public async Task The_same_marks_handed_in_again_are_stored_once()
    {
        await using var hall = await HallDoorOpen.StartAsync();
        using var tablet = await TabletAsync(hall, DutyKind.Instructor);
        var marks = Enumerable.Range(0, 5).Select(i => tablet.Mark("present", tablet.Child(i), m => m["at"] = 1045)).ToArray();
        Assert.All(await tablet.HandInAsync(marks), Taken);
        Assert.All(await tablet.HandInAsync(marks), Taken);
        Assert.All(await tablet.HandInAsync([.. marks.Reverse(), marks[2]]), Taken);
        using var db = hall.House.Engine.OpenDb();
        Assert.Equal(5, db.Marks.Count(m => m.LessonId == tablet.LessonId));
        await tablet.AskAsync();
        Assert.Equal("present", tablet.ChildNow(tablet.Child(0))["mark"]!.GetValue<string>());
    }

    [Fact, Statement(96)]
    public async Task A_tablet_whose_clock_is_a_day_wrong_marks_the_evening_that_it_joined_even_on_the_day_after()
    {
        await using var hall = await HallDoorOpen.StartAsync();
        using var tablet = await TabletAsync(hall, DutyKind.Instructor);
        var early = tablet.Mark("present", tablet.Child(0), m => m["madeAt"] = hall.Time.GetUtcNow().AddDays(-1).ToUnixTimeMilliseconds());
        Assert.All(await tablet.HandInAsync(early), Taken);
        var late = tablet.Mark("present", tablet.Child(1), m => m["madeAt"] = hall.Time.GetUtcNow().AddDays(1).ToUnixTimeMilliseconds());
        hall.Time.Step(TimeSpan.FromHours(20));
        Assert.All(await tablet.HandInAsync(late), Taken);
        using var db = hall.House.Engine.OpenDb();
        Assert.Equal(
            [new DateOnly(2026, 11, 24), new DateOnly(2026, 11, 24)],
            db.Attendances.Where(a => a.LessonId == tablet.LessonId && a.Word == AttendanceWord.Present).Select(a => a.Date));
    }

    [Fact]
    public async Task When_the_evening_is_over_a_tablet_hands_in_what_it_holds_and_is_told_nothing_of_anybody()
    {
        await using var hall = await HallDoorOpen.StartAsync();
        using var tablet = await TabletAsync(hall, DutyKind.Instructor);
        hall.Time.Step(TimeSpan.FromHours(6));
        using var answer = await tablet.PostAsync(tablet.Mark("present", tablet.Child(0)));
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var done = JsonNode.Parse(await answer.Content.ReadAsStringAsync(Cancel))!;
        Assert.True(done["answers"]![0]!["taken"]!.GetValue<bool>());
        Assert.Empty(done["tiles"]!.AsArray());
        using var evening = await tablet.Http.GetAsync("/mat/evening", Cancel);
        Assert.NotEqual(HttpStatusCode.OK, evening.StatusCode);
    }

    [Fact]
    public async Task A_tablet_that_was_put_out_hands_in_nothing_until_it_is_let_in_again()
    {
        await using var hall = await HallDoorOpen.StartAsync();
        using var tablet = await TabletAsync(hall, DutyKind.Instructor);
        Guid join;
        using (var db = hall.House.Engine.OpenDb()) join = db.Joins.Single().Id;
        await hall.House.Joins.PutOutAsync(join, null, Guid.CreateVersion7(), Cancel);
        using var answer = await tablet.PostAsync(tablet.Mark("present", tablet.Child(0)));
        Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
        using var after = hall.House.Engine.OpenDb();
        Assert.False(after.Marks.Any(m => m.LessonId == tablet.LessonId));
    }

    [Fact]
    public async Task A_tablet_takes_back_its_own_marks_and_no_other_tablets()
    {
        await using var hall = await HallDoorOpen.StartAsync();
        using var one = await TabletAsync(hall, DutyKind.HeadInstructor);
        using var two = await TabletAsync(hall, DutyKind.Instructor);
        var present = one.Mark("present", one.Child(0));
        Assert.All(await one.HandInAsync(present), Taken);
        JsonObject Back(TabletOfTests tablet) => tablet.Mark("cleared", one.Child(0), m => m["replaces"] = present["id"]!.GetValue<Guid>());
        Assert.Equal(["A tablet takes back its own marks only; correct it on the laptop."], await two.HandInAsync(Back(two)));
        Assert.All(await one.HandInAsync(Back(one)), Taken);
        await one.AskAsync();
        Assert.Equal("", one.ChildNow(one.Child(0))["mark"]!.GetValue<string>());
    }

    [Fact]
    public async Task What_can_never_be_stored_is_refused_with_its_reason_and_the_rest_is_taken()
    {
        await using var hall = await HallDoorOpen.StartAsync();
        using var tablet = await TabletAsync(hall, DutyKind.JuniorLeader);
        Guid other, adult;
        using (var db = hall.House.Engine.OpenDb())
        {
            other = db.Lessons.Where(l => l.Date < new DateOnly(2026, 11, 24)).OrderByDescending(l => l.Date).Select(l => l.Id).First();
            adult = db.Duties.Where(d => d.Kind == DutyKind.HeadInstructor).Select(d => d.PersonId).First();
        }

        var answers = await tablet.HandInAsync(
            tablet.Mark("present", tablet.Child(0)),
            tablet.Mark("present", tablet.Child(1), m => m["lesson"] = other),
            tablet.Mark("present", Guid.CreateVersion7()),
            tablet.Mark("present", tablet.Child(1), m => m["by"] = adult),
            tablet.Mark("confirmed", tablet.Child(1)),
            tablet.Mark("fall", tablet.Child(1), m => m["code"] = 0xF0F),
            tablet.Mark("sighting", tablet.Child(1), m => { m["code"] = 1; m["item"] = Guid.CreateVersion7(); }),
            tablet.Mark("present", tablet.Child(2)));
        Assert.Equal(
            [
                "taken",
                "It is of no lesson of the evening that this tablet joined.",
                "That child is not in the club’s file any more.",
                "Whoever made it has no duty on that evening.",
                "A tablet makes no such mark.",
                "It says nothing that can be seen.",
                "That item is not in the club’s syllabus any more.",
                "taken",
            ],
            answers);
    }

    [Fact, Statement(20)]
    public async Task What_a_junior_leader_marks_waits_and_what_an_instructor_marks_stands()
    {
        await using var hall = await HallDoorOpen.StartAsync();
        using var leader = await TabletAsync(hall, DutyKind.JuniorLeader);
        using var adult = await TabletAsync(hall, DutyKind.HeadInstructor);
        var code = leader.Lesson["items"]!.AsArray().First(i => i!["kind"]!.GetValue<string>() == "fall")!["code"]!.GetValue<int>();
        Assert.All(await leader.HandInAsync(leader.Mark("fall", leader.Child(3), m => m["code"] = code)), Taken);
        Assert.All(await adult.HandInAsync(adult.Mark("fall", leader.Child(4), m => m["code"] = code)), Taken);
        using var db = hall.House.Engine.OpenDb();
        bool ByRight(Guid child) => (db.Marks.Single(m => m.LessonId == leader.LessonId && m.PersonId == child && m.Kind == MarkKind.Fall).Code & MarkCode.ByRight) != 0;
        Assert.False(ByRight(leader.Child(3)));
        Assert.True(ByRight(leader.Child(4)));
    }

    [Fact, Statement(24)]
    public async Task A_knock_takes_the_child_off_the_mat_and_no_tap_puts_it_back()
    {
        await using var hall = await HallDoorOpen.StartAsync();
        using var tablet = await TabletAsync(hall, DutyKind.Instructor);
        var child = tablet.Child(5);
        var knock = tablet.Mark("knock", child, m => m["code"] = 2);
        Assert.All(await tablet.HandInAsync(tablet.Mark("present", child), knock, knock), Taken);
        Assert.Equal(
            ["A knock is not taken back by a tap; an instructor corrects it on the laptop."],
            await tablet.HandInAsync(tablet.Mark("cleared", child, m => m["replaces"] = knock["id"]!.GetValue<Guid>())));
        await tablet.HandInAsync(tablet.Mark("present", child));
        await tablet.AskAsync();
        Assert.Equal("watches", tablet.ChildNow(child)["role"]!.GetValue<string>());
        using var db = hall.House.Engine.OpenDb();
        Assert.Equal(1, db.Knocks.Count(k => k.PersonId == child));
        Assert.Equal(1, db.StandDowns.Count(s => s.PersonId == child && s.LiftedOn == null && s.From == new DateOnly(2026, 11, 24)));
    }

    [Fact]
    public async Task A_tablet_whose_memory_was_wiped_counts_from_the_beginning_and_loses_no_mark()
    {
        await using var hall = await HallDoorOpen.StartAsync();
        using var tablet = await TabletAsync(hall, DutyKind.Instructor);
        Assert.All(await tablet.HandInAsync(tablet.Mark("present", tablet.Child(0)), tablet.Mark("present", tablet.Child(1))), Taken);
        Assert.All(await tablet.HandInAsync(tablet.Mark("present", tablet.Child(2), m => m["sequence"] = 1)), Taken);
        using var db = hall.House.Engine.OpenDb();
        Assert.Equal([1, 2, 3], db.Marks.Where(m => m.LessonId == tablet.LessonId).Select(m => m.Sequence).OrderBy(s => s));
        await tablet.AskAsync();
        Assert.Equal(3, tablet.Evening["join"]!["sequence"]!.GetValue<int>());
    }

    [Fact, Statement(86)]
    public async Task A_leaders_evening_holds_names_and_belts_and_no_mark_of_another()
    {
        await using var hall = await HallDoorOpen.StartAsync();
        using var adult = await TabletAsync(hall, DutyKind.HeadInstructor);
        using var leader = await TabletAsync(hall, DutyKind.JuniorLeader);
        var code = adult.Lesson["items"]!.AsArray().First(i => i!["kind"]!.GetValue<string>() == "fall")!["code"]!.GetValue<int>() | MarkCode.HeadTouched;
        var before = (await leader.AskAsync())["lessons"]![0]!["children"]!.ToJsonString();
        await adult.HandInAsync(adult.Mark("fall", adult.Child(6), m => m["code"] = code));
        Assert.Equal(Names(before), Names((await leader.AskAsync())["lessons"]![0]!["children"]!.ToJsonString()));
        static IEnumerable<string> Names(string children) => JsonNode.Parse(children)!.AsArray().Select(c => $"{c!["name"]} {c["belt"]} {c["mark"]}");
    }

    [Fact]
    public async Task A_hand_in_without_the_pages_token_changes_nothing()
    {
        await using var hall = await HallDoorOpen.StartAsync();
        using var tablet = await TabletAsync(hall, DutyKind.Instructor);
        tablet.Evening["token"] = "x";
        using var answer = await tablet.PostAsync(tablet.Mark("present", tablet.Child(0)));
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        using var db = hall.House.Engine.OpenDb();
        Assert.False(db.Marks.Any(m => m.LessonId == tablet.LessonId));
    }

    private static void Taken(string answer) => Assert.Equal("taken", answer);

    private static async Task<TabletOfTests> TabletAsync(HallDoorOpen hall, DutyKind duty)
    {
        var tablet = new TabletOfTests(await hall.TabletOfAsync(duty));
        await tablet.AskAsync();
        return tablet;
    }
}
