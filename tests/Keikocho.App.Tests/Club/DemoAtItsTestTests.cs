using System.Globalization;
using Keikocho.App.Club;
using Keikocho.App.PromotionTests;
using Keikocho.App.Shared;
using Keikocho.App.Sightings;
using Keikocho.App.Tests.Shell;
using Keikocho.Core.Readiness;
using Keikocho.Core.Safety;
using Keikocho.Store.Keeping;
using Keikocho.Testing;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;

namespace Keikocho.App.Tests.Club;

/// <summary>The demo club's next promotion test, as the application reckons it, on several days.</summary>
public sealed class DemoAtItsTestTests
{
    /// <summary>An ordinary day, the turn of the year and a leap day.</summary>
    public static TheoryData<string> Days => new("2026-11-25T16:00", "2027-01-01T16:00", "2028-02-29T16:00");

    [Theory]
    [MemberData(nameof(Days))]
    public async Task Every_verdict_occurs_and_none_is_rare(string utc)
    {
        var (list, _) = await AtTheTestAsync(utc);
        Assert.Equal("edition 2", list.Edition?.Name);
        var count = list.Children.GroupBy(c => c.Answer.Verdict).ToDictionary(g => g.Key, g => g.Count());
        var said = string.Join(", ", count.Select(c => string.Create(CultureInfo.InvariantCulture, $"{c.Key} {c.Value}")));
        foreach (var word in Enum.GetValues<ReadyWord>()) Assert.True(count.GetValueOrDefault(word) >= 4, said);
        Assert.Single(list.Children, c => c.Overrule is not null && c.Answer.OverruleRefused is null);
    }

    [Theory]
    [MemberData(nameof(Days))]
    public async Task Most_gates_are_open_and_some_are_shut_for_every_reason_there_is(string utc)
    {
        var (_, gates) = await AtTheTestAsync(utc);
        var open = gates.Count(g => g.Ways.Count(w => w.OpenTo > 0) >= 5);
        Assert.True(open * 10 >= gates.Count * 6, $"{open} of {gates.Count} children have open gates");
        var shut = gates.SelectMany(g => g.Ways).SelectMany(w => w.Stages).Where(s => s.State == GateState.Shut).Select(s => s.Because.GetType().Name).ToHashSet();
        Assert.Contains("TooFewCleanEvenings", shut);
        Assert.Contains("NotShownAgain", shut);
        Assert.Contains("GateUnderStandDown", shut);
        Assert.Single(gates, g => g.Reasons.Any(r => r.GetType().Name == "NoFallSeen"));
        Assert.Contains(gates, g => g.Suggestions > 0);
    }

    [Theory]
    [MemberData(nameof(Days))]
    public async Task The_check_finds_nothing(string utc)
    {
        await using var app = await StartAsync(utc, null);
        var club = app.App.Services.GetRequiredService<ClubHouse>();
        var report = await CheckClub.RunAsync(club.Engine, _ => new(), cancel: TestContext.Current.CancellationToken);
        Assert.Empty(report.Problems);
        Assert.True(report.Marks > 10_000);
    }

    private static Task<RunningApp> StartAsync(string utc, Action<WebApplication>? add) =>
        RunningApp.StartAsync(services => services.AddSingleton<TimeProvider>(FixedTime.At(utc)), add);

    /// <summary>The juniors at their next test, and their gates tonight, as one request of the application sees them.</summary>
    private static async Task<(TestList List, List<FallGateAnswer> Gates)> AtTheTestAsync(string utc)
    {
        (TestList, List<FallGateAnswer>)? found = null;
        await using var app = await StartAsync(utc, add => add.MapGet("/at-the-test", (OpenClub club, TestReckoning reckoning) =>
        {
            var juniors = club.Book.Programmes[0];
            var list = reckoning.Of(club, club.Book.Tests.First(t => t.ProgrammeId == juniors.Id && t.Date > club.Today));
            found = (list, [.. list.Children.Select(c => ChildGates.Of(club.Book, c.Evidence, list.AsOf.AddDays(1)))]);
            return Results.Ok();
        }).WithMetadata(new SeenByAttribute(Role.Instructor, Device.Laptop)));
        using var browser = app.Browser();
        using var answer = await browser.GetAsync("/at-the-test", TestContext.Current.CancellationToken);
        answer.EnsureSuccessStatusCode();
        return found!.Value;
    }
}
