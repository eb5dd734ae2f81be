using System.Net;
using System.Text.RegularExpressions;
using Keikocho.App.Tests.Students;
using Keikocho.Store.Sealing;

namespace Keikocho.App.Tests.Pairs;

/// <summary>The lock and the sizes under it, on the laptop.</summary>
public sealed partial class SizesPagesTests
{
    [Fact]
    public async Task The_recovery_key_is_shown_once_and_both_open_the_lock()
    {
        await using var club = await PairsClub.StartAsync(withSizes: false, "Ana");
        Assert.Contains("Set a passphrase", await club.Club.TextAsync("/sizes"), StringComparison.Ordinal);
        foreach (var (first, again, says) in new[] { ("short", "short", "too short"), (PairsClub.Passphrase, "four plain words there", "not the same") })
        {
            using var refused = await club.Club.PostAsync("/lock", "/lock/make", ("passphrase", first), ("again", again));
            Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
            var text = await refused.Content.ReadAsStringAsync(SpringClub.Stop);
            Assert.Contains(says, text, StringComparison.Ordinal);
            Assert.DoesNotContain($"value=\"{first}\"", text, StringComparison.Ordinal);
        }

        using var made = await club.Club.PostAsync("/lock", "/lock/make", ("passphrase", PairsClub.Passphrase), ("again", PairsClub.Passphrase));
        Assert.Equal(HttpStatusCode.OK, made.StatusCode);
        var key = Key().Match(await made.Content.ReadAsStringAsync(SpringClub.Stop)).Value;
        Assert.NotNull(RecoveryKey.Read(key));
        Assert.DoesNotContain(key, await club.Club.TextAsync("/lock"), StringComparison.Ordinal);
        // On paper from the page that shows it, which posts it back: the program holds it nowhere, and prints nothing that is no key.
        using (var paper = await club.Club.PostAsync("/lock", "/lock/recovery-key.pdf", ("key", key)))
        {
            Assert.Equal("application/pdf", paper.Content.Headers.ContentType?.ToString());
            Assert.True(paper.Headers.CacheControl?.NoStore);
            using var document = UglyToad.PdfPig.PdfDocument.Open(await paper.Content.ReadAsByteArrayAsync(SpringClub.Stop));
            var words = document.GetPage(1).GetWords().Select(w => w.Text).ToHashSet();
            Assert.All(key.Split('-'), group => Assert.Contains(group, words));
        }

        using (var none = await club.Club.PostAsync("/lock", "/lock/recovery-key.pdf", ("key", key[..^1] + (key[^1] == 'A' ? 'B' : 'A')))) Assert.Equal(HttpStatusCode.BadRequest, none.StatusCode);
        using (await club.Club.PostAsync("/lock", "/lock/shut")) Assert.Contains("Open the lock", await club.Club.TextAsync("/lock"), StringComparison.Ordinal);
        using var wrong = await club.Club.PostAsync("/lock", "/lock/open", ("typed", "something else entirely"));
        Assert.Contains("That is not the passphrase", await wrong.Content.ReadAsStringAsync(SpringClub.Stop), StringComparison.Ordinal);
        using var soon = await club.Club.PostAsync("/lock", "/lock/open", ("typed", key));
        Assert.Contains("Too soon after a wrong one", await soon.Content.ReadAsStringAsync(SpringClub.Stop), StringComparison.Ordinal);
        club.Club.Time.Step(TimeSpan.FromSeconds(2));
        using var opened = await club.Club.PostAsync("/lock", "/lock/open", ("typed", key));
        Assert.Equal(HttpStatusCode.SeeOther, opened.StatusCode);
        Assert.Contains("The lock is open", await club.Club.TextAsync("/lock"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_slip_is_asked_about_before_anything_of_the_form_is_stored()
    {
        await using var club = await PairsClub.StartAsync(withSizes: false, "Ana", "Ben");
        await club.Club.House.Lock.MakeAsync(PairsClub.Passphrase, club.Club.Head, club.Club.Tablet, SpringClub.Stop);
        var (ana, ben) = ($"size-{club.Children["Ana"]:N}", $"size-{club.Children["Ben"]:N}");
        // 53 lb typed as kilograms at seven: 24 kg is meant.
        using var asked = await club.Club.PostAsync("/sizes", "/sizes/enter", ("programme", club.Club.Programme.ToString()), ("on", "2026-05-12"), (ana, "53"), (ben, "26,5"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, asked.StatusCode);
        var text = WebUtility.HtmlDecode(await asked.Content.ReadAsStringAsync(SpringClub.Stop));
        Assert.Contains("Perhaps 24 kg (pounds typed as kilograms)?", text, StringComparison.Ordinal);
        using (var db = club.Club.Db()) Assert.Empty(db.Sizes);

        // Looked at: but it was typed anew since, so it is asked about again.
        using var other = await club.Club.PostAsync("/sizes", "/sizes/enter", ("programme", club.Club.Programme.ToString()), ("on", "2026-05-12"), (ana, "54"), ($"sure-{club.Children["Ana"]:N}", "53"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, other.StatusCode);
        using var stored = await club.Club.PostAsync("/sizes", "/sizes/enter", ("programme", club.Club.Programme.ToString()), ("on", "2026-05-12"), (ana, "53"), (ben, "26,5"), ($"sure-{club.Children["Ana"]:N}", "53"));
        Assert.Equal(HttpStatusCode.SeeOther, stored.StatusCode);
        using (var db = club.Club.Db()) Assert.All(db.Sizes.ToList(), s => Assert.Equal(1, s.Grams.Bytes[0]));
        using (var db = club.Club.Db()) Assert.Equal(2, db.Sizes.Count());

        // The list has the days only; the size itself stands on the child's own page.
        var list = await club.Club.TextAsync("/sizes");
        Assert.Contains("12 May 2026", list, StringComparison.Ordinal);
        Assert.DoesNotContain("26.5", list, StringComparison.Ordinal);
        Assert.Contains("26.5 kg", await club.Club.TextAsync($"/sizes/{club.Children["Ben"]}"), StringComparison.Ordinal);
        Assert.DoesNotContain("26.5", await club.Club.TextAsync($"/students/{club.Children["Ben"]}"), StringComparison.Ordinal);
        using var shut = await club.Club.PostAsync("/lock", "/lock/shut");
        Assert.DoesNotContain("26.5", await club.Club.TextAsync($"/sizes/{club.Children["Ben"]}"), StringComparison.Ordinal);
        using var closed = await club.Club.PostAsync("/lock", "/sizes/enter", ("programme", club.Club.Programme.ToString()), ("on", "2026-05-12"), (ben, "27"));
        using (var db = club.Club.Db()) Assert.Equal(2, db.Sizes.Count());
    }

    [Fact]
    public async Task An_old_size_is_flagged()
    {
        await using var club = await PairsClub.StartAsync(withSizes: false, "Ana", "Ben");
        await club.Club.House.Lock.MakeAsync(PairsClub.Passphrase, club.Club.Head, club.Club.Tablet, SpringClub.Stop);
        using var stored = await club.Club.PostAsync("/sizes", "/sizes/enter", ("child", club.Children["Ana"].ToString()), ("on", "2026-01-10"), ($"size-{club.Children["Ana"]:N}", "23.5"));
        Assert.Equal(HttpStatusCode.SeeOther, stored.StatusCode);
        Assert.Contains("10 January 2026, more than 4 months ago: take it again", await club.Club.TextAsync("/sizes"), StringComparison.Ordinal);
        Assert.Contains("take it again, children grow", await club.Club.TextAsync("/pairs"), StringComparison.Ordinal);
    }

    [GeneratedRegex("([2-9A-HJ-NP-Z]{4}-){7}[2-9A-HJ-NP-Z]{4}")]
    private static partial Regex Key();
}
