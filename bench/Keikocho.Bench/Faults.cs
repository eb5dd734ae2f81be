using System.Diagnostics;
using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Microsoft.Data.Sqlite;

namespace Keikocho.Bench;

/// <summary>
/// What may go wrong in a hall, made to go wrong: a network that cuts, repeats, reorders and delays; a laptop killed in the middle of
/// taps; a full disk; a tablet whose clock is a day off; two people marking the same child. Every acknowledged mark is there, once, and
/// every other arrives later. Each run prints its seed.
/// </summary>
internal static partial class Faults
{
    public static async Task MeasureAsync(string folder, int seed)
    {
        Console.WriteLine($"seed {seed}");
        Directory.CreateDirectory(folder);
        await NetworkAsync(Fresh(folder, "network"), new Random(seed));
        await KilledAsync(Fresh(folder, "killed"), new Random(seed));
        await DiskFullAsync(Fresh(folder, "disk"));
    }

    /// <summary>One tablet, eight and sixty that tap at once, each waiting for its answer: how long a durable mark takes over TLS.</summary>
    public static async Task TabletsAsync(string folder)
    {
        var own = Fresh(folder, "tablets");
        await using var server = await Server.DemoAsync(own);
        using var laptop = await server.ClientAsync();
        var door = await DoorAsync(laptop);
        var tablets = new List<Tablet>();
        for (var i = 0; i < 60; i++) tablets.Add(await Tablet.JoinAsync(laptop, door, i));
        foreach (var count in new[] { 1, 8, 60 })
        {
            var times = new List<double>();
            var until = Stopwatch.GetTimestamp() + 5 * Stopwatch.Frequency;
            await Task.WhenAll(tablets.Take(count).Select((tablet, who) => Task.Run(async () =>
            {
                var children = tablet.Children;
                for (var n = 0; Stopwatch.GetTimestamp() < until; n++)
                {
                    tablet.Tap(children[(n * tablets.Count + who) % children.Count], n % 2 == 0 ? "present" : "absent");
                    var from = Stopwatch.GetTimestamp();
                    if (!await tablet.SendAsync([.. tablet.Waiting])) throw new InvalidOperationException("A mark was not taken.");
                    lock (times) times.Add(Stopwatch.GetElapsedTime(from).TotalMilliseconds);
                }
            })));
            times.Sort();
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"mark over TLS, durable  {count} tablets  {times.Count / 5.0,7:0} /s  p50 {At(times, .5),6:0.00}  p95 {At(times, .95),6:0.00}  p99 {At(times, .99),6:0.00}  max {times[^1],6:0.0} ms"));
        }

        foreach (var tablet in tablets) tablet.Dispose();
    }

    private static double At(List<double> sorted, double share) => sorted[Math.Min(sorted.Count - 1, (int)(sorted.Count * share))];

    // 500 taps from two tablets that mark the same children; one is a day ahead.
    private static async Task NetworkAsync(string folder, Random chance)
    {
        await using var server = await Server.DemoAsync(folder);
        using var laptop = await server.ClientAsync();
        var door = await DoorAsync(laptop);
        using var one = await Tablet.JoinAsync(laptop, door, 0);
        using var two = await Tablet.JoinAsync(laptop, door, 1, TimeSpan.FromDays(1));
        int cut = 0, lost = 0, twice = 0, mixed = 0, late = 0;
        List<(Tablet Tablet, JsonObject[] Marks)> delayed = [];
        for (var n = 0; n < 500; n++)
        {
            var tablet = n % 2 == 0 ? one : two;
            tablet.Tap(tablet.Children[chance.Next(12)], chance.Next(3) switch { 0 => "absent", 1 => "left", _ => "present" });
            var marks = tablet.Waiting.ToArray();
            switch (chance.Next(8))
            {
                case 0: cut++; break;
                case 1: lost++; await LoseTheAnswerAsync(tablet, marks); break;
                case 2: twice++; await Task.WhenAll(tablet.SendAsync(marks), LoseTheAnswerAsync(tablet, marks)); break;
                case 3: mixed++; chance.Shuffle(marks); await tablet.SendAsync(marks); break;
                case 4: late++; delayed.Add((tablet, marks)); break;
                default: await tablet.SendAsync(marks); break;
            }

            if (delayed.Count > 5)
            {
                var (from, old) = delayed[0];
                delayed.RemoveAt(0);
                await from.SendAsync(old);
            }
        }

        foreach (var tablet in new[] { one, two })
            for (var i = 0; i < 20 && tablet.Waiting.Count > 0; i++) await tablet.SendAsync([.. tablet.Waiting]);
        Tell("network", folder, [one, two], $"500 taps, of which {cut} cut off, {lost} with a lost answer, {twice} sent twice, {mixed} in another order, {late} delayed");
    }

    private static async Task KilledAsync(string folder, Random chance)
    {
        const int Kills = 50;
        var server = await Server.DemoAsync(folder);
        using var first = await server.ClientAsync();
        var door = await DoorAsync(first);
        Tablet[] tablets = [await Tablet.JoinAsync(first, door, 0), await Tablet.JoinAsync(first, door, 1)];
        var missing = 0;
        for (var kill = 0; kill < Kills; kill++)
        {
            using var stop = new CancellationTokenSource();
            var taps = tablets.Select(tablet => Task.Run(async () =>
            {
                for (var n = 0; !stop.IsCancellationRequested; n++)
                {
                    tablet.Tap(tablet.Children[n % tablet.Children.Count], n % 2 == 0 ? "present" : "absent");
                    if (!await tablet.SendAsync([.. tablet.Waiting.Take(50)], stop.Token)) return;
                }
            })).ToArray();
            await Task.Delay(chance.Next(20, 300));
            await server.DisposeAsync();
            await stop.CancelAsync();
            await Task.WhenAll(taps);
            missing += tablets.Sum(t => t.Acknowledged.Except(Stored(folder)).Count());
            server = await Server.DemoAsync(folder);
            using var laptop = await server.ClientAsync();
            door = await DoorAsync(laptop);
            foreach (var tablet in tablets) await tablet.MoveAsync(door);
        }

        foreach (var tablet in tablets)
            for (var i = 0; i < 200 && tablet.Waiting.Count > 0; i++) await tablet.SendAsync([.. tablet.Waiting.Take(50)]);
        await server.DisposeAsync();
        Tell("killed", folder, tablets, $"killed {Kills} times in the middle of taps; {missing} acknowledged marks missing after a kill");
        foreach (var tablet in tablets) tablet.Dispose();
    }

    private static async Task DiskFullAsync(string folder)
    {
        if (!OperatingSystem.IsLinux() || Run("mount", "-t", "tmpfs", "-o", "size=24m", "tmpfs", folder) != 0)
        {
            Console.WriteLine("disk full: left out, a small disk cannot be made here (it needs Linux and the right to mount)");
            return;
        }

        try
        {
            int refused = 0, taken = 0;
            await using var server = await Server.DemoAsync(folder);
            using var laptop = await server.ClientAsync();
            using var tablet = await Tablet.JoinAsync(laptop, await DoorAsync(laptop), 0);
            var ballast = Path.Combine(folder, "ballast");
            await using (var full = File.Create(ballast))
            {
                var block = new byte[65536];
                try
                {
                    while (true)
                    {
                        await full.WriteAsync(block);
                        await full.FlushAsync();
                    }
                }
                catch (IOException)
                {
                    // The disk is full now.
                }
            }

            for (var n = 0; n < 200; n++)
            {
                tablet.Tap(tablet.Children[n % tablet.Children.Count], "present");
                if (await tablet.SendAsync([tablet.Waiting[^1]])) taken++;
                else refused++;
            }

            File.Delete(ballast);
            for (var i = 0; i < 20 && tablet.Waiting.Count > 0; i++) await tablet.SendAsync([.. tablet.Waiting]);
            Tell("disk full", folder, [tablet], $"200 taps on a full disk, {refused} not acknowledged, {taken} still found room");
        }
        finally
        {
            Run("umount", "-l", folder);
        }
    }

    private static void Tell(string what, string folder, IReadOnlyList<Tablet> tablets, string how)
    {
        var stored = Stored(folder);
        var all = tablets.SelectMany(t => t.Tapped).ToHashSet();
        var twice = stored.GroupBy(id => id).Count(g => g.Count() > 1);
        var lost = all.Except(stored).Count();
        var early = tablets.Sum(t => t.Acknowledged.Except(stored).Count());
        Console.WriteLine($"{what}: {how}");
        Console.WriteLine($"{what}: {all.Count} taps, {tablets.Sum(t => t.Acknowledged.Count)} acknowledged, {lost} lost, {early} acknowledged and not there, {twice} there twice, {tablets.Sum(t => t.Waiting.Count)} still waiting");
        if (lost + early + twice > 0) throw new InvalidOperationException($"{what}: marks were lost or doubled.");
    }

    private static async Task LoseTheAnswerAsync(Tablet tablet, IReadOnlyList<JsonObject> marks)
    {
        using var soon = new CancellationTokenSource(TimeSpan.FromMilliseconds(Random.Shared.Next(1, 6)));
        await tablet.SendAsync(marks, soon.Token);
    }

    private static async Task<Uri> DoorAsync(HttpClient laptop)
    {
        var page = await laptop.GetStringAsync("/tablets");
        await laptop.PostAsync("/tablets/door", new FormUrlEncodedContent([new("page-token", Server.Token().Match(page).Groups[1].Value), new("door", "open")]));
        return new UriBuilder(new Uri(Address().Match(await laptop.GetStringAsync("/tablets")).Groups[1].Value)) { Host = "127.0.0.1" }.Uri;
    }

    private static List<Guid> Stored(string folder)
    {
        using var file = new SqliteConnection($"Data Source={Path.Combine(folder, "data", "demo.keikocho")};Mode=ReadOnly;Pooling=False");
        file.Open();
        using var ask = file.CreateCommand();
        ask.CommandText = "SELECT m.Id FROM Marks m JOIN Devices d ON d.Club = m.Club AND d.Id = m.DeviceId WHERE d.Kind = 1";
        using var reader = ask.ExecuteReader();
        var ids = new List<Guid>();
        while (reader.Read()) ids.Add(new Guid((byte[])reader.GetValue(0), bigEndian: true));
        return ids;
    }

    private static string Fresh(string folder, string name)
    {
        var own = Path.Combine(folder, $"faults-{name}");
        if (Directory.Exists(own)) Directory.Delete(own, recursive: true);
        Directory.CreateDirectory(own);
        return own;
    }

    private static int Run(string program, params string[] arguments)
    {
        using var run = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardError = true })!;
        run.WaitForExit();
        return run.ExitCode;
    }

    [GeneratedRegex("class=\"address\">(https://[^<]+)<")]
    private static partial Regex Address();
}
