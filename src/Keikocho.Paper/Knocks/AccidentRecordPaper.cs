using Keikocho.Paper.Layout;
using Keikocho.Paper.Sheets;

namespace Keikocho.Paper.Knocks;

/// <summary>The accident record for the file: every line as it was written, by whom and when; later lines stand below, nothing is overwritten.</summary>
public static class AccidentRecordPaper
{
    // "Record".
    private const string Slip = "記録";
    private static readonly double[] Sizes = [11, 10.5, 10, 9.5];

    /// <summary>The record as a PDF.</summary>
    /// <exception cref="ArgumentException">Club, child, who marked it or whom to speak to is missing.</exception>
    public static PaperResult Draw(AccidentRecordContent content, PaperSize size) => PdfWriter.Write(Lay(content, size));

    internal static Draft Lay(AccidentRecordContent content, PaperSize size)
    {
        ArgumentNullException.ThrowIfNull(content);
        if (new[] { content.Club, content.Child, content.MarkedBy, content.SpeakTo }.Any(string.IsNullOrWhiteSpace))
            throw new ArgumentException("An accident record names the club, the child, who marked it and whom to speak to.", nameof(content));
        var frame = new SheetFrame(
            content.Club, "Accident record", Slip, [[new Words(content.Child, true)], [PaperDate.Full(content.On)]], content.Child, content.PrintedOn, null, content.SpeakTo);
        IReadOnlyList<PaperSection> sections =
        [
            new("The knock",
            [
                [$"{PaperDate.Full(content.On)}, {content.When}{(content.Place is { } place ? $", {place}" : "")}."],
                [$"What was going on: {content.Activity}."],
                [$"Marked by {content.MarkedBy}."],
            ]),
            .. content.Lines.Select(l => new PaperSection($"{l.Says}: {l.Written}, {l.By}", [.. l.Words.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(w => (IReadOnlyList<Words>)[w])])),
            new(content.Lines.Count == 0 ? "Nothing is written yet" : "Written later", [["Facts only, no names of other children. What is added here is entered with name and time."]], 6),
        ];
        return SectionPages.Lay(frame, SheetFormat.Of(size), $"Accident record, {PaperDate.Day(content.On)}", sections, Sizes, ["Signed", "Day and time"]);
    }
}
