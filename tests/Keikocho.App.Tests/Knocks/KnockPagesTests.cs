using System.Net;
using Keikocho.App.Tests.Sightings;
using Keikocho.App.Tests.Students;
using Keikocho.Core.Evening;
using Keikocho.Store.People;
using Keikocho.Store.Safety;
using Keikocho.Testing;

namespace Keikocho.App.Tests.Knocks;

/// <summary>A knock on the laptop: two taps from Tonight, the slip, the record, the dates, the lifting.</summary>
public sealed class KnockPagesTests
{
    private static readonly DateOnly Evening = new(2026, 5, 14);

    private static async Task<(SpringClub Club, Guid Child, string Page)> KnockAsync(string utc = "2026-05-14T17:00")
    {
        var club = await SpringClub.StartAsync(utc);
        var child = await club.JoinAsync("Finn", "Marsh", SpringClub.FirstLesson);
        await club.MarkAsync(child, Evening, MarkKind.Present);
        var lesson = club.Lesson(Evening).Id;
        var tonight = await club.TextAsync($"/tonight?lesson={lesson:D}");
        Assert.Contains($"href=\"/knocks?lesson={lesson:D}\"", tonight, StringComparison.Ordinal);
        using var answer = await club.PostAsync($"/knocks?lesson={lesson:D}", "/knocks/mark", ("lesson", lesson.ToString("D")), ("child", child.ToString("D")), ("activity", "2"));
        Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
        return (club, child, answer.Headers.Location!.ToString());
    }

    private static string Lift(Guid child) => $"/students/{child}/lift";

    private static async Task<string> LiftAsync(SpringClub club, Guid child, Guid standDown, string on, bool isTaken)
    {
        (string, string)[] fields = [("form", "lift"), ("liftWhich", standDown.ToString("D")), ("liftBy", club.Head.ToString("D")), ("liftOn", on), ("liftWhy", "letter seen")];
        return isTaken ? await club.TakenAsync($"/students/{child}", Lift(child), fields) : await club.RefusedAsync($"/students/{child}", Lift(child), fields);
    }

    [Fact, Statement(24)]
    public async Task A_name_takes_the_child_off_the_mat_and_no_tap_of_the_register_brings_it_back()
    {
        var (club, child, page) = await KnockAsync();
        await using var _ = club;
        var words = await club.WordsAsync(page);
        Assert.Contains("Finn is off for tonight. First aid first.", words, StringComparison.Ordinal);
        Assert.Contains("What was going on: game.", words, StringComparison.Ordinal);
        var lesson = club.Lesson(Evening).Id;
        var tonight = await club.WordsAsync($"/tonight?lesson={lesson:D}");
        Assert.Contains("Finn Watches tonight.", tonight, StringComparison.Ordinal);
        await club.TakenAsync($"/register?lesson={lesson:D}", "/register/undo", ("lesson", lesson.ToString("D")));
        await club.TakenAsync($"/register?lesson={lesson:D}", "/register/mark", ("lesson", lesson.ToString("D")), ("present", child.ToString("D")));
        Assert.Contains("Finn Watches tonight.", await club.WordsAsync($"/tonight?lesson={lesson:D}"), StringComparison.Ordinal);
        using var db = club.Db();
        Assert.Equal(1, db.Knocks.Count(k => k.PersonId == child && k.Activity == 2));
    }

    [Fact]
    public async Task First_aid_stands_before_any_form()
    {
        var (club, _, page) = await KnockAsync();
        await using var __ = club;
        foreach (var address in new[] { page, "/knocks", $"/knocks?lesson={club.Lesson(Evening).Id:D}" })
        {
            var text = await club.TextAsync(address);
            var forms = text.IndexOf("<form", text.IndexOf("<main", StringComparison.Ordinal), StringComparison.Ordinal);
            Assert.InRange(text.IndexOf("First aid first", text.IndexOf("<h1", StringComparison.Ordinal), StringComparison.Ordinal), 0, forms < 0 ? int.MaxValue : forms);
            Assert.Contains("Ring your country’s emergency number at once with any of these:", text, StringComparison.Ordinal);
        }

        await club.SetAsync("knock.emergencyNumber", "999 or 112");
        Assert.Contains("Ring 999 or 112 at once", await club.WordsAsync(page), StringComparison.Ordinal);
    }

