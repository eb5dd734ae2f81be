using System.Diagnostics;
using Keikocho.Core.Evening;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;

namespace Keikocho.Bench;

/// <summary>The check of the whole large club, inside this process.</summary>
internal static class Checks
{
    public static async Task MeasureAsync(string file)
    {
        for (var run = 1; run <= 3; run++)
        {
            var watch = Stopwatch.StartNew();
            var process = Process.GetCurrentProcess();
            var before = process.TotalProcessorTime;
            var report = await CheckClub.RunAsync(new SqliteEngine(file), _ => new AttendanceRules());
            process.Refresh();
            Console.WriteLine($"check: {report.Marks:N0} marks, {report.States:N0} states, {report.Problems.Count} problems in {watch.Elapsed.TotalSeconds:0.0} s, processor {(process.TotalProcessorTime - before).TotalSeconds:0.0} s (run {run})");
        }
    }
}
