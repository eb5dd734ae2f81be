using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Keikocho.Core.Intake;

namespace Keikocho.Store.Intake;

/// <summary>A file as it is read at this moment: against the answers given and the club as it is now.</summary>
/// <param name="Kind">Roster, register or sign-off grid.</param>
/// <param name="Sheet">The sheet that is read.</param>
/// <param name="Roster">The roster; null for the others.</param>
/// <param name="Register">The register; null for the others.</param>
/// <param name="Ladder">The ladder that the file's ranks make; null where the programme has one, and for the others.</param>
/// <param name="Hours">The hours answered for days of the week without any; null where nothing was asked or answered.</param>
/// <param name="Doubts">Everything a person must settle, what holds for the whole file first.</param>
/// <param name="Notes">What was done without asking: sentences.</param>
/// <param name="SignOffs">The sign-off grid with what it was read against; null for the others.</param>
public sealed record ReadingView(
    ReadingKind Kind,
    Sheet Sheet,
    RosterReading? Roster,
    RegisterReading? Register,
    DraftLadder? Ladder,
    Hours? Hours,
    IReadOnlyList<Doubt> Doubts,
    IReadOnlyList<string> Notes,
    SignOffView? SignOffs = null)
{
    /// <summary>Every doubt has its answer: it may be saved.</summary>
    public bool IsSettled => Doubts.All(doubt => doubt.IsSettled);

    /// <summary>The doubts without an answer.</summary>
    public IEnumerable<Doubt> Open => Doubts.Where(doubt => !doubt.IsSettled);

    /// <summary>
    /// The open doubts to be asked now. While the order of dates or names is open, only what holds for the whole file is: many questions about single
    /// lines answer themselves by it.
    /// </summary>
    public IReadOnlyList<Doubt> AskedNow => Open.Any(doubt => doubt.Kind is DoubtKind.NothingFound or DoubtKind.DateOrder or DoubtKind.DatesSwapped or DoubtKind.NameOrder or DoubtKind.YearMissing)
        ? [.. Open.Where(ReadAgain.IsWhole)] : [.. Open];

    /// <summary>What the independent check says against it; empty when nothing.</summary>
    public IReadOnlyList<string> Faults() => Roster is not null ? ReadingCheck.Faults(Sheet, Roster)
        : SignOffs is not null ? ReadingCheck.Faults(SignOffs.Question, SignOffs.Reading) : ReadingCheck.Faults(Sheet, Register!);

    /// <summary>A digest of what saving would do, so that nothing else is saved than what was looked at.</summary>
    public string Fingerprint()
    {
        var text = new StringBuilder();
        if (Roster is not null)
        {
            foreach (var line in Roster.Lines)
            {
                text.Append(CultureInfo.InvariantCulture, $"{line.Rows[0]}|{line.Standing}|{line.Person?.Value}|{line.Child.NameKey}|{line.Child.BirthDate?.DayNumber}|{line.Child.Rank}");
                foreach (var difference in line.Differences) text.Append(CultureInfo.InvariantCulture, $"|{difference.Field}={difference.Old}>{difference.New}:{difference.Take}");
                text.Append('\n');
            }
        }

        foreach (var mark in Register?.Marks ?? [])
            text.Append(CultureInfo.InvariantCulture, $"{mark.Who.Person?.Value}{mark.Who.NewKey}|{mark.Day.DayNumber}|{mark.Says.Word}{mark.Says.Arrived?.Ticks}|{mark.Standing}\n");
        foreach (var day in Register?.Days ?? []) text.Append(CultureInfo.InvariantCulture, $"{day.Day.DayNumber}|{day.Standing}\n");
        foreach (var mark in SignOffs?.Reading.Marks ?? [])
            text.Append(CultureInfo.InvariantCulture, $"{mark.Person.Value}|{mark.Item}|{mark.Day.DayNumber}|{mark.Word}{mark.Settled}|{mark.Standing}\n");
        foreach (var rank in Ladder?.Ranks ?? []) text.Append(rank.Name).Append('\n');
        text.Append(CultureInfo.InvariantCulture, $"{Hours?.Start.Ticks}-{Hours?.End.Ticks}");
        return Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())))[..32];
    }
}

/// <summary>A sign-off grid as it is read at this moment.</summary>
/// <param name="Question">What it was read against.</param>
/// <param name="Reading">What it says.</param>
public sealed record SignOffView(SignOffQuestion Question, SignOffReading Reading);

/// <summary>Reads the stored sheets of a file again: a pure function of sheets, answers, day and club.</summary>
public static class ReadAgain
{
    /// <summary>Answer key of the sheet that is read, a number from 1.</summary>
    public const string SheetKey = "sheet";

    /// <summary>Beginning of the answer keys of columns: "column:3" is a <see cref="ColumnMeaning"/>.</summary>
    public const string ColumnKey = "column:";

    /// <summary>Reads.</summary>
    public static ReadingView Read(ReadingKind kind, IReadOnlyList<Sheet> sheets, Answers answers, ClubFacts facts, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(sheets);
        ArgumentNullException.ThrowIfNull(answers);
        ArgumentNullException.ThrowIfNull(facts);
        ArgumentOutOfRangeException.ThrowIfZero(sheets.Count);
        var sheet = sheets[SheetNumber(answers, sheets.Count) - 1];
        return kind switch
        {
            ReadingKind.Roster => Roster(sheet, answers, facts, today),
            ReadingKind.SignOffs => SignOffs(sheet, answers, facts, today),
            _ => Register(sheet, answers, facts, today),
        };
    }