    [Theory, Statement(25)]
    [InlineData("hand", "Slip handed over to his mother")]
    [InlineData("phone", "Told by phone his mother")]
    public async Task The_slip_is_ready_and_waits_on_Tonight_until_it_was_handed_over_or_told_by_phone(string how, string line)
    {
        var (club, _, page) = await KnockAsync();
        await using var __ = club;
        using (var pdf = await club.Browser.GetAsync($"{page}/slip.pdf", SpringClub.Stop))
        {
            Assert.Equal("application/pdf", pdf.Content.Headers.ContentType?.MediaType);
            Assert.DoesNotContain("Finn", pdf.Content.Headers.ContentDisposition?.ToString() ?? "", StringComparison.Ordinal);
        }

        var tonight = $"/tonight?lesson={club.Lesson(Evening).Id:D}";
        Assert.Contains("A slip for Finn waits to be handed over.", await club.WordsAsync(tonight), StringComparison.Ordinal);
        Assert.Contains("Write who took the slip, or who was told.", await club.RefusedAsync(page, $"{page}/told", ("how", how), ("toldWhom", " ")), StringComparison.Ordinal);
        Assert.Contains(line, await club.TakenAsync(page, $"{page}/told", ("how", how), ("toldWhom", "his mother")), StringComparison.Ordinal);
        Assert.DoesNotContain("waits to be handed over", await club.WordsAsync(tonight), StringComparison.Ordinal);
        using var reading = club.Reading();
        Assert.Empty(KnockSlips.OpenOf(reading, [club.Lesson(Evening).Id]));
    }

    [Fact, Statement(30)]
    public async Task What_is_added_to_a_record_stands_below_with_name_and_time()
    {
        var (club, _, page) = await KnockAsync();
        await using var __ = club;
        await club.TakenAsync(page, $"{page}/line", ("lineKind", "seen"), ("lineWords", "right side of the head"));
        var nell = await club.AddAdultAsync("Nell", "Dyer", DutyKind.Instructor);
        await club.ActAsync(nell);
        club.Time.Step(TimeSpan.FromMinutes(30));
        var words = await club.TakenAsync(page, $"{page}/line", ("lineKind", "added"), ("lineWords", "it was the left side"));
        var (first, second) = (words.IndexOf("Seen right side of the head", StringComparison.Ordinal), words.IndexOf("Added it was the left side", StringComparison.Ordinal));
        Assert.InRange(first, 0, second);
        Assert.Contains("14 May 2026, 18:30, Nell Dyer", words, StringComparison.Ordinal);
        Assert.Contains("Write what the line says.", await club.RefusedAsync(page, $"{page}/line", ("lineKind", "added"), ("lineWords", "")), StringComparison.Ordinal);
        using var pdf = await club.Browser.GetAsync($"{page}/record.pdf", SpringClub.Stop);
        Assert.Equal("application/pdf", pdf.Content.Headers.ContentType?.MediaType);
    }

    [Fact, Statement(28)]
    public async Task The_stand_down_is_not_lifted_before_the_day_and_without_advice_and_the_page_says_what_is_missing()
    {
        var (club, child, page) = await KnockAsync();
        await using var __ = club;
        Guid standDown;
        using (var db = club.Db()) standDown = db.StandDowns.Single().Id;
        Assert.Contains("No first day without any symptom since the knock of 14 May 2026 is recorded", await LiftAsync(club, child, standDown, "2026-05-14", false), StringComparison.Ordinal);
        club.Time.Step(TimeSpan.FromDays(6));
        var words = await club.TakenAsync(page, $"{page}/free", ("freeOn", "2026-05-20"));
        Assert.Contains("Falls and contact earliest 4 June 2026", words, StringComparison.Ordinal);
        Assert.Contains("Test on 30 May 2026: words only, no falls, or another day", words, StringComparison.Ordinal);
        club.Time.Step(TimeSpan.FromDays(20));
        Assert.Contains("No written advice that counts is recorded", await LiftAsync(club, child, standDown, "2026-06-09", false), StringComparison.Ordinal);
        await club.TakenAsync(page, $"{page}/advice", ("adviceOn", "2026-06-08"), ("adviceWhose", "Dr Hale"));
        Assert.Contains("Nothing is missing in the record. The stand-down stands until a named adult lifts it", await club.WordsAsync(page), StringComparison.Ordinal);
        Assert.Contains("a day before the earliest day", await LiftAsync(club, child, standDown, "2026-06-02", false), StringComparison.Ordinal);
        Assert.Contains("Lifted.", await LiftAsync(club, child, standDown, "2026-06-09", true), StringComparison.Ordinal);
        Assert.Contains("Not shut by this knock any more: ", await club.WordsAsync(page), StringComparison.Ordinal);
    }

