using System.Diagnostics;
using Keikocho.Core.Evening;
using Keikocho.Store.Engines;
using Keikocho.Store.Marks;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Bench;

/// <summary>Taps through the store alone, one after the other: wall and processor time of each.</summary>
internal static class StoreTaps
{
    public static async Task MeasureAsync(string file, string folder)
    {
        var copy = Path.Combine(folder, "store-taps.keikocho");
        File.Copy(file, copy, overwrite: true);
        var engine = new SqliteEngine(copy);
        await using (var writer = new WriterQueue(engine, TimeProvider.System))
        {
            var marks = new MarksStore(writer);
            Guid device, adult;
            List<Guid> people;
            List<Guid> lessons;
            DateOnly day;
            using (var db = engine.OpenDb())
            {
                device = db.Devices.Select(d => d.Id).First();
                var row = db.Lessons.AsNoTracking().OrderByDescending(l => l.Date).First();
                day = row.Date;
                // A child has a mark or two at a lesson, not a hundred.
                lessons = db.Lessons.Where(l => l.ProgrammeId == row.ProgrammeId).OrderByDescending(l => l.Date).Take(100).Select(l => l.Id).ToList();
                people = db.Enrolments.Where(e => e.ProgrammeId == row.ProgrammeId && e.To == null).Select(e => e.PersonId).ToList();
                adult = db.Duties.Select(d => d.PersonId).First();
            }

            var times = new List<double>();
            var process = Process.GetCurrentProcess();
            var cpu = TimeSpan.Zero;
            for (var n = 0; n < 4_000; n++)
            {
                if (n == 1_000)
                {
                    process.Refresh();
                    cpu = process.TotalProcessorTime;
                    times.Clear();
                }

                var now = TimeProvider.System.GetUtcNow();
                var from = Stopwatch.GetTimestamp();
                await marks.TapAsync(
                    new Tap(Guid.CreateVersion7(now), device, null, lessons[n / people.Count], people[n % people.Count], adult, now, n % 2 == 0 ? MarkKind.Present : MarkKind.Absent, new TimeOnly(17, 30)),
                    day, new AttendanceRules(), CancellationToken.None);
                times.Add(Stopwatch.GetElapsedTime(from).TotalMilliseconds);
            }

            process.Refresh();
            times.Sort();
            Console.WriteLine($"store tap: p50 {times[times.Count / 2]:0.000} ms, p99 {times[(int)(times.Count * 0.99)]:0.00} ms, processor {(process.TotalProcessorTime - cpu).TotalMilliseconds / times.Count:0.000} ms each");
        }

        engine.Release();
        foreach (var left in Directory.GetFiles(folder, "store-taps.keikocho*")) File.Delete(left);
    }
}
