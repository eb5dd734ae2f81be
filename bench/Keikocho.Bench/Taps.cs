using System.Text.RegularExpressions;

namespace Keikocho.Bench;

/// <summary>Taps, each on disk before it is answered: one tablet, then eight.</summary>
internal static partial class Taps
{
    public static async Task MeasureAsync(string file, string folder)
    {
        // The measuring writes: on a copy.
        var copy = Path.Combine(folder, "taps.keikocho");
        File.Copy(file, copy, overwrite: true);
        await using (var server = await Server.StartAsync(copy, folder))
        {
            var clients = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => server.ClientAsync()));
            var forms = new Dictionary<HttpClient, (string Token, string Lesson, string[] People)>();
            foreach (var client in clients)
            {
                var html = await client.GetStringAsync("/register");
                forms[client] = (Server.Token().Match(html).Groups[1].Value, Lesson().Match(html).Groups[1].Value, [.. Person().Matches(html).Select(m => m.Groups[1].Value)]);
            }

            foreach (var count in new[] { 1, 8 })
            {
                var line = await Latencies.MeasureAsync(clients[..count], TimeSpan.FromSeconds(5), async (client, n) =>
                {
                    var (token, lesson, people) = forms[client];
                    using var request = new HttpRequestMessage(HttpMethod.Post, "/register/mark")
                    {
                        Content = new FormUrlEncodedContent(
                        [
                            new("page-token", token), new("lesson", lesson), new("command", Guid.CreateVersion7(TimeProvider.System.GetUtcNow()).ToString("D")),
                            new(n % 2 == 0 ? "present" : "absent", people[n % people.Length]),
                        ]),
                    };
                    request.Headers.Accept.ParseAdd("application/json");
                    using var answer = await client.SendAsync(request);
                    answer.EnsureSuccessStatusCode();
                });
                Console.WriteLine($"tap, durable          {count} tablets {line}");
            }

            Console.WriteLine($"memory after the taps {server.MemoryMiB():0} MiB");
        }

        foreach (var left in Directory.GetFiles(folder, "taps.keikocho*")) File.Delete(left);
    }

    [GeneratedRegex("name=\"lesson\" value=\"([^\"]+)\"")]
    private static partial Regex Lesson();

    [GeneratedRegex("name=\"present\" value=\"([^\"]+)\"")]
    private static partial Regex Person();
}
