using System.Diagnostics;
using Keikocho.Core.Names;
using Keikocho.Store.Starter;

namespace Keikocho.Bench;

/// <summary>10,000 messy spellings against the names that the program ships.</summary>
internal static class Names
{
    private const int Spellings = 10_000;

    public static void Measure()
    {
        var watch = Stopwatch.StartNew();
        var index = NameIndex.Of(StarterNames.Known);
        Console.WriteLine($"names: index of {index.Names.Count} names ready after {watch.Elapsed.TotalMilliseconds:0} ms");
        string[] known = [.. StarterNames.All.Select(n => n.Known.Name)];
        string[] written = [.. Enumerable.Range(0, Spellings).Select(n => Messy(known[n % known.Length], n))];
        for (var run = 1; run <= 5; run++)
        {
            watch.Restart();
            var answer = ResolveNames.Resolve(written, index, new NamesRule());
            Console.WriteLine($"names: {Spellings:N0} spellings in {watch.Elapsed.TotalMilliseconds:0} ms (run {run}; one {answer.One:N0}, several {answer.Several:N0}, none {answer.None:N0})");
        }
    }

    /// <summary>As people write: without hyphens, in capitals, with a letter twice, one missing or another in its place. No two alike in a row.</summary>
    private static string Messy(string name, int n)
    {
        var at = 1 + n * 7 % Math.Max(1, name.Length - 1);
        return (n / 7 % 7) switch
        {
            0 => name,
            1 => name.Replace('-', ' '),
            2 => name.Replace("-", "", StringComparison.Ordinal).ToUpperInvariant(),
            3 => name.Insert(at, name[at - 1].ToString()),
            4 => name.Remove(Math.Min(at, name.Length - 1), 1),
            5 => string.Concat(name.AsSpan(0, at), "e", name.AsSpan(Math.Min(at + 1, name.Length))),
            _ => $" {name.ToLowerInvariant()} {n}",
        };
    }
}
