using System.Diagnostics;
using System.Globalization;

namespace Keikocho.Bench;

/// <summary>Times of many requests by several clients at once.</summary>
internal static class Latencies
{
    /// <summary>Runs for some seconds after a warm-up; each client goes on as soon as it is answered.</summary>
    public static async Task<string> MeasureAsync(IReadOnlyList<HttpClient> clients, TimeSpan span, Func<HttpClient, int, Task> request)
    {
        await RunAsync(clients, TimeSpan.FromSeconds(2), request);
        var watch = Stopwatch.StartNew();
        var times = await RunAsync(clients, span, request);
        var seconds = watch.Elapsed.TotalSeconds;
        times.Sort();
        double At(double share) => times[Math.Min(times.Count - 1, (int)(times.Count * share))];
        return string.Create(CultureInfo.InvariantCulture,
            $"{times.Count / seconds,9:N0} /s   p50 {At(0.5),7:0.00}   p95 {At(0.95),7:0.00}   p99 {At(0.99),7:0.00}   max {times[^1],7:0.0} ms");
    }

    private static async Task<List<double>> RunAsync(IReadOnlyList<HttpClient> clients, TimeSpan span, Func<HttpClient, int, Task> request)
    {
        var end = Stopwatch.GetTimestamp() + (long)(span.TotalSeconds * Stopwatch.Frequency);
        var all = await Task.WhenAll(clients.Select(async client =>
        {
            var own = new List<double>();
            for (var n = 0; Stopwatch.GetTimestamp() < end; n++)
            {
                var from = Stopwatch.GetTimestamp();
                await request(client, n);
                own.Add(Stopwatch.GetElapsedTime(from).TotalMilliseconds);
            }

            return own;
        }));
        return [.. all.SelectMany(a => a)];
    }
}
