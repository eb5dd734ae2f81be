using System.Globalization;
using Keikocho.Paper.Layout;
using Keikocho.Paper.Sheets;

namespace Keikocho.Paper.Knocks;

/// <summary>The knock slip: handed over the same evening, with what to watch for and when nothing comes back before.</summary>
public static class KnockSlipPaper
{
    // "Important"; a word of the club's own notices.
    private const string Slip = "大切";
    private const int PenLines = 2;
    private static readonly double[] Sizes = [12, 11.5, 11, 10.5, 10, 9.5];

    /// <summary>The slip as a PDF; one page in the largest type at which it is one, and more pages where much was written.</summary>
    /// <exception cref="ArgumentException">Club, child, number or whom to speak to is missing.</exception>
    public static PaperResult Draw(KnockSlipContent content, PaperSize size) => PdfWriter.Write(Lay(content, size));

    internal static Draft Lay(KnockSlipContent content, PaperSize size)
    {
        ArgumentNullException.ThrowIfNull(content);
        if (new[] { content.Club, content.Child, content.EmergencyNumber, content.SpeakTo }.Any(string.IsNullOrWhiteSpace))
            throw new ArgumentException("A knock slip names the club, the child, the emergency number and whom to speak to.", nameof(content));
        var title = "A knock to the head";
        var frame = new SheetFrame(
            content.Club, title, Slip, [["For the family of ", new Words(content.Child, true)], [PaperDate.Full(content.On)]], content.Child, content.PrintedOn, null, content.SpeakTo);
        return SectionPages.Lay(
            frame, SheetFormat.Of(size), $"{title}, {PaperDate.Day(content.On)}", Sections(content), Sizes,
            ["Handed over by", "Received by", "Day and time"]);
    }

    private static IReadOnlyList<PaperSection> Sections(KnockSlipContent content) =>
    [
        new("What happened", [Plain($"{PaperDate.Full(content.On)}, {content.When}. What was going on: {content.Activity}.")]),
        new("What was seen", [.. content.Seen.Select(Plain)], content.Seen.Count == 0 ? PenLines : 0),
        new("What was done", [.. content.Done.Select(Plain)], content.Done.Count == 0 ? PenLines : 0),
        new($"Ring {content.EmergencyNumber} at once with any of these",
        [
            .. content.Signs.Select(s => Plain($"– {s}")),
            Plain("A child can look well for hours and then not be. Do not leave the child alone tonight, and look in during the night."),
            Plain("To be seen or spoken to by a doctor or another clinician within 24 hours, even if nothing is seen. This slip judges nothing: it is no medical advice."),
        ]),
        new("Before the child comes back",
        [
            [new Words($"Do not return to judo until an adult of the club has written advice in hand and says so. Not before {PaperDate.Full(content.EarliestFalls)} for falls and contact.", true)],
            Plain(content.SymptomsFreeFrom is { } free
                ? $"That is the earliest day, counted from {PaperDate.Day(content.On)} and from {PaperDate.Day(free)}, the first day without any symptom. It moves later if a symptom comes back."
                : $"That is the earliest there can be, if no symptom is ever seen. It is later with any symptom: {content.SymptomFreeDays.ToString(CultureInfo.InvariantCulture)} days are counted from the first day without one."),
            Plain("Tell the club that first day, and every day on which something is felt again. School and quiet days come before sport. Advice must be written, and not older than the first day without symptoms."),
        ]),
    ];

    private static IReadOnlyList<Words> Plain(string text) => [text];
}
