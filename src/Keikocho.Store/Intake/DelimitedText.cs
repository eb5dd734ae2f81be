using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;
using Keikocho.Core.Intake;

namespace Keikocho.Store.Intake;

/// <summary>Reads text with separators: comma, semicolon, tab or bar; quotes; any line ends.</summary>
internal static class DelimitedText
{
    private static readonly (char Sign, string Name)[] Separators = [(',', "comma"), (';', "semicolon"), ('\t', "tab"), ('|', "bar")];
    private const int SampleCharacters = 64 << 10;
    private const int RowsBetweenReports = 512;

    internal static TableReading Read(Stream file, string fileName, ReadLimits limits, IProgress<double>? progress, CancellationToken cancel)
    {
        var (encoding, mark, said) = TextEncoding.Of(file, fileName);
        file.Position = mark;
        var sample = new char[SampleCharacters];
        int length;
        using (var reader = new StreamReader(file, encoding, detectEncodingFromByteOrderMarks: false, bufferSize: 4096, leaveOpen: true)) length = reader.ReadBlock(sample, 0, sample.Length);
        var separator = Separator(sample.AsSpan(0, length));
        var notes = new List<string> { $"The file is {said}; its columns are parted by {(separator.Sign == '\0' ? "nothing: there is one" : "a " + separator.Name)}." };

        file.Position = mark;
        var configuration = new CsvConfiguration(CultureInfo.InvariantCulture)
        {
            Delimiter = separator.Sign == '\0' ? "," : separator.Sign.ToString(),
            HasHeaderRecord = false,
            IgnoreBlankLines = false,
            BadDataFound = null,
            MaxFieldSize = limits.CellCharacters,
            DetectColumnCountChanges = false,
            Mode = CsvMode.RFC4180,
        };
        using var text = new SameLineEnds(new StreamReader(file, encoding, detectEncodingFromByteOrderMarks: false, bufferSize: 65536, leaveOpen: true));
        using var parser = new CsvParser(text, configuration);
        var count = new CellCount(fileName, limits);
        var rows = new List<IReadOnlyList<Cell>>();
        try
        {
            while (parser.Read())
            {
                if (rows.Count % RowsBetweenReports == 0)
                {
                    cancel.ThrowIfCancellationRequested();
                    progress?.Report(file.Length == 0 ? 1 : (double)file.Position / file.Length);
                }
                if (rows.Count == 0 && parser.Count == 1 && parser[0].StartsWith("sep=", StringComparison.OrdinalIgnoreCase) && parser[0].Length <= 5)
                {
                    rows.Add([]);
                    continue;
                }
                if (parser.Count > 1 << 14) throw count.TooWide();
                var cells = new Cell[parser.Count];
                for (var i = 0; i < cells.Length; i++) cells[i] = Cell.OfText(parser[i]);
                rows.Add(count.Take(cells, cells.Length));
                if (rows.Count > limits.Rows * 12L) throw new RefusedException($"'{fileName}' has more than {limits.Rows * 12L:#,0} lines, nearly all blank; delete the blank lines and read it again.");
            }
        }
        catch (MaxFieldSizeException)
        {
            return new TableReading.Refused($"'{fileName}' has a cell of more than {limits.CellCharacters:#,0} characters after line {parser.RawRow}; a quotation mark may be missing there. Set the file right and read it again.");
        }
        while (rows.Count > 0 && rows[^1].Count == 0) rows.RemoveAt(rows.Count - 1);
        if (rows.Count == 0) return new TableReading.Refused($"'{fileName}' holds nothing but blanks; choose the file that holds the club's list.");
        return new TableReading.Read([new Sheet(Path.GetFileNameWithoutExtension(fileName), rows)], notes);
    }

    // The separator that parts the most lines into the same number of columns; more columns decide between equals.
    private static (char Sign, string Name) Separator(ReadOnlySpan<char> sample)
    {
        var text = sample.ToString();
        if (text.StartsWith("sep=", StringComparison.OrdinalIgnoreCase) && text.Length > 4 && Array.Find(Separators, one => one.Sign == text[4]) is { Sign: not '\0' } said) return said;
        var best = ('\0', "nothing");
        var bestScore = 0.0;
        foreach (var separator in Separators)
        {
            var counts = Counts(sample, separator.Sign);
            if (counts.Count == 0) continue;
            var parted = counts.Where(one => one > 0).ToList();
            if (parted.Count == 0) continue;
            var usual = parted.GroupBy(one => one).OrderByDescending(group => group.Count()).ThenByDescending(group => group.Key).First();
            var score = (double)usual.Count() / counts.Count * (1 + Math.Min(usual.Key, 50) / 100.0);
            if (score > bestScore) (best, bestScore) = (separator, score);
        }
        return best;
    }

    private static List<int> Counts(ReadOnlySpan<char> sample, char separator)
    {
        var counts = new List<int>();
        var quoted = false;
        int here = 0, letters = 0;
        foreach (var letter in sample)
        {
            if (letter == '"') quoted = !quoted;
            if (!quoted && letter is '\n' or '\r')
            {
                if (letters > 0) counts.Add(here);
                (here, letters) = (0, 0);
                if (counts.Count == 200) return counts;
                continue;
            }
            if (!quoted && letter == separator) here++;
            letters++;
        }
        if (letters > 0) counts.Add(here);
        return counts;
    }
}