    /// <summary>Which sheet is read, from 1.</summary>
    public static int SheetNumber(Answers answers, int sheets)
    {
        ArgumentNullException.ThrowIfNull(answers);
        return answers.ByKey.TryGetValue(SheetKey, out var said) && int.TryParse(said, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= 1 && number <= sheets ? number : 1;
    }

    /// <summary>What the instructor said columns mean.</summary>
    public static IReadOnlyDictionary<int, ColumnMeaning> Said(Answers answers)
    {
        ArgumentNullException.ThrowIfNull(answers);
        var said = new Dictionary<int, ColumnMeaning>();
        foreach (var (key, value) in answers.ByKey)
            if (key.StartsWith(ColumnKey, StringComparison.Ordinal) && int.TryParse(key.AsSpan(ColumnKey.Length), NumberStyles.None, CultureInfo.InvariantCulture, out var column)
                && column >= 1 && Enum.TryParse<ColumnMeaning>(value, out var meaning) && Enum.IsDefined(meaning))
                said[column] = meaning;
        return said;
    }

    private static ReadingView Roster(Sheet sheet, Answers answers, ClubFacts facts, DateOnly today)
    {
        var reading = ReadRoster.Read(new RosterQuestion(sheet, today, Said(answers), [.. facts.Ranks.Select(r => r.Name)], facts.Known, facts.Erased, answers));
        var ladder = facts.Ranks.Count > 0 ? null : LadderFromWords.Draft(reading.Lines.Where(line => line.Standing != LineStanding.SetAside).Select(line => line.Child.Rank), answers);
        var notes = new List<string>(reading.Notes);
        foreach (var column in reading.Columns.Columns.Where(column => column.Meaning is ColumnMeaning.Notes or ColumnMeaning.Group))
            notes.Add(column.Meaning == ColumnMeaning.Notes
                ? $"Column {CellPlace.Letters(column.Column)} ('{column.Header}') holds free notes, in which medical words may stand: it is not kept."
                : $"Column {CellPlace.Letters(column.Column)} ('{column.Header}') is not kept: the whole list goes to the programme that is chosen here.");
        foreach (var rank in ladder?.Ranks.Where(rank => rank.Spellings.Count > 1) ?? [])
            notes.Add($"{string.Join(" and ", rank.Spellings.Select(spelling => $"'{spelling}'"))} are one rank, {rank.Name}.");
        return new(ReadingKind.Roster, sheet, reading, null, ladder, null, [.. Whole(reading.Doubts, true), .. ladder?.Doubts ?? [], .. Whole(reading.Doubts, false)], notes);
    }

    private static ReadingView Register(Sheet sheet, Answers answers, ClubFacts facts, DateOnly today)
    {
        var reading = ReadRegister.Read(new RegisterQuestion(sheet, today, facts.Known, facts.Held, facts.Erased, answers));
        var missing = reading.Days.Where(day => day.Standing is DayStanding.Held or DayStanding.Forgotten && !facts.Lessons.ContainsKey(day.Day) && facts.HourOn(day.Day) is null).Select(day => day.Day).ToList();
        var (hours, asked) = RegisterHours.Ask(missing, [.. facts.Hours.Select(h => new Hours(h.Start, h.End))], answers);
        List<Doubt> extra = asked is null ? [] : [asked];
        return new(ReadingKind.Register, sheet, null, reading, null, hours, [.. Whole(reading.Doubts, true), .. extra, .. Whole(reading.Doubts, false)], reading.Notes);
    }

    private static ReadingView SignOffs(Sheet sheet, Answers answers, ClubFacts facts, DateOnly today)
    {
        var seen = facts.SignOffs ?? throw new ArgumentException("The club was looked at for another kind of file.", nameof(facts));
        var question = new SignOffQuestion(sheet, today, facts.Known, facts.Erased, seen.Syllabus.Items, seen.Syllabus.Techniques, seen.Days, seen.Held, answers);
        var reading = ReadSignOffs.Read(question);
        return new(ReadingKind.SignOffs, sheet, null, null, null, null, [.. Whole(reading.Doubts, true), .. Whole(reading.Doubts, false)], reading.Notes, new SignOffView(question, reading));
    }

    private static IEnumerable<Doubt> Whole(IEnumerable<Doubt> doubts, bool whole) => doubts.Where(doubt => IsWhole(doubt) == whole);

    // An answer that holds for a column, a sign or the whole file settles many lines at once, so it is asked first.
    internal static bool IsWhole(Doubt doubt) => doubt.Kind is DoubtKind.NothingFound or DoubtKind.DateOrder or DoubtKind.DatesSwapped or DoubtKind.NameOrder or DoubtKind.RankUnknown or DoubtKind.ConsentUnknown
        or DoubtKind.PhoneLostZero or DoubtKind.SignUnknown or DoubtKind.BlankMeaning or DoubtKind.YearMissing or DoubtKind.DateWithoutMarks or DoubtKind.DateToCome or DoubtKind.DateTwice
        or DoubtKind.WhichItem or DoubtKind.TickWithoutDate or DoubtKind.TickWorth or DoubtKind.NoLessonThatDay;
}
