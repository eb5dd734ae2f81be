using System.Diagnostics;

namespace Keikocho.Bench;

/// <summary>From the start of the process to the first page in full.</summary>
internal static class Start
{
    public static async Task MeasureAsync(string file, string folder)
    {
        var times = new List<double>();
        var opened = new List<double>();
        for (var run = 0; run < 7; run++)
        {
            var watch = Stopwatch.StartNew();
            await using var server = await Server.StartAsync(file, folder);
            using var client = new HttpClient { BaseAddress = server.Address };
            await client.GetStringAsync("/tonight");
            times.Add(watch.Elapsed.TotalMilliseconds);
            opened.Add(server.Opened.TotalMilliseconds);
        }

        Console.WriteLine($"start to open: median {opened.Order().ElementAt(3):0} ms; to the first page: median {times.Order().ElementAt(3):0} ms ({times.Min():0} to {times.Max():0})");
    }
}
