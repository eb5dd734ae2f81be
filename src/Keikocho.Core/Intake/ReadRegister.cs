using Keikocho.Core.Kernel;

namespace Keikocho.Core.Intake;

/// <summary>Reads a register as clubs keep it: a grid either way round, or one row a mark.</summary>
/// <remarks>Pure: the same question gives the same reading; the answers are part of the next question.</remarks>
public static class ReadRegister
{
    /// <summary>What the sheet says, what is in doubt, and what became of every cell.</summary>
    public static RegisterReading Read(RegisterQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        var book = new DoubtBook(question.Answers);
        var latestYear = question.Today.Year + 1;
        if (RegisterTable.Find(question.Sheet, turned: false, latestYear, fewest: 2) is { } grid) return RegisterGrid.Read(question, grid, book);
        if (RegisterRows.Find(question.Sheet, latestYear) is { } rows) return rows.Read(question, book);
        var other = RegisterTable.Find(question.Sheet, turned: true, latestYear, fewest: 2)
            ?? RegisterTable.Find(question.Sheet, turned: false, latestYear, fewest: 1)
            ?? RegisterTable.Find(question.Sheet, turned: true, latestYear, fewest: 1);
        if (other is not null) return RegisterGrid.Read(question, other, book);
        book.Ask("nothing", DoubtKind.NothingFound, $"Sheet '{question.Sheet.Name}' has no dates with marks and names beside them; choose another sheet.", []);
        return new(RegisterLayout.None, [], [], [], book.Doubts, [], Fates(question.Sheet, (_, _) => (Fate.Ignored, "no register was found")));
    }

    internal static List<CellFate> Fates(Sheet sheet, Func<int, int, (Fate Fate, string Why)> of)
    {
        var fates = new List<CellFate>();
        for (var row = 1; row <= sheet.Rows; row++)
            for (var column = 1; column <= sheet.Width(row); column++)
                if (!sheet[row, column].IsEmpty)
                {
                    var (fate, why) = of(row, column);
                    fates.Add(new(row, column, fate, why));
                }
        return fates;
    }

    /// <summary>A date without marks, and a date to come: asked, or left.</summary>
    internal static DayStanding Standing(DateOnly day, bool marks, DateOnly today, string key, string place, DoubtBook book, List<string> notes)
    {
        if (marks && day <= today) return DayStanding.Held;
        if (marks)
        {
            var left = book.Ask($"to-come:{key}", DoubtKind.DateToCome, $"In {place}, {day.WithWeekday()} is still to come but has marks; leave the date out, or set the file right and read it again.", [new("leave-out", "Leave this date out")]);
            return left is null ? DayStanding.Open : DayStanding.LeftOut;
        }
        if (day > today)
        {
            notes.Add($"{day.Full()} ({place}) is still to come and was left.");
            return DayStanding.LeftOut;
        }
        return book.Ask($"empty:{key}", DoubtKind.DateWithoutMarks, $"In {place}, {day.WithWeekday()} has no mark at all: was the hall closed, or was the register forgotten?",
            [new("closed", "Closed: no lesson was held"), new("forgotten", "Held, but the register was forgotten"), new("leave-out", "Leave this date out")]) switch
        {
            "closed" => DayStanding.Closed,
            "forgotten" => DayStanding.Forgotten,
            "leave-out" => DayStanding.LeftOut,
            _ => DayStanding.Open,
        };
    }
}
