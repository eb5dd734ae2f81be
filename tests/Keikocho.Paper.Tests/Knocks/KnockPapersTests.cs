using Keikocho.Core.Safety;
using Keikocho.Paper.Knocks;
using Keikocho.Testing;
using Xunit;

namespace Keikocho.Paper.Tests;

public sealed class KnockPapersTests
{
    private static readonly DateOnly Day = new(2026, 3, 3);

    private static readonly KnockSlipContent Slip = new(
        "Osier Quay Judo Club", "Anselm Hart", Day, Day, "at the lesson of 17:30, marked at 18:12", "game",
        ["Ran into another child, bumped the right side of the head. Said that he felt dizzy for a minute."], ["Sat out beside Maren, cold cloth. His mother was rung at 18:15."],
        WatchFor.Signs, "999 or 112", new DateOnly(2026, 3, 24), null, 14, "Maren");

    private static readonly AccidentRecordContent Record = new(
        "Osier Quay Judo Club", "Anselm Hart", new DateOnly(2026, 3, 10), Day, "at the lesson of 17:30, marked at 18:12", "Mill Lane hall", "game", "Maren Holt",
        [
            new("3 March 2026, 18:20", "Maren Holt", "Seen", "Ran into another child, right side of the head."),
            new("3 March 2026, 18:55", "Maren Holt", "Slip handed over", "to his mother"),
            new("10 March 2026, 17:05", "Piers Lund", "Added", "It was the left side."),
        ],
        "Maren");

    [Theory]
    [InlineData(PaperSize.A4)]
    [InlineData(PaperSize.Letter)]
    public void A_knock_slip_reads_as_committed(PaperSize size) =>
        Golden.Check($"tests/Keikocho.Paper.Tests/Golden/knock-slip-{size}.txt", PdfReading.Places(KnockSlipPaper.Draw(Slip, size).Pdf));

    [Theory]
    [InlineData(PaperSize.A4)]
    [InlineData(PaperSize.Letter)]
    public void An_accident_record_reads_as_committed(PaperSize size) =>
        Golden.Check($"tests/Keikocho.Paper.Tests/Golden/accident-record-{size}.txt", PdfReading.Places(AccidentRecordPaper.Draw(Record, size).Pdf));

    [Fact, Statement(25)]
    public void The_slip_is_one_page_with_the_signs_the_number_the_earliest_day_and_room_for_both_signatures()
    {
        foreach (var size in Enum.GetValues<PaperSize>())
        {
            var pdf = KnockSlipPaper.Draw(Slip, size).Pdf;
            Assert.Equal(1, PdfReading.PageCount(pdf));
            var text = Text(pdf);
            Assert.All(
                WatchFor.Signs.Append("Ring 999 or 112 at once with any of these").Append("Not before Tuesday 24 March 2026 for falls and contact.").Append("Do not return to judo until")
                    .Append("Handed over by").Append("Received by").Append("What was going on: game.").Append("His mother was rung at 18:15."),
                part => Assert.Contains(part, text, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Where_nothing_is_written_yet_there_is_room_for_a_pen_and_the_slip_is_printed_all_the_same() =>
        Assert.Equal(1, PdfReading.PageCount(KnockSlipPaper.Draw(Slip with { Seen = [], Done = [] }, PaperSize.A4).Pdf));

    [Fact]
    public void With_a_first_day_without_symptoms_it_says_so() => Assert.Contains(
        "counted from 3 March 2026 and from 9 March 2026, the first day without any symptom", Text(KnockSlipPaper.Draw(Slip with { SymptomsFreeFrom = new DateOnly(2026, 3, 9) }, PaperSize.A4).Pdf), StringComparison.Ordinal);

    [Fact, Statement(30)]
    public void A_record_has_every_line_in_its_order_with_name_and_time()
    {
        var text = Text(AccidentRecordPaper.Draw(Record, PaperSize.A4).Pdf);
        var at = 0;
        foreach (var part in new[] { "Seen: 3 March 2026, 18:20, Maren Holt", "right side of the head", "Slip handed over", "Added: 10 March 2026, 17:05, Piers Lund", "It was the left side." })
        {
            var next = text.IndexOf(part, at, StringComparison.Ordinal);
            Assert.True(next >= at, part);
            at = next;
        }
    }

    [Fact]
    public void A_long_record_goes_on_and_is_not_cut()
    {
        var pdf = AccidentRecordPaper.Draw(Record with { Lines = [.. Enumerable.Range(1, 60).Select(i => new AccidentRecordLine("3 March 2026, 18:20", "Maren Holt", "Added", $"Line {i} of the record."))] }, PaperSize.Letter).Pdf;
        Assert.True(PdfReading.PageCount(pdf) > 1);
        Assert.All(Enumerable.Range(1, 60), i => Assert.Contains($"Line {i} of the record.", Text(pdf), StringComparison.Ordinal));
    }

    [Fact]
    public void Without_child_or_number_there_is_no_paper()
    {
        Assert.Throws<ArgumentException>(() => KnockSlipPaper.Draw(Slip with { EmergencyNumber = " " }, PaperSize.A4));
        Assert.Throws<ArgumentException>(() => AccidentRecordPaper.Draw(Record with { Child = "" }, PaperSize.A4));
    }

    private static string Text(byte[] pdf) => PdfReading.Flowing(pdf).Replace('\n', ' ');
}
