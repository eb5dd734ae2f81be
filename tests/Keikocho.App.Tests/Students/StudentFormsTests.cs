using System.Net;
using Keikocho.Core.Kernel;
using Keikocho.Store.Promotion;

namespace Keikocho.App.Tests.Students;

/// <summary>What the forms on one child's page take, refuse and keep.</summary>
public sealed class StudentFormsTests
{
    [Fact]
    public async Task A_birth_date_on_29_February_is_taken()
    {
        await using var club = await SpringClub.StartAsync();
        var child = await club.JoinAsync("Wren", "Hollis", SpringClub.FirstLesson);
        Assert.Contains("birth date not known", await club.WordsAsync($"/students/{child}"), StringComparison.Ordinal);
        await TakenAsync(club, child, "details", ("given", "Wren"), ("family", "Hollis"), ("called", "Wrennie"), ("born", "2016-02-29"));
        var page = await club.WordsAsync($"/students/{child}");
        Assert.Contains("10 years old", page, StringComparison.Ordinal);
        Assert.Contains("Called Wrennie", page, StringComparison.Ordinal);
        Assert.Contains(">Wrennie</a>", await club.TextAsync("/students"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("given", "", "The first name is missing. Type what the child is called.")]
    [InlineData("born", "2027-01-02", "2 January 2027 is still to come. Check the year.")]
    [InlineData("born", "2015-02-29", "“2015-02-29” is not a day of the calendar.")]
    [InlineData("born", "1816-02-29", "29 February 1816 is more than 110 years ago. Check the year.")]
    public async Task Details_that_cannot_be_are_refused_and_what_was_typed_stands(string field, string typed, string sentence)
    {
        await using var club = await SpringClub.StartAsync();
        var child = await club.JoinAsync("Wren", "Hollis", SpringClub.FirstLesson);
        (string, string)[] fields = [("given", field == "given" ? typed : "Robin"), ("family", "Holt-Łąka"), ("called", "Rob"), ("born", field == "born" ? typed : "")];
        var html = await RefusedAsync(club, child, "details", fields);
        Assert.Contains(sentence, html, StringComparison.Ordinal);
        Assert.Contains("value=\"Holt-Łąka\"", html, StringComparison.Ordinal);
        Assert.Contains("value=\"Rob\"", html, StringComparison.Ordinal);
        if (typed.Length > 0) Assert.Contains($"value=\"{typed}\"", html, StringComparison.Ordinal);
        Assert.Contains("<details open", html, StringComparison.Ordinal);
        Assert.Contains("Wren Hollis", await club.WordsAsync($"/students/{child}"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_contact_is_added_once_changed_and_may_be_barred_without_a_reason()
    {
        await using var club = await SpringClub.StartAsync();
        var child = await club.JoinAsync("Wren", "Hollis", SpringClub.FirstLesson);
        var id = Guid.CreateVersion7(club.Time.GetUtcNow()).ToString("D");
        (string, string)[] fields = [("contact", id), ("contactName", "Mara Hollis"), ("relation", "mother"), ("phone", "01632 960001")];
        await TakenAsync(club, child, "contact", fields);
        await TakenAsync(club, child, "contact", fields);
        var page = await club.WordsAsync($"/students/{child}");
        Assert.Contains("Mara Hollis , mother 01632 960001", page, StringComparison.Ordinal);
        Assert.DoesNotContain("may not collect", page, StringComparison.Ordinal);

        Assert.Contains("value=\"Mara Hollis\"", await club.TextAsync($"/students/{child}?contact={id}"), StringComparison.Ordinal);
        await TakenAsync(club, child, "contact", ("contact", id), ("contactName", "Mara Hollis"), ("relation", "mother"), ("phone", "01632 960002"), ("barred", "yes"));
        page = await club.WordsAsync($"/students/{child}");
        Assert.Contains("01632 960002 may not collect: check with instructor", page, StringComparison.Ordinal);
        using var db = club.Db();
        Assert.Equal(2, db.Contacts.Count());

        var html = await RefusedAsync(club, child, "contact", ("contact", id), ("contactName", ""), ("relation", "aunt"), ("phone", ""));
        Assert.Contains("A contact needs a name or a telephone number.", html, StringComparison.Ordinal);
        Assert.Contains("value=\"aunt\"", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Another_childs_contact_is_not_changed()
    {
        await using var club = await SpringClub.StartAsync();
        var child = await club.JoinAsync("Wren", "Hollis", SpringClub.FirstLesson);
        var other = await club.JoinAsync("Bram", "Oke", SpringClub.FirstLesson, "01632 960009");
        Guid contact;
        using (var db = club.Db()) contact = db.Contacts.Single(c => c.PersonId == other).Id;
        await TakenAsync(club, child, "contact", ("contact", contact.ToString("D")), ("contactName", "Nobody"));
        Assert.Contains("01632 960009", await club.WordsAsync($"/students/{other}"), StringComparison.Ordinal);
        Assert.DoesNotContain("Nobody", await club.WordsAsync($"/students/{other}"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_end_changes_from_today_on_or_at_one_lesson_only()
    {
        await using var club = await SpringClub.StartAsync();
        var child = await club.JoinAsync("Wren", "Hollis", SpringClub.FirstLesson);
        await TakenAsync(club, child, "end", ("end", "main"), ("lesson", club.Lesson(5, 19).Id.ToString("D")));
        Assert.Contains("newcomer, beginners’ end", await club.WordsAsync($"/students/{child}"), StringComparison.Ordinal);
        await TakenAsync(club, child, "end", ("end", "main"));
        Assert.Contains("newcomer, main group", await club.WordsAsync($"/students/{child}"), StringComparison.Ordinal);
        using var db = club.Db();
        Assert.Equal([null, club.Lesson(5, 19).Id], db.Crossings.Select(c => c.LessonId).ToList().Order());
        Assert.All(db.Crossings.ToList(), c => Assert.Equal((MatEnd.Main, club.Head), (c.End, c.ById)));
    }

    [Fact]
    public async Task A_rank_is_recorded_with_its_day_and_a_wrong_one_replaced()
    {
        await using var club = await SpringClub.StartAsync();
        var child = await club.JoinAsync("Wren", "Hollis", SpringClub.FirstLesson);
        await TakenAsync(club, child, "rank", ("rank", club.Ranks[2].Id.ToString("D")), ("rankOn", "2026-05-02"), ("source", "here"));
        var page = await club.WordsAsync($"/students/{child}");
        Assert.Contains("Wears Yellow", page, StringComparison.Ordinal);
        Assert.Contains("Counted from the promotion on Saturday 2 May 2026", page, StringComparison.Ordinal);
        Assert.Contains("White 3 March 2026, joined", page, StringComparison.Ordinal);
        Assert.Contains("Yellow 2 May 2026, given here, recorded by Ruth Aldersey", page, StringComparison.Ordinal);
        Guid wrong;
        using (var db = club.Db()) wrong = db.Awards.Single().Id;

        await TakenAsync(club, child, "rank", ("rank", club.Ranks[1].Id.ToString("D")), ("rankOn", "2026-04-04"), ("source", "here"), ("replaces", wrong.ToString("D")));
        page = await club.WordsAsync($"/students/{child}");
        Assert.Contains("Wears White, one red tip", page, StringComparison.Ordinal);
        Assert.Contains("Counted from the promotion on Saturday 4 April 2026", page, StringComparison.Ordinal);
        using (var db = club.Db()) Assert.Equal(2, db.Awards.Count(a => a.Source == AwardSource.Promoted));
    }

    [Theory]
    [InlineData("2026-05-15", "15 May 2026 is still to come.")]
    [InlineData("", "The day is missing.")]
    [InlineData("2023-02-29", "“2023-02-29” is not a day of the calendar.")]
    public async Task A_rank_without_a_possible_day_is_refused_and_the_choice_stands(string on, string sentence)
    {
        await using var club = await SpringClub.StartAsync();
        var child = await club.JoinAsync("Wren", "Hollis", SpringClub.FirstLesson);
        var rank = club.Ranks[1].Id.ToString("D");
        var html = await RefusedAsync(club, child, "rank", ("rank", rank), ("rankOn", on), ("source", "elsewhere"));
        Assert.Contains(sentence, html, StringComparison.Ordinal);
        Assert.Matches($"value=\"{rank}\" selected", html);
        Assert.Matches("value=\"elsewhere\" checked", html);
        using var db = club.Db();
        Assert.False(db.Awards.Any());
    }

    [Fact]
    public async Task A_child_goes_off_the_register_after_a_day_and_comes_back_with_every_mark()
    {
        await using var club = await SpringClub.StartAsync();
        var child = await club.JoinOfTheExampleAsync();
        var html = await RefusedAsync(club, child, "register", ("last", "2026-03-01"));
        Assert.Contains("1 March 2026 is before the first day on this register, 3 March 2026.", html, StringComparison.Ordinal);
        Assert.Contains("value=\"2026-03-01\"", html, StringComparison.Ordinal);
        await TakenAsync(club, child, "register", ("last", "2026-05-12"));
        Assert.Contains("Former children 1, by last day Wren Hollis to 12 May 2026", await club.WordsAsync("/students"), StringComparison.Ordinal);
        Assert.Contains("Put back on this register", await club.WordsAsync($"/students/{child}"), StringComparison.Ordinal);
        await TakenAsync(club, child, "register", ("back", "on"));
        Assert.Contains("Wren 2 of the 4 lessons left 12 of 17", await club.WordsAsync("/students"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Nothing_is_changed_before_somebody_says_who_holds_the_device()
    {
        await using var club = await SpringClub.StartAsync();
        var child = await club.JoinAsync("Wren", "Hollis", SpringClub.FirstLesson);
        await club.House.Writer.RunAsync(s => { foreach (var device in s.Db.Devices) device.ActingAdultId = null; s.Db.SaveChanges(); return true; }, SpringClub.Stop);
        var page = await club.WordsAsync($"/students/{child}");
        Assert.Contains("Who holds this device?", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Record a rank", page, StringComparison.Ordinal);
        using var answer = await club.PostAsync($"/students/{child}", $"/students/{child}/details", ("given", "Robin"));
        Assert.StartsWith("/acting", answer.Headers.Location?.ToString(), StringComparison.Ordinal);
        Assert.Contains("Wren Hollis", await club.WordsAsync($"/students/{child}"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Siblings_registration_and_photo_consent_are_on_the_page()
    {
        await using var club = await SpringClub.StartAsync();
        var child = await club.JoinAsync("Wren", "Hollis", SpringClub.FirstLesson);
        var sibling = await club.JoinAsync("Bram", "Hollis", SpringClub.FirstLesson);
        var words = await club.WordsAsync($"/students/{child}");
        Assert.Contains("No registration with the national body is recorded.", words, StringComparison.Ordinal);
        Assert.Contains("Photographs: nobody was asked yet.", words, StringComparison.Ordinal);
        await club.House.Writer.RunAsync(s =>
        {
            var family = new Keikocho.Store.People.FamilyRow { Club = s.Club, Id = s.NewId() };
            s.Db.Families.Add(family);
            s.Db.SaveChanges();
            foreach (var member in new[] { child, sibling })
                s.Db.FamilyMembers.Add(new Keikocho.Store.People.FamilyMemberRow { Club = s.Club, FamilyId = family.Id, PersonId = member });
            s.Db.Registrations.Add(new Keikocho.Store.People.RegistrationRow { Club = s.Club, Id = s.NewId(), PersonId = child, Expires = new DateOnly(2026, 5, 1), MadeAt = s.Now });
            s.Db.Consents.Add(new Keikocho.Store.People.ConsentRow { Club = s.Club, Id = s.NewId(), PersonId = child, Use = Keikocho.Store.People.ConsentUse.Photo, Given = false, On = new DateOnly(2026, 3, 3), MadeAt = s.Now });
            s.Db.SaveChanges();
            return true;
        }, SpringClub.Stop);
        var html = await club.TextAsync($"/students/{child}");
        Assert.Contains($"<a href=\"/students/{sibling}\">Bram Hollis</a>", html, StringComparison.Ordinal);
        Assert.Contains("Registration ended on 1 May 2026.", html, StringComparison.Ordinal);
        Assert.Contains("No photographs, said on 3 March 2026.", html, StringComparison.Ordinal);
    }

    private static async Task TakenAsync(SpringClub club, Guid child, string form, params (string, string)[] fields)
    {
        using var answer = await club.PostAsync($"/students/{child}", $"/students/{child}/{form}", [("programme", club.Programme.ToString("D")), .. fields]);
        Assert.Equal((HttpStatusCode.SeeOther, $"/students/{child}?programme={club.Programme}"), (answer.StatusCode, answer.Headers.Location?.ToString()));
    }

    private static async Task<string> RefusedAsync(SpringClub club, Guid child, string form, params (string, string)[] fields)
    {
        using var answer = await club.PostAsync($"/students/{child}", $"/students/{child}/{form}", [("programme", club.Programme.ToString("D")), .. fields]);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        return WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(SpringClub.Stop));
    }
}
