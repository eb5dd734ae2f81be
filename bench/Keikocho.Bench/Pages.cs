using System.Text.RegularExpressions;

namespace Keikocho.Bench;

/// <summary>Everyday pages of 40 children, beside the plain-text address of the same server.</summary>
internal static partial class Pages
{
    public static async Task MeasureAsync(string file, string folder)
    {
        await using var server = await Server.StartAsync(file, folder);
        var clients = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => server.ClientAsync()));
        using var students = await clients[0].GetAsync("/students");
        var child = Child().Match(await students.Content.ReadAsStringAsync()).Value;
        var addresses = new[] { "/alive", "/tonight", "/register", "/roll", "/students", child, "/papers", "/club" }.Where(a => a.Length > 0);
        foreach (var address in addresses)
        {
            using var probe = await clients[0].GetAsync(address);
            if (!probe.IsSuccessStatusCode)
            {
                Console.WriteLine($"{address,-22} {(int)probe.StatusCode}");
                continue;
            }

            var bytes = (await probe.Content.ReadAsByteArrayAsync()).Length;
            var shown = address.StartsWith("/students/", StringComparison.Ordinal) ? "/students/{id}" : address;
            foreach (var count in new[] { 1, 8 })
            {
                var line = await Latencies.MeasureAsync(clients[..count], TimeSpan.FromSeconds(5), async (client, _) =>
                {
                    using var answer = await client.GetAsync(address);
                    answer.EnsureSuccessStatusCode();
                    await answer.Content.CopyToAsync(Stream.Null);
                });
                Console.WriteLine($"{shown,-16} {bytes / 1024.0,6:0.0} kB  {count} clients {line}");
            }
        }

        Console.WriteLine($"memory after the pages {server.MemoryMiB():0} MiB");
    }

    [GeneratedRegex("/students/[0-9a-f]{8}-[0-9a-f-]{27}")]
    private static partial Regex Child();
}
