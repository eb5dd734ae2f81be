using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;

namespace Keikocho.Core.Intake;

/// <summary>Makes sightings of the cells of a sign-off grid and sets them beside those that are held.</summary>
internal sealed class SignOffMarks(SignOffQuestion question, SignOffTable table, DoubtBook book, List<string> notes)
{
    private const string LeaveOut = "leave-out";
    private readonly List<SignOffMark> marks = [];
    private readonly HashSet<(PersonId, string, DateOnly)> taken = [];

    internal IReadOnlyList<SignOffMark> Read(IReadOnlyList<RegisterDraft> lines, IReadOnlyList<SignOffColumn> columns)
    {
        var dated = new List<(PersonId Person, SignOffColumn Column, int Row, DateRead Date)>();
        var ticks = new List<(PersonId Person, SignOffColumn Column, int Row)>();
        foreach (var line in lines)
            foreach (var column in columns)
            {
                var cell = table.Sheet[line.At, column.At];
                if (cell.IsEmpty || cell.Kind == CellKind.Error) continue;
                var date = IsTick(cell) ? default : DateForms.Read(cell, table.Sheet.From1904, question.Today.Year + 1);
                if (date.IsDate) dated.Add((line.Who!.Value.Person!.Value, column, line.At, date));
                else ticks.Add((line.Who!.Value.Person!.Value, column, line.At));
            }

        var worth = dated.Count + ticks.Count == 0 ? null : book.Ask("worth", DoubtKind.TickWorth,
            "Say what a sign-off in this grid is worth: seen good on one evening, or settled, so that no second evening is asked.",
            [new("one-evening", "Seen good on one evening"), new("settled", "Settled: no second evening is asked")], "one-evening");
        var dayFirst = Order(dated);
        foreach (var (person, column, row, date) in dated)
        {
            if (date.IsAmbiguous && dayFirst is null) continue;
            Add(person, column, row, LessonOf(date.Under(dayFirst ?? true)!.Value, row, column.At), SeenWord.Good, worth);
        }

        var signs = new SignOffSigns(ticks.Select(tick => (table.Sheet[tick.Row, tick.Column.At], table.Place(tick.Row, tick.Column.At))), book);
        var speaking = ticks.Where(tick => signs.Read(table.Sheet[tick.Row, tick.Column.At]) is not null).ToList();
        if (speaking.Count == 0) return Done();
        var evening = Evening(speaking.Count);
        foreach (var (person, column, row) in speaking) Add(person, column, row, evening, signs.Read(table.Sheet[row, column.At])!.Value, worth);
        return Done();
    }

    private List<SignOffMark> Done() => [.. marks.OrderBy(mark => mark.Row).ThenBy(mark => mark.Column)];

    // Small numbers are ticks, not day numbers.
    private static bool IsTick(Cell cell) => cell.Kind is CellKind.Boolean || cell.Kind == CellKind.Number && cell.Number is >= 0 and <= 5;

    private bool? Order(List<(PersonId Person, SignOffColumn Column, int Row, DateRead Date)> dated)
    {
        var either = dated.Where(mark => mark.Date.IsAmbiguous).ToList();
        if (either.Count == 0) return true;
        var onlyDay = dated.Any(mark => mark.Date is { DayFirst: not null, MonthFirst: null });
        var onlyMonth = dated.Any(mark => mark.Date is { DayFirst: null, MonthFirst: not null });
        if (onlyDay != onlyMonth) return onlyDay;
        var (_, column, row, sample) = either[0];
        var held = question.Lessons.ToHashSet();
        var (day, month) = (either.Count(mark => held.Contains(mark.Date.DayFirst!.Value)), either.Count(mark => held.Contains(mark.Date.MonthFirst!.Value)));
        var answer = book.Ask("order", DoubtKind.DateOrder,
            $"In {table.Place(row, column.At)}, '{table.Sheet[row, column.At].Text}' is {sample.DayFirst!.Value.Full()} with the day first, or {sample.MonthFirst!.Value.Full()} with the month first; say which holds for all.",
            [new(DateOrder.DayFirst, $"Day first: {sample.DayFirst!.Value.Full()}"), new(DateOrder.MonthFirst, $"Month first: {sample.MonthFirst!.Value.Full()}")],
            day > month ? DateOrder.DayFirst : month > day ? DateOrder.MonthFirst : null);
        return answer is null ? null : answer == DateOrder.DayFirst;
    }

