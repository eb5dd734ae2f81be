using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;
using Keikocho.Core.Names;

namespace Keikocho.Store.Starter;

/// <summary>Reads the list of technique names, docs/formats/names-list.md. A list with one fault is not read at all.</summary>
public static class StarterNames
{
    /// <summary>The columns, in any order in the file.</summary>
    public static IReadOnlyList<string> Columns { get; } =
        ["listed", "name", "kana", "kanji", "class", "subclass", "meaning", "spellings", "counted as", "source"];

    private const string FileName = "names.csv";
    private static readonly Lazy<IReadOnlyList<StarterName>> Shipped = new(() =>
    {
        using var text = StarterFile.Open(FileName);
        return Read(text, FileName);
    });

    /// <summary>The names that the program ships; read once.</summary>
    public static IReadOnlyList<StarterName> All => Shipped.Value;

    /// <summary>The same as names to be found.</summary>
    public static IReadOnlyList<KnownName> Known => [.. All.Select(n => n.Known)];

    /// <summary>
    /// The same with the words of the starter kit, for a spelling that may be either. Two words of one spelling are told apart by topic and
    /// meaning; a word that is a listed name already is not there twice.
    /// </summary>
    public static IReadOnlyList<KnownName> WithWords
    {
        get
        {
            if (StarterKit.Vocabulary() is not TextReading<IReadOnlyList<VocabularyWord>>.Read { Value: var words }) return Known;
            var known = Known;
            var names = known.Select(n => (Core.Intake.NameFold.Fold(n.Name), n.Kana)).ToHashSet();
            return
            [
                .. known,
                .. words.Where(w => !names.Contains((Core.Intake.NameFold.Fold(w.Romaji), w.Kana)))
                    .Select(w => new KnownName(w.Romaji, w.Kana, w.Kanji, w.Topic, w.English, [])),
            ];
        }
    }

    /// <summary>Reads a list.</summary>
    /// <exception cref="InvalidDataException">A fault, with the file, the line and the column.</exception>
    public static IReadOnlyList<StarterName> Read(TextReader text, string fileName)
    {
        ArgumentNullException.ThrowIfNull(text);
        using var csv = new CsvReader(text, new CsvConfiguration(CultureInfo.InvariantCulture)
        {
            DetectColumnCountChanges = true,
            IgnoreBlankLines = true,
            TrimOptions = TrimOptions.Trim,
        }, leaveOpen: true);
        var names = new List<(StarterName Name, int Line)>();
        try
        {
            if (!csv.Read() || !csv.ReadHeader())
                throw Fault(fileName, 1, Columns[0], "the file is empty; write the line of columns");
            CheckColumns(fileName, csv.HeaderRecord ?? []);
            while (csv.Read())
                names.Add((OfRow(csv, fileName), csv.Parser.RawRow));
        }
        catch (BadDataException fault)
        {
            throw Fault(fileName, fault.Context?.Parser?.RawRow ?? 0, null, "the line has a stray quotation mark, or more or fewer cells than there are columns; mend it");
        }

        CheckTogether(fileName, names);
        return [.. names.Select(n => n.Name)];
    }

    private static void CheckColumns(string fileName, string[] header)
    {
        foreach (var column in Columns)
        {
            if (header.Count(h => h == column) != 1)
                throw Fault(fileName, 1, column, "the column must be there once; add it, or take the second out");
        }

        if (header.FirstOrDefault(h => !Columns.Contains(h)) is { } strange)
            throw Fault(fileName, 1, strange, "the format does not know this column; take it out or mend its spelling");
    }

    private static StarterName OfRow(CsvReader csv, string fileName)
    {
        string Text(string column) => csv.GetField(column) ?? "";
        string? Maybe(string column) => Text(column) is { Length: > 0 } said ? said : null;
        string Needed(string column) => Maybe(column) ?? throw Fault(fileName, csv.Parser.RawRow, column, "the cell is empty; fill it");

        var listed = Text("listed") switch
        {
            "yes" => true,
            "no" => false,
            _ => throw Fault(fileName, csv.Parser.RawRow, "listed", "say yes or no"),
        };
        if (Maybe("kana") is { } kana && kana.Any(letter => letter is not (>= 'ぁ' and <= 'ヶ' or 'ー')))
            throw Fault(fileName, csv.Parser.RawRow, "kana", $"{kana} holds something that is not kana; write hiragana or katakana");
        if (listed && Maybe("kana") is null)
            throw Fault(fileName, csv.Parser.RawRow, "kana", "a listed name needs its kana; write it");
        if (listed && Maybe("counted as") is not null)
            throw Fault(fileName, csv.Parser.RawRow, "counted as", "a listed name is counted as itself; empty the cell");
        var spellings = Text("spellings").Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        return new StarterName(
            new KnownName(Needed("name"), Maybe("kana"), Maybe("kanji"), Needed("subclass"), Maybe("meaning"), spellings, Maybe("counted as")),
            listed, Needed("class"), Needed("subclass"), Needed("source"));
    }

    private static void CheckTogether(string fileName, List<(StarterName Name, int Line)> names)
    {
        var listed = names.Where(n => n.Name.Listed).Select(n => n.Name.Known.Name).ToHashSet(StringComparer.OrdinalIgnoreCase);
        var seen = new HashSet<(string, string?)>();
        foreach (var (name, line) in names)
        {
            if (name.Known.CountedAs is { } counted && !listed.Contains(counted))
                throw Fault(fileName, line, "counted as", $"{counted} is not among the listed names; mend its spelling");
            if (!seen.Add((name.Known.Name.ToUpperInvariant(), name.Known.CountedAs?.ToUpperInvariant())))
                throw Fault(fileName, line, "name", $"{name.Known.Name} is there twice; take one out");
        }
    }

    private static InvalidDataException Fault(string fileName, int line, string? column, string what) =>
        new(string.Create(CultureInfo.InvariantCulture, $"{fileName}, line {line}{(column is null ? "" : $", column {column}")}: {what}."));
}
