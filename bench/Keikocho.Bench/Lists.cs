using System.Diagnostics;
using Keikocho.Store.Engines;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Bench;

/// <summary>The list of a promotion test with 200 candidates, out of 2,000 children, over HTTP: kept, and reckoned for the first time.</summary>
internal static class Lists
{
    public static async Task MeasureAsync(string file, string folder)
    {
        var (large, small) = Tests(file);
        for (var run = 1; run <= 3; run++)
        {
            await using var fresh = await Server.StartAsync(file, folder);
            using var client = await fresh.ClientAsync();
            // The code of the page is ready before the list of 200 is asked for.
            for (var n = 0; n < 3; n++) await client.GetStringAsync(small);
            var watch = Stopwatch.StartNew();
            await client.GetStringAsync(large);
            Console.WriteLine($"list of 200, reckoned for the first time: {watch.Elapsed.TotalMilliseconds:0} ms (run {run})");
        }

        await using var server = await Server.StartAsync(file, folder);
        var clients = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => server.ClientAsync()));
        foreach (var (address, said) in new[] { (small, "list of 40"), (large, "list of 200") })
        {
            var bytes = (await clients[0].GetByteArrayAsync(address)).Length;
            foreach (var count in new[] { 1, 8 })
            {
                var line = await Latencies.MeasureAsync(clients[..count], TimeSpan.FromSeconds(5), async (client, _) =>
                {
                    using var answer = await client.GetAsync(address);
                    answer.EnsureSuccessStatusCode();
                    await answer.Content.CopyToAsync(Stream.Null);
                });
                Console.WriteLine($"{said,-16} {bytes / 1024.0,6:0.0} kB  {count} clients {line}");
            }
        }

        Console.WriteLine($"memory after the lists {server.MemoryMiB():0} MiB");
    }

    /// <summary>The next tests of the largest register and of the first one.</summary>
    private static (string Large, string Small) Tests(string file)
    {
        var engine = new SqliteEngine(file);
        using var db = engine.OpenDb();
        var today = DateOnly.FromDateTime(TimeProvider.System.GetUtcNow().UtcDateTime);
        var programmes = db.Programmes.AsNoTracking().OrderBy(p => p.Position).Select(p => p.Id).ToList();
        string Next(Guid programme) =>
            $"/promotion-tests/{db.PromotionTests.AsNoTracking().Where(t => t.ProgrammeId == programme && t.Date > today).OrderBy(t => t.Date).Select(t => t.Id).First():D}";
        return (Next(programmes[^1]), Next(programmes[0]));
    }
}
