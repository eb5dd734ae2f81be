using Keikocho.App.Tests.Sightings;
using Keikocho.App.Tests.Students;
using Keikocho.Core.Safety;
using Keikocho.Store.Safety;
using Keikocho.Testing;

namespace Keikocho.App.Tests.PromotionTests;

public sealed class TestAfterKnockTests
{
    [Fact, Statement(29)]
    public async Task A_test_on_day_18_after_a_knock_is_words_only_or_another_day_on_the_list_and_on_the_childs_pages()
    {
        await using var club = await SpringClub.StartAsync();
        await club.PublishAsync();
        var ada = await club.AlwaysThereAsync("Ada");
        var knock = Guid.CreateVersion7(club.Time.GetUtcNow());
        Assert.Equal(KnockOutcome.Stored, await club.House.Knocks.MarkAsync(new NewKnock(knock, club.Lesson(5, 12).Id, ada, KnockActivity.Game), club.Today, club.Head, club.Tablet, SpringClub.Stop));
        const string said = "ords only on 30 May 2026, or another day: the next test is on 25 July 2026";
        var list = await club.WordsAsync(club.Address());
        Assert.Contains(said, list, StringComparison.Ordinal);
        // The list says no reason.
        Assert.DoesNotContain("knock", list, StringComparison.OrdinalIgnoreCase);
        const string why = "Saturday 30 May 2026 is day 18 after the knock of 12 May 2026: words only on that day, no falls and no contact, or the child is tested on another day.";
        Assert.Contains(why, await club.WordsAsync($"{club.Address()}/children/{ada:D}"), StringComparison.Ordinal);
        Assert.Contains(why, await club.WordsAsync($"/students/{ada:D}"), StringComparison.Ordinal);

        // What the family says counts at once, on a list that is kept in memory.
        await AddAsync(club, knock, KnockLine.FreeFrom, "2026-05-13");
        Assert.Contains("The earliest day of a test is 2 June 2026, and written advice is still to be recorded. The next test is on 25 July 2026.", await club.WordsAsync($"{club.Address()}/children/{ada:D}"), StringComparison.Ordinal);
        await AddAsync(club, knock, KnockLine.Advice, "2026-05-14");
        Assert.Contains("The earliest day of a test is 2 June 2026. The next test is on 25 July 2026.", await club.WordsAsync($"{club.Address()}/children/{ada:D}"), StringComparison.Ordinal);
    }

    private static async Task AddAsync(SpringClub club, Guid knock, KnockLine kind, string on) =>
        Assert.Equal(KnockOutcome.Stored, await club.House.Knocks.AddAsync(
            new NewKnockLine(Guid.CreateVersion7(), knock, kind, DateOnly.Parse(on, System.Globalization.CultureInfo.InvariantCulture), "Dr Hale"), club.Today, club.Head, club.Tablet, SpringClub.Stop));
}
