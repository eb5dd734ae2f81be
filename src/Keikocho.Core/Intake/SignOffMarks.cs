using System.Globalization;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;

namespace Keikocho.Core.Intake;

/// <summary>Makes sightings of the cells of a sign-off grid and sets them beside those that are held.</summary>
internal sealed class SignOffMarks(SignOffQuestion question, SignOffTable table, DoubtBook book, List<string> notes)
{
    private const string LeaveOut = "leave-out";
    private const string BeforeToday = "before-today";
    private readonly HashSet<DateOnly> lessons = [.. question.Lessons];
    private readonly ILookup<(PersonId, string), (DateOnly Day, HeldSeen Seen)> held =
        question.Held.ToLookup(pair => (pair.Key.Person, pair.Key.Item), pair => (pair.Key.Day, pair.Value));
    private readonly Dictionary<(PersonId Person, string Item, DateOnly Day), Found> found = [];
    private string? worth;

    internal IReadOnlyList<SignOffMark> Read(IReadOnlyList<RegisterDraft> lines, IReadOnlyList<SignOffColumn> columns)
    {
        var dated = new List<(Where At, SignOffDate Date)>();
        var ticks = new List<Where>();
        foreach (var line in lines)
            foreach (var column in columns)
            {
                var cell = table.Sheet[line.At, column.At];
                if (cell.IsEmpty || cell.Kind == CellKind.Error) continue;
                var at = new Where(line.Who!.Value.Person!.Value, column.Item!, line.At, column.At);
                var date = SignOffDate.Read(cell, table.Sheet.From1904, question.Today.Year + 1);
                if (date.IsDate) dated.Add((at, date));
                else ticks.Add(at);
            }

        var dayFirst = Order(dated);
        var (yearKnown, year) = Year(dated);
        var signs = new SignOffSigns(ticks.Select(tick => (CellOf(tick), table.Place(tick.Row, tick.Column))), book);
        var speaking = ticks.Where(tick => signs.Read(CellOf(tick)) is not null).ToList();
        if (dated.Count + speaking.Count > 0)
        {
            worth = book.Ask("worth", DoubtKind.TickWorth, "Say what a sign-off in this grid is worth: seen good on one evening, or settled, so that no second evening is asked.",
                [new("one-evening", "Seen good on one evening"), new("settled", "Settled: no second evening is asked")], "one-evening");
        }

        foreach (var (at, date) in dated)
        {
            if (date.IsAmbiguous && dayFirst is null || date.NeedsYear && !yearKnown) continue;
            if (date.Under(dayFirst ?? true, year, question.Today) is not { } day) notes.Add($"{Capital(table.Place(at.Row, at.Column))}: there is no day '{RosterLineReader.Short(CellOf(at).Text)}' in that year, so it was left out.");
            else if (LessonOf(day, at) is { } evening) Add(at, evening, SeenWord.Good);
        }

        if (speaking.Count > 0 && Evening(speaking.Count) is { } last)
            foreach (var at in speaking) Undated(at, last, signs.Read(CellOf(at))!.Value);
        return worth is null ? [] : [.. found.Select(pair => Standing(pair.Key, pair.Value)).OrderBy(mark => mark.Row).ThenBy(mark => mark.Column)];
    }

    private Cell CellOf(Where at) => table.Sheet[at.Row, at.Column];

