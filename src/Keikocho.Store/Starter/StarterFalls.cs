using System.Globalization;
using System.Text;
using CsvHelper;
using CsvHelper.Configuration;
using Keikocho.Core.Safety;

namespace Keikocho.Store.Starter;

/// <summary>Reads the fall table, docs/formats/falls-table.md. A table with one fault is not read at all.</summary>
public static class StarterFalls
{
    /// <summary>The columns of the list of falls, in any order in the file.</summary>
    public static IReadOnlyList<string> StageColumns { get; } = ["direction", "side", "stage", "how", "source"];

    /// <summary>The columns of the list of throws, in any order in the file.</summary>
    public static IReadOnlyList<string> ThrowColumns { get; } =
        ["technique", "then", "hand", "falls", "first drill", "free drill", "backward reap", "source"];

    private const string StagesFile = "fall-stages.csv";
    private const string ThrowsFile = "falls.csv";

    private static readonly Lazy<FallTable> Shipped = new(() =>
    {
        using var stages = Open(StagesFile);
        using var throws = Open(ThrowsFile);
        return Read(stages, StagesFile, throws, ThrowsFile);
    });

    /// <summary>The table that the program ships; read once.</summary>
    public static FallTable Table => Shipped.Value;

    /// <summary>Reads a table from its two files.</summary>
    /// <exception cref="InvalidDataException">A fault, with the file, the line and the column.</exception>
    public static FallTable Read(TextReader stages, string stagesName, TextReader throws, string throwsName)
    {
        var falls = new Dictionary<(FallWay, int), FallThatIs>();
        foreach (var row in Rows(stages, stagesName, StageColumns))
        {
            var fall = FallOf(row);
            if (!falls.TryAdd((fall.Way, fall.Stage), fall))
                throw row.Fault("stage", "this fall is there twice; take one out");
            if (fall.Stage > FallWords.FirstStage && !falls.ContainsKey((fall.Way, fall.Stage - 1)))
                throw row.Fault("stage", $"stage {fall.Stage} comes after stage {fall.Stage - 1} of the same fall; add that line above, or put it there");
        }

        var lines = new List<ThrowFall>();
        var seen = new HashSet<(string, ThrowHand)>();
        foreach (var row in Rows(throws, throwsName, ThrowColumns))
        {
            var line = ThrowOf(row, falls);
            if (!seen.Add((line.Name.ToUpperInvariant(), line.Hand)))
                throw row.Fault("technique", $"{line.Name} is there twice for this hand; take one out");
            lines.Add(line);
        }

        return new FallTable([.. falls.Values], lines);
    }

    private static FallThatIs FallOf(Row row)
    {
        var way = WayOf(row, "direction", $"{row.Needed("direction")} {row.Needed("side")}".Replace(" none", "", StringComparison.Ordinal));
        return new FallThatIs(way, StageOf(row, "stage"), row.Needed("how"), row.Needed("source"));
    }

    private static ThrowFall ThrowOf(Row row, Dictionary<(FallWay, int), FallThatIs> falls)
    {
        FallWay[] ways = [.. row.Needed("falls").Split(';', StringSplitOptions.TrimEntries).Select(w => WayOf(row, "falls", w))];
        if (ways.Distinct().Count() != ways.Length)
            throw row.Fault("falls", "one way is there twice; take one out");
        var hand = row.Needed("hand") switch
        {
            "right" => ThrowHand.Right,
            "left" => ThrowHand.Left,
            _ => throw row.Fault("hand", "say right or left"),
        };
        var reap = row.Needed("backward reap") switch
        {
            "yes" => true,
            "no" => false,
            _ => throw row.Fault("backward reap", "say yes or no"),
        };
        var line = new ThrowFall(
            row.Needed("technique"), row.Maybe("then"), hand, ways, StageOf(row, "first drill"), StageOf(row, "free drill"), reap, row.Needed("source"));
        foreach (var (column, stage) in new[] { ("first drill", line.FirstDrill), ("free drill", line.FreeDrill) })
        {
            foreach (var way in ways.Where(w => !falls.ContainsKey((w, stage))))
                throw row.Fault(column, $"there is no fall {FallWords.Of(way)} at stage {stage} in the list of falls; add it there or change the stage");
        }

        return line.FreeDrill < line.FirstDrill
            ? throw row.Fault("free drill", $"a free drill asks at least the stage {line.FirstDrill} of the first drill")
            : line;
    }

