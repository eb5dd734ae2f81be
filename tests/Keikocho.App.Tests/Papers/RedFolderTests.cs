using System.Net;
using System.Text;
using Keikocho.App.Tests.Students;
using Keikocho.Core.Safety;
using Keikocho.Store.People;
using UglyToad.PdfPig;

namespace Keikocho.App.Tests.Papers;

/// <summary>The red folder as the laptop prints it.</summary>
public sealed class RedFolderTests
{
    private const string Passphrase = "four plain words here";
    private const string Without = "Care notes are NOT in this folder";

    [Fact]
    public async Task It_has_the_place_the_numbers_the_contacts_and_the_care_notes_of_the_evenings_children()
    {
        await using var club = await SpringClub.StartAsync("2026-05-14T15:00");
        var wren = await club.JoinAsync("Wren", "Hollis", SpringClub.FirstLesson, "07700 900111");
        await club.JoinAsync("Noor", "Adair", SpringClub.FirstLesson, "07700 900112");
        await EnterAsync(club, wren, "Peanuts: lips swell.");
        await club.House.People.SaveContactAsync(new ContactDetails(Guid.CreateVersion7(), wren, "Rolf Hollis", "father", null, true), club.Head, club.Tablet, SpringClub.Stop);
        Guid hall;
        using (var db = club.Db()) hall = db.Halls.Single().Id;
        var key = $"place-{hall:N}-";
        using (await club.PostAsync("/club", "/club/place", ("hall", hall.ToString()), ($"{key}address", "4 Mill Lane"), ($"{key}entrance", "Blue gate"), ($"{key}hospital", "St Bride’s")))
        using (await club.PostAsync("/club", "/club/welfare", ("welfare", "Jo Farrow 01632 960100\r\nCounty line 01632 960101")))
        {
            var (text, answer) = await PdfAsync(club, "/papers/red-folder.pdf");
            Assert.All(
                ["Thursday 14 May 2026, Juniors at 17:30", "4 Mill Lane", "Blue gate", "St Bride’s", "Jo Farrow 01632 960100", "County line 01632 960101", "07700 900111", "07700 900112", "Allergies: Peanuts: lips swell.",
                    "Rolf Hollis, father check with instructor", "Nobody has asked the family about care yet.", "Printed 14 May 2026. Shred by 18 June 2026.", "1 Wren"],
                part => Assert.Contains(part, text, StringComparison.Ordinal));
            Assert.DoesNotContain(Without, text, StringComparison.Ordinal);
            Assert.Equal("inline; filename=\"red-folder-2026-05-14.pdf\"", answer.Content.Headers.ContentDisposition?.ToString());
            Assert.True(answer.Headers.CacheControl?.NoStore);
        }

        var (group, _) = await PdfAsync(club, $"/papers/red-folder.pdf?for=group-{club.Programme:D}&paper=letter");
        Assert.Contains("Juniors, the whole group", group, StringComparison.Ordinal);
        Assert.Contains("Peanuts", group, StringComparison.Ordinal);
    }

    [Fact]
    public async Task While_the_lock_is_shut_it_is_printed_only_where_somebody_says_that_care_notes_are_left_out()
    {
        await using var club = await SpringClub.StartAsync("2026-05-14T15:00");
        var wren = await club.JoinAsync("Wren", "Hollis", SpringClub.FirstLesson);
        // Without any care note nobody needs a lock.
        Assert.DoesNotContain(Without, (await PdfAsync(club, "/papers/red-folder.pdf")).Text, StringComparison.Ordinal);
        await EnterAsync(club, wren, "Peanuts: lips swell.");
        club.House.Lock.Shut();
        using var refused = await club.Browser.GetAsync("/papers/red-folder.pdf", SpringClub.Stop);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        var html = WebUtility.HtmlDecode(await refused.Content.ReadAsStringAsync(SpringClub.Stop));
        Assert.Contains("<a href=\"#folder-without\">There are care notes, and the club’s lock is shut.", html, StringComparison.Ordinal);
        Assert.Contains("name=\"withoutCare\"", html, StringComparison.Ordinal);
        var (text, _) = await PdfAsync(club, "/papers/red-folder.pdf?withoutCare=yes");
        Assert.StartsWith(Without, text.TrimStart(), StringComparison.Ordinal);
        Assert.Contains("There are care notes. They are on the laptop, under its lock.", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Peanuts", text, StringComparison.Ordinal);
        await club.House.Lock.OpenAsync(Passphrase, SpringClub.Stop);
        Assert.Contains("Peanuts", (await PdfAsync(club, "/papers/red-folder.pdf")).Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("for=tonight", "folder-for")]
    [InlineData("for=evening-01a03524-d028-7f56-b029-6a708f6b0604", "folder-for")]
    [InlineData("paper=a5", "folder-paper")]
    public async Task A_folder_that_cannot_be_made_is_a_sentence_on_the_page(string query, string field)
    {
        await using var club = await SpringClub.StartAsync();
        using var refused = await club.Browser.GetAsync($"/papers/red-folder.pdf?{query}", SpringClub.Stop);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Contains($"<a href=\"#{field}\">", await refused.Content.ReadAsStringAsync(SpringClub.Stop), StringComparison.Ordinal);
    }

    private static async Task EnterAsync(SpringClub club, Guid child, string words)
    {
        using var reading = club.Reading();
        await club.House.Lock.MakeAsync(Passphrase, club.Head, club.Tablet, SpringClub.Stop);
        Assert.True(await club.House.CareNotes.EnterAsync(child, [new(CareHeading.Allergies, words)], club.Today, club.House.Lock.Now(reading).Key!, club.Head, club.Tablet, SpringClub.Stop));
    }

    private static async Task<(string Text, HttpResponseMessage Answer)> PdfAsync(SpringClub club, string address)
    {
        var answer = await club.Browser.GetAsync(address, SpringClub.Stop);
        Assert.Equal("application/pdf", answer.Content.Headers.ContentType?.ToString());
        using var document = PdfDocument.Open(await answer.Content.ReadAsByteArrayAsync(SpringClub.Stop));
        var text = new StringBuilder();
        foreach (var page in document.GetPages()) text.AppendJoin(' ', page.GetWords().Select(w => w.Text)).Append(' ');
        return (text.ToString(), answer);
    }
}
