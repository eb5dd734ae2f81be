using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;

namespace Keikocho.Store.Starter;

/// <summary>Which way a word is asked.</summary>
public enum WordAsked
{
    /// <summary>Called in Japanese, answered in English.</summary>
    CalledInJapanese = 1,
    /// <summary>Asked in English, answered in Japanese.</summary>
    CalledInEnglish = 2,
    /// <summary>Either way.</summary>
    Both = 3,
}

/// <summary>A word with its meaning.</summary>
/// <param name="Romaji">As a child reads it; two words may be written alike.</param>
/// <param name="Kana">Kana.</param>
/// <param name="Kanji">Kanji, or kana where it is written so.</param>
/// <param name="English">Meaning.</param>
/// <param name="Answers">What counts.</param>
/// <param name="Topic">"command", "referee", "body".</param>
/// <param name="Asked">Which way it is asked.</param>
/// <param name="Safety">A word that stops everything.</param>
/// <param name="Source">How we know each part: "term=read;english=read;kanji=memory;kana=memory".</param>
public sealed record VocabularyWord(
    string Romaji, string Kana, string Kanji, string English, IReadOnlyList<string> Answers, string Topic, WordAsked Asked, bool Safety, string Source);

/// <summary>Words as a CSV text: docs/formats/starter.md.</summary>
public static class VocabularyText
{
    private static readonly string[] Columns = ["romaji", "kana", "kanji", "english", "answers", "topic", "asked", "safety", "source"];

    private static readonly WordList<WordAsked> Ways = new(
        ("called in Japanese", WordAsked.CalledInJapanese), ("called in English", WordAsked.CalledInEnglish), ("both", WordAsked.Both));

    private static readonly WordList<bool> YesNo = new(("yes", true), ("no", false));

    /// <summary>Reads the words; all of them or none.</summary>
    public static TextReading<IReadOnlyList<VocabularyWord>> Read(string text, string fileName)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(fileName);
        var trace = new TextTrace(fileName);
        var words = new List<VocabularyWord>();
        using var reader = new StringReader(text);
        using var csv = new CsvParser(reader, new CsvConfiguration(CultureInfo.InvariantCulture) { BadDataFound = null, Mode = CsvMode.RFC4180 });
        var row = 1;
        while (csv.Read())
        {
            var cells = csv.Record ?? [];
            if (row == 1 && !cells.SequenceEqual(Columns))
            {
                trace.Fault(1, "", $"The first line must be {string.Join(",", Columns)}; write it so.");
                break;
            }

            if (row > 1) words.Add(Word(cells, row, trace));
            // A cell may hold line ends: the next row begins where the parser stands.
            row = csv.RawRow + 1;
        }

        if (row == 1) trace.Fault(1, "", "The file is empty; write a line of columns and the words.");
        return trace.Faults.Count > 0
            ? new TextReading<IReadOnlyList<VocabularyWord>>.Faulty(trace.Sorted())
            : new TextReading<IReadOnlyList<VocabularyWord>>.Read(words);
    }

    private static VocabularyWord Word(string[] cells, int line, TextTrace trace)
    {
        if (cells.Length != Columns.Length)
        {
            trace.Fault(line, "", string.Create(CultureInfo.InvariantCulture, $"The line has {cells.Length} cells and not {Columns.Length}; mend its commas."));
            return new VocabularyWord("", "", "", "", [], "", WordAsked.Both, false, "");
        }

        for (var i = 0; i < cells.Length; i++)
        {
            if (string.IsNullOrWhiteSpace(cells[i])) trace.Fault(line, Columns[i], "This cell is empty; write something.");
        }

        return new VocabularyWord(
            cells[0], cells[1], cells[2], cells[3], cells[4].Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries),
            cells[5], Of(cells[6], Ways, "asked", line, trace), Of(cells[7], YesNo, "safety", line, trace), cells[8]);
    }

    private static T Of<T>(string cell, WordList<T> words, string column, int line, TextTrace trace)
        where T : struct
    {
        if (words.Of(cell) is { } value) return value;
        trace.Fault(line, column, $"\"{cell}\" is none of its words; write one of {words.All}.");
        return default;
    }
}
