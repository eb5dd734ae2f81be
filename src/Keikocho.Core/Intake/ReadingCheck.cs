using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Core.Syllabus;

namespace Keikocho.Core.Intake;

/// <summary>Checks a reading against its sheet, independently of how it was made.</summary>
public static class ReadingCheck
{
    /// <summary>What is wrong with a roster's reading; empty when nothing is.</summary>
    public static IReadOnlyList<string> Faults(Sheet sheet, RosterReading reading)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(reading);
        var faults = Cells(sheet, reading.Cells);
        var rows = new HashSet<int>();
        foreach (var row in reading.Lines.SelectMany(line => line.Rows))
            if (!rows.Add(row)) faults.Add($"Row {row} is read twice.");
        foreach (var row in reading.Cells.Where(cell => cell.Fate == Fate.Read).Select(cell => cell.Row).Distinct())
            if (!rows.Contains(row)) faults.Add($"Row {row} is said to be read but is on no line.");
        var persons = new HashSet<object>();
        foreach (var person in reading.Lines.Where(line => line.Person is not null && line.Standing == LineStanding.Known).Select(line => line.Person!.Value))
            if (!persons.Add(person)) faults.Add("One person is on two lines.");
        foreach (var column in reading.Columns.Columns.Where(column => column.IsSetAside))
            if (reading.Cells.Any(cell => cell.Column == column.Column && cell.Fate == Fate.Read)) faults.Add($"Column {CellPlace.Letters(column.Column)} is set aside but was read.");
        foreach (var line in reading.Lines.Where(line => line.Standing == LineStanding.SetAside && RosterFields.Of(line.Child).Any(field => field.Text.Length > 0)))
            faults.Add($"Row {line.Rows[0]} is set aside but still holds values.");
        Doubts(reading.Doubts, reading.IsSettled, faults);
        if (reading.IsSettled && reading.Lines.Any(line => line.Standing == LineStanding.Open)) faults.Add("A line is open in a settled reading.");
        if (reading.IsSettled && reading.Lines.SelectMany(line => line.Differences).Any(difference => difference.Take is null)) faults.Add("A difference is not answered in a settled reading.");
        return faults;
    }

    /// <summary>What is wrong with a register's reading; empty when nothing is.</summary>
    public static IReadOnlyList<string> Faults(Sheet sheet, RegisterReading reading)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(reading);
        var faults = Cells(sheet, reading.Cells);
        var fates = new Dictionary<(int, int), Fate>();
        foreach (var cell in reading.Cells) fates[(cell.Row, cell.Column)] = cell.Fate;
        var who = reading.Lines.Where(line => line.Who is not null).Select(line => line.Who!.Value).ToHashSet();
        var held = reading.Days.Where(day => day.Standing == DayStanding.Held).Select(day => day.Day).ToHashSet();
        var marks = new HashSet<(LineWho, DateOnly)>();
        var places = new HashSet<(int, int)>();
        foreach (var mark in reading.Marks)
        {
            var place = sheet.Place(mark.Row, mark.Column);
            if (!marks.Add((mark.Who, mark.Day))) faults.Add($"{place}: a second mark of one child for one day.");
            if (!places.Add((mark.Row, mark.Column))) faults.Add($"{place}: read twice.");
            if (!who.Contains(mark.Who)) faults.Add($"{place}: a mark of nobody.");
            if (!held.Contains(mark.Day)) faults.Add($"{place}: a mark on a day that is not held.");
            if (!sheet[mark.Row, mark.Column].IsEmpty && fates.GetValueOrDefault((mark.Row, mark.Column)) != Fate.Read) faults.Add($"{place}: a mark of a cell that was not read.");
            if (mark.Says.Arrived is not null && mark.Says.Word != RegisterWord.Late) faults.Add($"{place}: an arrival without late.");
        }
        Doubts(reading.Doubts, reading.IsSettled, faults);
        if (reading.IsSettled && reading.Days.Any(day => day.Standing == DayStanding.Open)) faults.Add("A date is open in a settled reading.");
        if (reading.IsSettled && reading.Marks.Any(mark => mark.Standing == MarkStanding.Open)) faults.Add("A mark is open in a settled reading.");
        if (reading.IsSettled && reading.Lines.Any(line => line.Who is null && line.SetAside.Length == 0)) faults.Add("A line has nobody in a settled reading.");
        return faults;
    }

    /// <summary>What is wrong with a sign-off grid's reading; empty when nothing is.</summary>
    /// <param name="question">What was asked.</param>
    /// <param name="reading">What was read.</param>
    public static IReadOnlyList<string> Faults(SignOffQuestion question, SignOffReading reading)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(reading);
        var sheet = question.Sheet;
        var faults = Cells(sheet, reading.Cells);
        var fates = new Dictionary<(int, int), Fate>();
        foreach (var cell in reading.Cells) fates[(cell.Row, cell.Column)] = cell.Fate;
        var kinds = question.Items.ToDictionary(item => item.Key, item => item.Kind, StringComparer.Ordinal);
        var known = question.Known.Select(person => person.Id).ToHashSet();
        var who = new Dictionary<int, PersonId>();
        foreach (var line in reading.Lines)
        {
            if (line.New is not null || line.Who is { Person: null }) faults.Add($"Line {line.At} makes a new child, which a sign-off grid never does.");
            if (line.Who is { Person: { } person })
            {
                who.Add(line.At, person);
                if (!known.Contains(person)) faults.Add($"Line {line.At} is somebody who is not here.");
            }
        }

        var items = new Dictionary<int, string>();
        foreach (var column in reading.Columns)
        {
            if (column.Item is not { } item) continue;
            items.Add(column.At, item);
            if (column.LeftOut.Length > 0) faults.Add($"Column {column.At} is left out but has an item.");
            if (!kinds.TryGetValue(item, out var kind)) faults.Add($"Column {column.At} is no item of the syllabus.");
            else if (kind == ItemKind.Fall) faults.Add($"Column {column.At} is a fall, which is never taken from a paper.");
        }

        var lessons = question.Lessons.ToHashSet();
        var marks = new HashSet<(PersonId, string, DateOnly)>();
        foreach (var mark in reading.Marks)
        {
            var place = sheet.Place(mark.Row, mark.Column);
            var (line, column) = reading.Layout == SignOffLayout.ItemsDown ? (mark.Column, mark.Row) : (mark.Row, mark.Column);
            if (!marks.Add((mark.Person, mark.Item, mark.Day))) faults.Add($"{place}: a second sighting of one child, item and evening.");
            if (!who.TryGetValue(line, out var person) || person != mark.Person) faults.Add($"{place}: a sighting of another child than the line's.");
            if (!items.TryGetValue(column, out var item) || item != mark.Item) faults.Add($"{place}: a sighting of another item than the heading's.");
            if (sheet[mark.Row, mark.Column].IsEmpty || fates.GetValueOrDefault((mark.Row, mark.Column)) != Fate.Read) faults.Add($"{place}: a sighting of a cell that was not read.");
            if (mark.Day > question.Today) faults.Add($"{place}: a sighting on a day to come.");
            HeldSeen? held = question.Held.TryGetValue((mark.Person, mark.Item, mark.Day), out var seen) ? seen : null;
            if (held is null && !lessons.Contains(mark.Day)) faults.Add($"{place}: a sighting on a day without a lesson.");
            if (held != mark.Held) faults.Add($"{place}: what is held is said wrongly.");
            if (mark.Settled && mark.Word != SeenWord.Good) faults.Add($"{place}: only what was good is settled.");
            var agrees = held is { } all && all.Word == mark.Word && (all.Settled || !mark.Settled);
            var sound = mark.Standing switch
            {
                MarkStanding.New => held is null,
                MarkStanding.Same => agrees,
                _ => held is not null && !agrees,
            };
            if (!sound) faults.Add($"{place}: a sighting that is {mark.Standing} and cannot be.");
        }

        Doubts(reading.Doubts, reading.IsSettled, faults);
        if (reading.IsSettled && reading.Marks.Any(mark => mark.Standing == MarkStanding.Open)) faults.Add("A sighting is open in a settled reading.");
        if (reading.IsSettled && reading.Lines.Any(line => line.Who is null && line.SetAside.Length == 0)) faults.Add("A line has nobody in a settled reading.");
        if (reading.IsSettled && reading.Columns.Any(column => column.Item is null && column.LeftOut.Length == 0)) faults.Add("A heading has no item in a settled reading.");
        return faults;
    }

    private static List<string> Cells(Sheet sheet, IReadOnlyList<CellFate> fates)
    {
        var faults = new List<string>();
        var seen = new HashSet<(int, int)>();
        foreach (var fate in fates)
        {
            if (!seen.Add((fate.Row, fate.Column))) faults.Add($"{sheet.Place(fate.Row, fate.Column)} is accounted for twice.");
            if (sheet[fate.Row, fate.Column].IsEmpty) faults.Add($"{sheet.Place(fate.Row, fate.Column)} is accounted for but empty.");
            if (fate.Fate is Fate.Ignored or Fate.SetAside && fate.Why.Length == 0) faults.Add($"{sheet.Place(fate.Row, fate.Column)} is left without a reason.");
        }
        for (var row = 1; row <= sheet.Rows; row++)
            for (var column = 1; column <= sheet.Width(row); column++)
                if (!sheet[row, column].IsEmpty && !seen.Contains((row, column))) faults.Add($"{sheet.Place(row, column)} is not accounted for.");
        return faults;
    }

    private static void Doubts(IReadOnlyList<Doubt> doubts, bool settled, List<string> faults)
    {
        var keys = new HashSet<string>(StringComparer.Ordinal);
        foreach (var doubt in doubts)
        {
            if (!keys.Add(doubt.Key)) faults.Add($"The doubt '{doubt.Key}' is put twice.");
            if (doubt.Proposed is { } proposed && doubt.Offers.All(offer => offer.Code != proposed)) faults.Add($"The doubt '{doubt.Key}' proposes what it does not offer.");
            if (settled && !doubt.IsSettled) faults.Add($"The doubt '{doubt.Key}' is open in a settled reading.");
        }
    }
}