    // One date that can only be read one way proves the order for all; two that prove both, or none, are asked about.
    private bool? Order(List<(Where At, SignOffDate Date)> dated)
    {
        var either = dated.Where(mark => mark.Date.IsAmbiguous).ToList();
        if (either.Count == 0) return true;
        var onlyDay = dated.Any(mark => mark.Date.Witness == true);
        var onlyMonth = dated.Any(mark => mark.Date.Witness == false);
        if (onlyDay != onlyMonth) return onlyDay;
        var (at, sample) = either[0];
        int OnLessons(bool dayFirst) => either.Count(mark => mark.Date.Under(dayFirst, null, question.Today) is { } day && lessons.Contains(day));
        var (day, month) = (OnLessons(true), OnLessons(false));
        var (asDay, asMonth) = (Said(sample, true), Said(sample, false));
        var answer = book.Ask("order", DoubtKind.DateOrder,
            $"In {table.Place(at.Row, at.Column)}, '{RosterLineReader.Short(CellOf(at).Text)}' is {asDay} with the day first, or {asMonth} with the month first; say which holds for all.",
            [new(DateOrder.DayFirst, $"Day first: {asDay}"), new(DateOrder.MonthFirst, $"Month first: {asMonth}")],
            day > month ? DateOrder.DayFirst : month > day ? DateOrder.MonthFirst : null);
        return answer is null ? null : answer == DateOrder.DayFirst;
    }

    private string Said(SignOffDate date, bool dayFirst) => date.Under(dayFirst, null, question.Today)?.Full() ?? "no day";

    private (bool Known, int? Year) Year(List<(Where At, SignOffDate Date)> dated)
    {
        var without = dated.Where(mark => mark.Date.NeedsYear).ToList();
        if (without.Count == 0) return (true, null);
        var (at, _) = without[0];
        var answer = book.Ask("year", DoubtKind.YearMissing,
            $"{(without.Count == 1 ? "1 date has" : $"{without.Count} dates have")} no year, the first is '{RosterLineReader.Short(CellOf(at).Text)}' in {table.Place(at.Row, at.Column)}; take for each the latest such day up to today, or type the year.",
            [new("latest", "For each the latest such day up to today")], "latest", TypedAnswer.Year);
        return answer is null ? (false, null) : (true, answer == "latest" ? null : int.Parse(answer[1..], CultureInfo.InvariantCulture));
    }

    // The evening of a written date: that lesson, or by an answer the one before it. Asked once a date, not once a cell.
    private DateOnly? LessonOf(DateOnly day, Where at)
    {
        if (day <= question.Today && lessons.Contains(day)) return day;
        var place = table.Place(at.Row, at.Column);
        if (day > question.Today)
        {
            book.Ask($"day:{day.Iso()}", DoubtKind.DateToCome, $"In {place}, {day.WithWeekday()} is still to come; leave it out, or set the file right and read it again.", [new(LeaveOut, "Leave it out")]);
            return null;
        }

        var before = LastBefore(day);
        List<Offer> offers = before is { } nearest ? [new("before", $"The lesson before it, {nearest.WithWeekday()}"), new(LeaveOut, "Leave it out")] : [new(LeaveOut, "Leave it out")];
        var answer = book.Ask($"day:{day.Iso()}", DoubtKind.NoLessonThatDay, before is null
                ? $"In {place}, no lesson was held on {day.WithWeekday()} or before; leave it out, or put the lesson into the calendar first. The answer holds for every sign-off of that day."
                : $"In {place}, no lesson was held on {day.WithWeekday()}; take the lesson before it, or leave it out. The answer holds for every sign-off of that day.",
            offers, before is null ? LeaveOut : "before");
        return answer == "before" ? before : null;
    }

    private DateOnly? LastBefore(DateOnly day) => question.Lessons.Where(lesson => lesson < day).Select(lesson => (DateOnly?)lesson).Max();

