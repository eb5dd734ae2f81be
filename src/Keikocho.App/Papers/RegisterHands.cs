using Keikocho.App.Club;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Paper.Register;
using Keikocho.Store.Calendar;
using Keikocho.Store.Marks;

namespace Keikocho.App.Papers;

/// <summary>Who began a register and who finished it, from the acting adults of its marks (statement 6).</summary>
public static class RegisterHands
{
    /// <summary>Everybody who marked, in the order of their first mark; empty where nobody has, and then there is a line to sign on.</summary>
    public static IReadOnlyList<RegisterSignature> Of(OpenClub club, LessonRow lesson)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(lesson);
        var marks = AttendanceReader.MarksByHand(club.Db, lesson.Id);
        // Our own clock decides who came first; a tablet's clock may be a day wrong.
        var hands = FoldAttendance.MarkedBy(marks.Select(FoldMarks.AsMark))
            .Select(by => marks.Where(m => m.ById == by.Value).ToList())
            .Select(own => (By: own[0].ById!.Value, First: own.Min(m => m.ReceivedAt), Last: own.Max(m => m.ReceivedAt)))
            .OrderBy(h => h.First).ThenBy(h => h.By)
            .ToList();
        if (hands.Count == 0) return [];
        var finisher = hands.OrderBy(h => h.Last).ThenBy(h => h.By).Last();
        return [.. hands.Select(hand =>
        {
            var (began, finished) = (hand.By == hands[0].By, hand.By == finisher.By);
            var at = began && !finished ? hand.First : hand.Last;
            var part = (began, finished) switch { (true, true) => "took the register", (true, _) => "began it", (_, true) => "finished it", _ => "marked" };
            var day = club.Clock.DayOf(at);
            return new RegisterSignature(
                club.Book.Person(hand.By)?.FullName ?? "(not in the file)",
                club.Clock.TimeOf(at),
                day == lesson.Date ? part : $"{part} on {day.Full()}");
        })];
    }
}
