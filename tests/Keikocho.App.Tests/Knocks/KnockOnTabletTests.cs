using Keikocho.App.Tests.Hall;
using Keikocho.Core.Safety;
using Keikocho.Store.People;
using Keikocho.Store.Safety;
using Keikocho.Testing;

namespace Keikocho.App.Tests.Knocks;

/// <summary>What a tablet offers and what it is told after a knock.</summary>
public sealed class KnockOnTabletTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact, Statement(24)]
    public async Task A_tablet_offers_the_activities_and_its_knock_waits_on_the_laptop_with_a_slip_that_no_tablet_speaks_of()
    {
        await using var hall = await HallDoorOpen.StartAsync();
        using var tablet = new TabletOfTests(await hall.TabletOfAsync(DutyKind.Instructor));
        await tablet.AskAsync();
        Assert.Equal(KnockActivities.All.Select(a => a.Words), tablet.Evening["activities"]!.AsArray().Select(a => a!["words"]!.GetValue<string>()));
        var child = tablet.Child(0);
        Assert.Equal(["taken"], await tablet.HandInAsync(tablet.Mark("knock", child, m => m["code"] = (int)KnockActivity.Throwing)));
        using var reading = hall.House.Engine.OpenReading();
        var slip = Assert.Single(KnockSlips.OpenOf(reading, [tablet.LessonId]));
        Assert.Equal((child, KnockActivity.Throwing), (slip.PersonId, slip.Activity));
        await tablet.AskAsync();
        Assert.Equal("watches", tablet.ChildNow(child)["role"]!.GetValue<string>());
        Assert.DoesNotContain("slip for", tablet.Evening.ToJsonString(), StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("A slip for", await tablet.Http.GetStringAsync("/tonight", Cancel), StringComparison.OrdinalIgnoreCase);
        using var page = await tablet.Http.GetAsync($"/knocks/{slip.KnockId:D}", Cancel);
        Assert.False(page.IsSuccessStatusCode);
    }
}