    private DateOnly? Evening(int count)
    {
        var last = LastBefore(question.Today.AddDays(1));
        // A grid is often read before the bow: a lesson of today then is still to come, so the one before it is offered as well.
        var earlier = last == question.Today ? LastBefore(question.Today) : null;
        List<Offer> offers = [];
        if (earlier is { } one) offers.Add(new(BeforeToday, $"The last lesson before today, {one.WithWeekday()}"));
        if (last is { } some) offers.Add(new("last", some == question.Today ? $"Today’s lesson, {some.WithWeekday()}" : $"The last lesson, {some.WithWeekday()}"));
        offers.Add(new(LeaveOut, "Leave them out"));
        var answer = book.Ask("tick:date", DoubtKind.TickWithoutDate,
            $"{(count == 1 ? "1 sign-off has" : $"{count} sign-offs have")} no date; say on which evening {(count == 1 ? "it was" : "they were")} seen: {(earlier is null ? "the last lesson" : "the lesson before today, today’s")}, or type a day.", offers, null,
            TypedAnswer.Date, value => DoubtBook.TypedDate(value) is { } day && day <= question.Today, []);
        if (answer is null or LeaveOut) return null;
        if (answer == "last") return last;
        if (answer == BeforeToday) return earlier;
        var typed = DoubtBook.TypedDate(answer[1..])!.Value;
        if (lessons.Contains(typed)) return typed;
        var before = LastBefore(typed);
        notes.Add(before is { } nearest
            ? $"No lesson was held on {typed.WithWeekday()}; the sign-offs without a date were put to the lesson before it, {nearest.WithWeekday()}."
            : $"No lesson was held on {typed.WithWeekday()} or before; the sign-offs without a date were left out.");
        return before;
    }

    // A tick without a date says "seen good" once. Where that is held already of any evening, it says nothing new: the same grid, read
    // again weeks later, makes no second evening.
    private void Undated(Where at, DateOnly evening, SeenWord word)
    {
        var same = held[(at.Person, at.Item)].Where(one => one.Seen.Word == word).ToList();
        Add(at, same.Count > 0 ? same.Max(one => one.Day) : evening, word);
    }

    private void Add(Where at, DateOnly day, SeenWord word)
    {
        var key = (at.Person, at.Item, day);
        if (!found.TryGetValue(key, out var first)) found.Add(key, new(at, word));
        else if (first.Word != word)
        {
            var less = (SeenWord)Math.Max((int)first.Word, (int)word);
            notes.Add($"{Capital(table.Place(at.Row, at.Column))} says {Say(word)}, {table.Place(first.At.Row, first.At.Column)} says {Say(first.Word)} of the same child, item and evening: {Say(less)} was taken.");
            found[key] = first with { Word = less };
        }
    }

    private SignOffMark Standing((PersonId Person, string Item, DateOnly Day) key, Found one)
    {
        var (row, column) = table.InFile(one.At.Row, one.At.Column);
        var settled = one.Word == SeenWord.Good && worth == "settled";
        SignOffMark Mark(HeldSeen? seen, MarkStanding standing) => new(key.Person, key.Item, key.Day, one.Word, settled, seen, standing, row, column);
        if (!question.Held.TryGetValue(key, out var seen)) return Mark(null, MarkStanding.New);
        // That a sign-off settles it was answered once for the whole grid, so it is not asked again for each.
        if (seen.Word == one.Word) return Mark(seen, settled && !seen.Settled ? MarkStanding.Take : MarkStanding.Same);
        var answer = book.Ask($"mark:{key.Person.Value:D}:{key.Item}:{key.Day.Iso()}", DoubtKind.Differs,
            $"{Capital(table.Place(one.At.Row, one.At.Column))}: {key.Day.Full()} is held as {Say(seen.Word)}, the file says {Say(one.Word)}; take the file's, or leave it.",
            [new("take", $"Take the file's: {Say(one.Word)}"), new("leave", $"Leave it: {Say(seen.Word)}")], "leave");
        return Mark(seen, answer switch { "take" => MarkStanding.Take, "leave" => MarkStanding.Leave, _ => MarkStanding.Open });
    }

    private static string Capital(CellPlace place) => place.ToString() is var text ? char.ToUpperInvariant(text[0]) + text[1..] : "";

    private static string Say(SeenWord? word) => word switch { SeenWord.Good => "good", SeenWord.Prompted => "prompted", SeenWord.NotYet => "not yet", _ => "not agreed" };

    private readonly record struct Where(PersonId Person, string Item, int Row, int Column);

    private sealed record Found(Where At, SeenWord Word);
}
