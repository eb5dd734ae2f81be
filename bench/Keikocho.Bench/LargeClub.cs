using System.Diagnostics;
using Keikocho.Store.Demo;
using Keikocho.Store.Engines;

namespace Keikocho.Bench;

/// <summary>The large demo club: 2,000 children on 46 registers, ten years, about two million marks; made once a day, since its evening is today.</summary>
internal static class LargeClub
{
    public static async Task<string> MakeAsync(string folder)
    {
        Directory.CreateDirectory(folder);
        var now = TimeProvider.System.GetUtcNow();
        var today = DateOnly.FromDateTime(now.UtcDateTime);
        var file = Path.Combine(folder, $"large-46-{today:yyyyMMdd}.keikocho");
        if (File.Exists(file)) return file;
        var watch = Stopwatch.StartNew();
        var written = await WriteDemo.WriteAsync(new SqliteEngine(file), DemoClub.Make(today, 2026, DemoSize.Large), now, CancellationToken.None);
        Console.WriteLine($"made the large demo club: {written.Marks:N0} marks, {written.States:N0} states in {watch.Elapsed.TotalSeconds:0.0} s");
        return file;
    }
}