    private static FallWay WayOf(Row row, string column, string text) => text switch
    {
        "back" => new FallWay(FallDirection.Back, FallSide.None),
        "side left" => new FallWay(FallDirection.Side, FallSide.Left),
        "side right" => new FallWay(FallDirection.Side, FallSide.Right),
        "front" => new FallWay(FallDirection.Front, FallSide.None),
        "rolling left" => new FallWay(FallDirection.Rolling, FallSide.Left),
        "rolling right" => new FallWay(FallDirection.Rolling, FallSide.Right),
        _ => throw row.Fault(column, $"\"{text}\" is not a fall; write back, side left, side right, front, rolling left or rolling right"),
    };

    private static int StageOf(Row row, string column) =>
        int.TryParse(row.Needed(column), NumberStyles.None, CultureInfo.InvariantCulture, out var stage) && stage is >= FallWords.FirstStage and <= FallWords.LastStage
            ? stage
            : throw row.Fault(column, $"\"{row.Needed(column)}\" is not a stage; write a number from {FallWords.FirstStage} to {FallWords.LastStage}");

    private static List<Row> Rows(TextReader text, string fileName, IReadOnlyList<string> columns)
    {
        ArgumentNullException.ThrowIfNull(text);
        using var csv = new CsvReader(text, new CsvConfiguration(CultureInfo.InvariantCulture)
        {
            DetectColumnCountChanges = true,
            IgnoreBlankLines = true,
            TrimOptions = TrimOptions.Trim,
        }, leaveOpen: true);
        var rows = new List<Row>();
        try
        {
            if (!csv.Read() || !csv.ReadHeader())
                throw Fault(fileName, 1, columns[0], "the file is empty; write the line of columns");
            var header = csv.HeaderRecord ?? [];
            foreach (var column in columns)
            {
                if (header.Count(h => h == column) != 1)
                    throw Fault(fileName, 1, column, "the column must be there once; add it, or take the second out");
            }

            if (header.FirstOrDefault(h => !columns.Contains(h)) is { } strange)
                throw Fault(fileName, 1, strange, "the format does not know this column; take it out or mend its spelling");
            while (csv.Read())
                rows.Add(new Row(fileName, csv.Parser.RawRow, columns.ToDictionary(c => c, c => csv.GetField(c) ?? "")));
        }
        catch (BadDataException fault)
        {
            throw Fault(fileName, fault.Context?.Parser?.RawRow ?? 0, null, "the line has a stray quotation mark, or more or fewer cells than there are columns; mend it");
        }

        return rows;
    }

    private static StreamReader Open(string name) => new(
        typeof(StarterFalls).Assembly.GetManifestResourceStream("starter/" + name) ?? throw new InvalidOperationException($"The program was built without starter/{name}."),
        Encoding.UTF8);

    private static InvalidDataException Fault(string fileName, int line, string? column, string what) =>
        new(string.Create(CultureInfo.InvariantCulture, $"{fileName}, line {line}{(column is null ? "" : $", column {column}")}: {what}."));

    private sealed record Row(string FileName, int Line, Dictionary<string, string> Cells)
    {
        public string? Maybe(string column) => Cells[column] is { Length: > 0 } said ? said : null;

        public string Needed(string column) => Maybe(column) ?? throw Fault(column, "the cell is empty; fill it");

        public InvalidDataException Fault(string column, string what) => StarterFalls.Fault(FileName, Line, column, what);
    }
}
