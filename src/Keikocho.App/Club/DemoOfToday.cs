using Keikocho.App.Shared;
using Keikocho.Store.Demo;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;

namespace Keikocho.App.Club;

/// <summary>
/// The demo club is made for the day on which it is opened: its evening is today. One of an earlier day is set aside, not lost.
/// </summary>
public static class DemoOfToday
{
    /// <summary>The fixed number that the demo is made from.</summary>
    public const int Seed = 2026;

    /// <summary>Where the demo club is.</summary>
    public const string Zone = "Europe/London";

    /// <summary>Makes the demo club where there is none for today.</summary>
    public static async Task MakeAsync(Engine engine, TimeProvider time, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(engine);
        ArgumentNullException.ThrowIfNull(time);
        var clock = new ClubClock(time, Zone);
        if (engine is SqliteEngine { File: var file } sqlite && File.Exists(file))
        {
            await engine.UpgradeAsync(time.GetUtcNow(), cancel);
            await using (var db = engine.OpenDb())
            {
                // The demo's own history begins long ago; the trail says when it was written.
                var written = db.Trail.Where(t => t.Kind == TrailKind.Restored).Max(t => (DateTimeOffset?)t.At);
                if (written is { } at && clock.DayOf(at) == clock.Today) return;
            }

            sqlite.Release();
            SetAside(file);
        }

        await WriteDemo.WriteAsync(engine, DemoClub.Make(clock.Today, Seed, DemoSize.Small), time.GetUtcNow(), cancel);
    }

    private static void SetAside(string file)
    {
        foreach (var ending in new[] { "", "-wal", "-shm" })
        {
            if (File.Exists(file + ending)) File.Move(file + ending, $"{file}.earlier{ending}", overwrite: true);
            else File.Delete($"{file}.earlier{ending}");
        }
    }
}