    [Fact, Statement(27)]
    public async Task Symptoms_again_shut_everything_and_send_to_a_doctor()
    {
        var (club, _, page) = await KnockAsync();
        await using var __ = club;
        club.Time.Step(TimeSpan.FromDays(8));
        await club.TakenAsync(page, $"{page}/free", ("freeOn", "2026-05-17"));
        var words = await club.TakenAsync(page, $"{page}/again", ("againOn", "2026-05-21"));
        Assert.Contains("See a doctor: symptoms were there again on 21 May 2026.", words, StringComparison.Ordinal);
        Assert.Contains("no earliest date yet", words, StringComparison.Ordinal);
        Assert.Contains("11 May 2026 is not between the knock of 14 May 2026 and today.", await club.RefusedAsync(page, $"{page}/again", ("againOn", "2026-05-11")), StringComparison.Ordinal);
        Assert.Contains("is no date", await club.RefusedAsync(page, $"{page}/free", ("freeOn", "soon")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task No_contact_takes_the_place_of_off_the_mat_when_drills_come_back()
    {
        var (club, child, page) = await KnockAsync();
        await using var __ = club;
        Assert.DoesNotContain("No contact, in place of off the mat", await club.WordsAsync(page), StringComparison.Ordinal);
        club.Time.Step(TimeSpan.FromDays(8));
        await club.TakenAsync(page, $"{page}/free", ("freeOn", "2026-05-17"));
        await club.TakenAsync(page, $"{page}/advice", ("adviceOn", "2026-05-20"), ("adviceWhose", "Dr Hale"));
        Assert.Contains("Finn: no contact, in place of off the mat.", await club.TakenAsync(page, $"{page}/ease"), StringComparison.Ordinal);
        using var db = club.Db();
        Assert.Equal(2, db.StandDowns.Count(s => s.PersonId == child));
        Assert.Single(db.StandDowns.Where(s => s.LiftedOn == null));
    }

    [Fact]
    public async Task A_knock_entered_for_the_wrong_child_is_put_right_by_an_instructor()
    {
        var (club, child, page) = await KnockAsync();
        await using var __ = club;
        await club.ActAsync(await club.AddAdultAsync("Nell", "Dyer", DutyKind.Assistant));
        Assert.Contains("Only an instructor says that.", await club.TakenAsync(page, $"{page}/wrong", ("wrongWhy", "he was not on the mat")), StringComparison.Ordinal);
        await club.ActAsync(club.Head);
        Assert.Contains("This knock counts no more.", await club.TakenAsync(page, $"{page}/wrong", ("wrongWhy", "he was not on the mat")), StringComparison.Ordinal);
        Guid standDown;
        using (var db = club.Db()) standDown = db.StandDowns.Single().Id;
        Assert.Contains("Lifted.", await LiftAsync(club, child, standDown, "2026-05-14", true), StringComparison.Ordinal);
        using var slip = await club.Browser.GetAsync($"{page}/slip.pdf", SpringClub.Stop);
        Assert.Equal(HttpStatusCode.NotFound, slip.StatusCode);
    }

    [Fact]
    public async Task The_childs_page_leads_to_its_knocks_and_an_unknown_knock_is_not_found()
    {
        var (club, child, page) = await KnockAsync();
        await using var __ = club;
        Assert.Contains($"href=\"{page}\"", await club.TextAsync($"/students/{child}"), StringComparison.Ordinal);
        Assert.Contains($"href=\"{page}\"", await club.TextAsync($"/knocks?lesson={club.Lesson(Evening).Id:D}"), StringComparison.Ordinal);
        using var none = await club.Browser.GetAsync($"/knocks/{Guid.CreateVersion7():D}", SpringClub.Stop);
        Assert.Equal(HttpStatusCode.NotFound, none.StatusCode);
    }
}