    // The evening of a written date: that lesson, or by an answer the one before it. Asked once a date, not once a cell.
    private DateOnly? LessonOf(DateOnly day, int row, int column)
    {
        if (question.Lessons.Contains(day)) return day;
        var place = table.Place(row, column);
        if (day > question.Today)
        {
            book.Ask($"day:{day.Iso()}", DoubtKind.DateToCome, $"In {place}, {day.WithWeekday()} is still to come; leave it out, or set the file right and read it again.", [new(LeaveOut, "Leave it out")]);
            return null;
        }

        var before = question.Lessons.Where(lesson => lesson < day).Select(lesson => (DateOnly?)lesson).LastOrDefault();
        List<Offer> offers = before is { } nearest ? [new("before", $"The lesson before it, {nearest.WithWeekday()}"), new(LeaveOut, "Leave it out")] : [new(LeaveOut, "Leave it out")];
        var answer = book.Ask($"day:{day.Iso()}", DoubtKind.NoLessonThatDay,
            $"In {place}, no lesson was held on {day.WithWeekday()}; take the lesson before it, or leave it out. The answer holds for every sign-off of that day.", offers, before is null ? LeaveOut : "before");
        return answer == "before" ? before : null;
    }

    private DateOnly? Evening(int count)
    {
        var last = question.Lessons.Where(lesson => lesson <= question.Today).Select(lesson => (DateOnly?)lesson).LastOrDefault();
        List<Offer> offers = last is { } some ? [new("last", $"The last lesson, {some.WithWeekday()}"), new(LeaveOut, "Leave them out")] : [new(LeaveOut, "Leave them out")];
        var answer = book.Ask("tick:date", DoubtKind.TickWithoutDate,
            $"{(count == 1 ? "1 sign-off has" : $"{count} sign-offs have")} no date; say on which evening {(count == 1 ? "it was" : "they were")} seen: the last lesson, or type a day.", offers, null, TypedAnswer.Date);
        if (answer is null or LeaveOut) return null;
        if (answer == "last") return last;
        var typed = DoubtBook.TypedDate(answer[1..])!.Value;
        if (question.Lessons.Contains(typed)) return typed;
        var before = question.Lessons.Where(lesson => lesson < typed).Select(lesson => (DateOnly?)lesson).LastOrDefault();
        if (before is { } nearest) notes.Add($"No lesson was held on {typed.WithWeekday()}; the sign-offs without a date were put to the lesson before it, {nearest.WithWeekday()}.");
        else notes.Add($"No lesson was held on {typed.WithWeekday()} or before; the sign-offs without a date were left out.");
        return before;
    }

    private void Add(PersonId person, SignOffColumn column, int row, DateOnly? evening, SeenWord word, string? worth)
    {
        if (evening is not { } day || worth is null || !taken.Add((person, column.Item!, day))) return;
        var (fileRow, fileColumn) = table.InFile(row, column.At);
        var settled = word == SeenWord.Good && worth == "settled";
        if (!question.Held.TryGetValue((person, column.Item!, day), out var held))
        {
            marks.Add(new(person, column.Item!, day, word, settled, null, MarkStanding.New, fileRow, fileColumn));
            return;
        }

        if (held == word)
        {
            marks.Add(new(person, column.Item!, day, word, settled, held, MarkStanding.Same, fileRow, fileColumn));
            return;
        }

        var answer = book.Ask($"mark:{person.Value:D}:{column.Item}:{day.Iso()}", DoubtKind.Differs,
            $"{table.Place(row, column.At)}: {day.Full()} is held as {Say(held)}, the file says {Say(word)}; take the file's, or leave it.",
            [new("take", $"Take the file's: {Say(word)}"), new("leave", $"Leave it: {Say(held)}")], "leave");
        marks.Add(new(person, column.Item!, day, word, settled, held, answer switch { "take" => MarkStanding.Take, "leave" => MarkStanding.Leave, _ => MarkStanding.Open }, fileRow, fileColumn));
    }

    private static string Say(SeenWord word) => word switch { SeenWord.Good => "good", SeenWord.Prompted => "prompted", _ => "not yet" };
}
