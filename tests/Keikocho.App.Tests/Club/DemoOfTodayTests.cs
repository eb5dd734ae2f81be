using System.Net;
using Keikocho.App.Club;
using Keikocho.App.Hosting;
using Keikocho.Store.Book;
using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Keikocho.Testing;
using Microsoft.Extensions.DependencyInjection;

namespace Keikocho.App.Tests.Club;

/// <summary>The demo club's file over several starts of the application.</summary>
public sealed class DemoOfTodayTests : IDisposable
{
    private readonly TempFolder folder = new();

    private string File => folder.File("club.keikocho");

    private string Earlier => File + ".earlier";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task The_demo_club_of_the_same_day_is_kept_when_the_application_is_started_again()
    {
        await ChangedAsync("2026-11-25T09:00", "Kept Judo Club");
        // 23:30 in London is still the same day.
        Assert.Equal("Kept Judo Club", await NameAsync("2026-11-25T23:30"));
        Assert.False(System.IO.File.Exists(Earlier));
    }

    [Fact]
    public async Task The_demo_club_of_an_earlier_day_is_set_aside_and_a_new_one_is_made_for_today()
    {
        await ChangedAsync("2026-11-25T23:30", "Yesterday Judo Club");
        Assert.NotEqual("Yesterday Judo Club", await NameAsync("2026-11-26T00:30"));
        Assert.Equal("Yesterday Judo Club", NameIn(Earlier));
        using var reading = new SqliteEngine(File).OpenReading();
        Assert.NotEmpty(BookStore.Read(reading, new DateOnly(2026, 11, 1)).LessonsOn(new DateOnly(2026, 11, 26)));
    }

    [Fact]
    public async Task Only_the_demo_club_set_aside_last_is_kept()
    {
        await ChangedAsync("2026-11-25T12:00", "First Judo Club");
        await ChangedAsync("2026-11-26T12:00", "Second Judo Club");
        await NameAsync("2026-11-27T12:00");
        Assert.Equal("Second Judo Club", NameIn(Earlier));
    }

    private Task<string> NameAsync(string utc) => StartedAsync(utc, house => Task.FromResult(NameIn(house.Engine)));

    private Task<bool> ChangedAsync(string utc, string name) => StartedAsync(utc, house =>
        house.Club.ChangeAsync(name, DemoOfToday.Zone, PaperChoice.A4, UnitChoice.Metric, null, Guid.CreateVersion7(), Stop));

    private async Task<T> StartedAsync<T>(string utc, Func<ClubHouse, Task<T>> act)
    {
        await using var app = KeikochoHost.Build(new ServedClub(File, folder.Path, IsDemo: true), IPAddress.Loopback, 0,
            services => services.AddSingleton<TimeProvider>(FixedTime.At(utc)));
        await KeikochoHost.StartAsync(app, Stop);
        return await act(app.Services.GetRequiredService<ClubHouse>());
    }

    private static string NameIn(string file) => NameIn(new SqliteEngine(file));

    private static string NameIn(Engine engine)
    {
        using var db = engine.OpenDb();
        return db.Clubs.Single().Name;
    }
}
