using System.Net;
using Keikocho.App.Tests.Students;
using Keikocho.Store.People;
using Keikocho.Store.Sealing;

namespace Keikocho.App.Tests.CareNotes;

/// <summary>Care notes on the laptop, and where their words are not.</summary>
public sealed class CareNotesPagesTests
{
    private const string Passphrase = "four plain words here";
    private const string Words = "Peanuts: lips swell within minutes.";

    [Fact]
    public async Task Without_a_passphrase_the_page_says_so_and_offers_to_set_it_and_nothing_is_stored()
    {
        await using var club = await SpringClub.StartAsync();
        var child = await club.JoinAsync("Wren", "Hollis", SpringClub.FirstLesson);
        var page = await club.TextAsync($"/care/{child}");
        Assert.Contains("Care notes are kept only under the club’s lock, and there is none yet.", page, StringComparison.Ordinal);
        Assert.Contains("href=\"/lock\"", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<textarea", page, StringComparison.Ordinal);
        using var refused = await club.PostAsync("/lock", $"/care/{child}/enter", ("care-1", Words), ("asked", "2026-05-12"));
        Assert.Equal(HttpStatusCode.SeeOther, refused.StatusCode);
        using var db = club.Db();
        Assert.Empty(db.CareNotes);
        Assert.Empty(db.CareAsked);
    }

    [Fact]
    public async Task Notes_are_read_on_their_own_page_only_and_shut_with_the_lock()
    {
        await using var club = await SpringClub.StartAsync("2026-05-14T16:40");
        var child = await club.JoinAsync("Wren", "Hollis", SpringClub.FirstLesson);
        var other = await club.JoinAsync("Noor", "Hollis", SpringClub.FirstLesson);
        await club.House.Lock.MakeAsync(Passphrase, club.Head, club.Tablet, SpringClub.Stop);
        using (var stored = await club.PostAsync($"/care/{child}", $"/care/{child}/enter", ("care-1", Words), ("care-3", ""), ("asked", "2026-05-12")))
            Assert.Equal(HttpStatusCode.SeeOther, stored.StatusCode);
        Assert.Contains(Words, await club.TextAsync($"/care/{child}"), StringComparison.Ordinal);
        Assert.Contains("There are care notes; asked on 12 May 2026, ask again from 12 May 2027.", await club.TextAsync($"/students/{child}"), StringComparison.Ordinal);
        var list = await club.TextAsync("/care");
        Assert.Contains("1 to ask", list, StringComparison.Ordinal);
        foreach (var address in new[] { $"/students/{child}", "/students", "/care", "/tonight", "/register", "/cards", "/roll", "/lock", "/papers", "/knocks" })
        {
            var text = WebUtility.HtmlDecode(await (await club.Browser.GetAsync(address, SpringClub.Stop)).Content.ReadAsStringAsync(SpringClub.Stop));
            Assert.DoesNotContain("Peanuts", text, StringComparison.OrdinalIgnoreCase);
        }

        // A search for a word of it finds nobody.
        Assert.Contains("Nobody on this register is called", await club.TextAsync("/students?search=peanuts"), StringComparison.Ordinal);
        // Nothing to know is an answer too, and it is kept with its day.
        using (await club.PostAsync($"/care/{other}", $"/care/{other}/enter", ("care-1", ""), ("asked", "2026-05-13")))
            Assert.Contains("Nothing to know; asked on 13 May 2026", await club.TextAsync($"/care/{other}"), StringComparison.Ordinal);
        Assert.Contains("everybody was asked", await club.TextAsync("/care"), StringComparison.Ordinal);

        using var shut = await club.PostAsync("/lock", "/lock/shut");
        var closed = await club.TextAsync($"/care/{child}");
        Assert.DoesNotContain("Peanuts", closed, StringComparison.Ordinal);
        Assert.Contains("The club’s lock is shut", closed, StringComparison.Ordinal);
        using var refused = await club.PostAsync("/lock", $"/care/{child}/enter", ("care-1", "nothing now"), ("asked", "2026-05-14"));
        await club.House.Lock.OpenAsync(Passphrase, SpringClub.Stop);
        Assert.Contains(Words, await club.TextAsync($"/care/{child}"), StringComparison.Ordinal);

        using var gone = await club.PostAsync("/lock", $"/care/{child}/remove");
        Assert.DoesNotContain("Peanuts", await club.TextAsync($"/care/{child}"), StringComparison.Ordinal);
        using var db = club.Db();
        Assert.Empty(db.CareNotes);
    }

    [Fact]
    public async Task A_note_that_is_too_long_comes_back_with_what_was_typed_and_changes_nothing()
    {
        await using var club = await SpringClub.StartAsync();
        var child = await club.JoinAsync("Wren", "Hollis", SpringClub.FirstLesson);
        await club.House.Lock.MakeAsync(Passphrase, club.Head, club.Tablet, SpringClub.Stop);
        using var refused = await club.PostAsync($"/care/{child}", $"/care/{child}/enter", ("care-1", Words), ("care-2", new string('m', 401)), ("asked", "2031-01-01"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        var text = WebUtility.HtmlDecode(await refused.Content.ReadAsStringAsync(SpringClub.Stop));
        Assert.Contains("longer than 400 characters", text, StringComparison.Ordinal);
        Assert.Contains("1 January 2031 is still to come", text, StringComparison.Ordinal);
        Assert.Contains(Words, text, StringComparison.Ordinal);
        using var reading = club.Reading();
        Assert.False(CareNoteReader.Any(reading));
        Assert.Equal(HttpStatusCode.NotFound, (await club.Browser.GetAsync($"/care/{Guid.CreateVersion7()}", SpringClub.Stop)).StatusCode);
    }

    [Fact]
    public async Task After_a_year_the_family_is_asked_again()
    {
        await using var club = await SpringClub.StartAsync();
        var child = await club.JoinAsync("Wren", "Hollis", SpringClub.FirstLesson);
        await club.House.Lock.MakeAsync(Passphrase, club.Head, club.Tablet, SpringClub.Stop);
        using (await club.PostAsync($"/care/{child}", $"/care/{child}/enter", ("care-5", "Ring the family first."), ("asked", "2025-05-01")))
            Assert.Contains("asked on 1 May 2025, ask again.", await club.TextAsync($"/care/{child}"), StringComparison.Ordinal);
        Assert.Contains("1 to ask", await club.TextAsync("/care"), StringComparison.Ordinal);
        using var reading = club.Reading();
        Assert.Equal(LockState.Open, club.House.Lock.Now(reading).State);
    }
}
