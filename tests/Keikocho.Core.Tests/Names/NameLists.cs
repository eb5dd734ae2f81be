using System.Text;
using Keikocho.Core.Names;
using Keikocho.Testing;

namespace Keikocho.Core.Tests.Names;

/// <summary>The lists that the tests read: the shipped names, the table of variants and the words, with their marks of source.</summary>
internal static class NameLists
{
    private const string Data = "tests/Keikocho.Core.Tests/Names/Data/";

    public static IReadOnlyList<IReadOnlyDictionary<string, string>> Shipped { get; } = Read("starter/names.csv");

    public static IReadOnlyList<IReadOnlyDictionary<string, string>> Variants { get; } = Read(Data + "name-variants.csv");

    public static IReadOnlyList<IReadOnlyDictionary<string, string>> Words { get; } = Read(Data + "vocabulary.csv");

    public static IReadOnlyList<IReadOnlyDictionary<string, string>> Wanakana { get; } = Read(Data + "wanakana.csv");

    public static IReadOnlyList<KnownName> Techniques { get; } =
    [
        .. Shipped.Select(r => new KnownName(
            r["name"], Maybe(r["kana"]), Maybe(r["kanji"]), r["subclass"], Maybe(r["meaning"]),
            r["spellings"].Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries), Maybe(r["counted as"]))),
    ];

    public static IReadOnlyList<string> Listed { get; } = [.. Shipped.Where(r => r["listed"] == "yes").Select(r => r["name"])];

    public static IReadOnlyList<KnownName> Vocabulary { get; } =
        [.. Words.Select(r => new KnownName(r["romaji"], r["kana"], r["kanji"], r["topic"], r["english"], []))];

    public static NameIndex Known { get; } = NameIndex.Of(Techniques);

    public static NameIndex WordIndex { get; } = NameIndex.Of(Vocabulary);

    public static NameIndex Together { get; } = NameIndex.Of([.. Techniques, .. Vocabulary]);

    private static string? Maybe(string text) => text.Length == 0 ? null : text;

    private static List<IReadOnlyDictionary<string, string>> Read(string fromRoot)
    {
        var lines = File.ReadAllLines(Repository.PathOf(fromRoot)).Where(l => l.Length > 0).Select(Cells).ToArray();
        var rows = new List<IReadOnlyDictionary<string, string>>();
        foreach (var line in lines.Skip(1))
        {
            Assert.Equal(lines[0].Count, line.Count);
            rows.Add(lines[0].Zip(line).ToDictionary(p => p.First, p => p.Second));
        }

        return rows;
    }

    private static List<string> Cells(string line)
    {
        var cells = new List<string>();
        var cell = new StringBuilder();
        var quoted = false;
        foreach (var letter in line)
        {
            if (letter == '"')
                quoted = !quoted;
            else if (letter == ',' && !quoted)
            {
                cells.Add(cell.ToString());
                cell.Clear();
            }
            else
                cell.Append(letter);
        }

        cells.Add(cell.ToString());
        return cells;
    }
}
