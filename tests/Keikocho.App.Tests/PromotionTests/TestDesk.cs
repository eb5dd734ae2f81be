using Keikocho.App.Sightings;
using Keikocho.App.Tests.Sightings;
using Keikocho.App.Tests.Students;
using Keikocho.Core.Evening;
using Keikocho.Store.Marks;

namespace Keikocho.App.Tests.PromotionTests;

/// <summary>The club of the clock's example before its test on 30 May 2026.</summary>
internal static class TestDesk
{
    /// <summary>The address of the test on 30 May.</summary>
    public static string Address(this SpringClub club) => $"/promotion-tests/{club.TestId():D}";

    public static Guid TestId(this SpringClub club)
    {
        using var db = club.Db();
        return db.PromotionTests.Single(t => t.Date == SpringClub.Test).Id;
    }

    /// <summary>A child who was there on every evening.</summary>
    public static async Task<Guid> AlwaysThereAsync(this SpringClub club, string given, string family = "Hollis")
    {
        var child = await club.JoinAsync(given, family, SpringClub.FirstLesson);
        foreach (var day in club.HeldAfter(SpringClub.FirstLesson)) await club.MarkAsync(child, day, MarkKind.Present);
        return child;
    }

    /// <summary>Items seen on one evening.</summary>
    public static async Task SeenAsync(this SpringClub club, Guid child, int month, int day, SeenWord word, params string[] items)
    {
        SeenTap[] taps = [.. items.Select(i => SeenTap.OfItem(Guid.CreateVersion7(club.Time.GetUtcNow()), club.Lesson(month, day).Id, child, club.Item(i), word, i == "stop"))];
        Assert.Equal(EvidenceOutcome.Stored, (await club.House.Sightings.AddAsync(taps, club.Today, club.Head, club.Tablet, SpringClub.Stop)).Outcome);
    }

    /// <summary>A fall backward from standing on one evening.</summary>
    public static async Task FallAsync(this SpringClub club, Guid child, int month, int day, bool clean = true)
    {
        var tap = SeenTap.OfFall(Guid.CreateVersion7(club.Time.GetUtcNow()), club.Lesson(month, day).Id, child, FallForms.Way("back")!.Value, 3, clean);
        Assert.Equal(EvidenceOutcome.Stored, (await club.House.Sightings.AddAsync([tap], club.Today, club.Head, club.Tablet, SpringClub.Stop)).Outcome);
    }

    /// <summary>Everything that the first rank asks, but one throw on one evening only.</summary>
    public static async Task AllButOnceAsync(this SpringClub club, Guid child)
    {
        await club.SeenAsync(child, 5, 5, SeenWord.Good, "o-goshi", "uki-goshi", "stop");
        await club.SeenAsync(child, 5, 12, SeenWord.Good, "o-goshi");
        await club.FallAsync(child, 5, 5);
        await club.FallAsync(child, 5, 12);
    }
}
