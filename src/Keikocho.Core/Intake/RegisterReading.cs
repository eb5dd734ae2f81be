using Keikocho.Core.Kernel;

namespace Keikocho.Core.Intake;

/// <summary>A word of the register, as a file says it.</summary>
public enum RegisterWord
{
    /// <summary>Here.</summary>
    Present = 1,
    /// <summary>Did not come.</summary>
    Absent = 2,
    /// <summary>Did not come and told us.</summary>
    Excused = 3,
    /// <summary>Here, but late; with a time, or without: then a lesson and no ukemi evening.</summary>
    Late = 4,
}

/// <summary>What is held or read for one person and one day.</summary>
/// <param name="Word">The word.</param>
/// <param name="Arrived">Arrival, local to the hall; in a file only with late, from a tap also with present in time.</param>
public readonly record struct RegisterSays(RegisterWord Word, TimeOnly? Arrived);

/// <summary>Who a line of the register is.</summary>
/// <param name="Person">The person already here; null for a child that is new.</param>
/// <param name="NewKey">For a new child, its folded name (and "#2" for a second of that name); null otherwise.</param>
public readonly record struct LineWho(PersonId? Person, string? NewKey);

/// <summary>Everything a reading of a register depends on.</summary>
/// <param name="Sheet">The sheet.</param>
/// <param name="Today">The club's date today.</param>
/// <param name="Known">The persons the club has.</param>
/// <param name="Held">The marks the club has, by person and day.</param>
/// <param name="Erased">Those who were erased.</param>
/// <param name="Answers">The answers given so far.</param>
public sealed record RegisterQuestion(
    Sheet Sheet,
    DateOnly Today,
    IReadOnlyList<KnownPerson> Known,
    IReadOnlyDictionary<(PersonId Person, DateOnly Day), RegisterSays> Held,
    ErasedPersons Erased,
    Answers Answers);

/// <summary>How a register is laid out.</summary>
public enum RegisterLayout
{
    /// <summary>No register was found.</summary>
    None,
    /// <summary>Children down, dates across.</summary>
    ChildrenDown,
    /// <summary>Dates down, children across.</summary>
    DatesDown,
    /// <summary>One row a mark.</summary>
    OneRowAMark,
}

/// <summary>One child's line (a row, a column or a name that returns).</summary>
/// <param name="At">Row of the file, or column when the dates run down; the first, where there are several.</param>
/// <param name="Name">The name as written.</param>
/// <param name="Who">Who it is; null while it is open or when it was set aside.</param>
/// <param name="New">For a new child, the name in its parts; null otherwise.</param>
/// <param name="SetAside">Why it was set aside; empty otherwise.</param>
public sealed record RegisterLine(int At, string Name, LineWho? Who, RosterChild? New, string SetAside);

/// <summary>What is to become of a mark.</summary>
public enum MarkStanding
{
    /// <summary>Not held yet.</summary>
    New,
    /// <summary>Held already with the same word.</summary>
    Same,
    /// <summary>Held with another word: take the file's.</summary>
    Take,
    /// <summary>Held with another word: leave it.</summary>
    Leave,
    /// <summary>Held with another word: not answered.</summary>
    Open,
}

/// <summary>One mark of the register.</summary>
/// <param name="Who">Whose.</param>
/// <param name="Day">The day.</param>
/// <param name="Says">The word, and the time for late.</param>
/// <param name="Held">What is held; null when nothing is.</param>
/// <param name="Standing">What is to become of it.</param>
/// <param name="Row">Row of the file, from 1.</param>
/// <param name="Column">Column of the file, from 1.</param>
public sealed record RegisterMark(LineWho Who, DateOnly Day, RegisterSays Says, RegisterSays? Held, MarkStanding Standing, int Row, int Column);

/// <summary>What a date of the register is.</summary>
public enum DayStanding
{
    /// <summary>A lesson with marks.</summary>
    Held,
    /// <summary>No marks: the hall was closed.</summary>
    Closed,
    /// <summary>No marks: the lesson was held, the register forgotten.</summary>
    Forgotten,
    /// <summary>Left out.</summary>
    LeftOut,
    /// <summary>Waits for an answer.</summary>
    Open,
}

/// <summary>One date of the register.</summary>
/// <param name="Day">The day.</param>
/// <param name="Standing">What it is.</param>
/// <param name="At">Column of the file, or row when the dates run down; the first row for one row a mark.</param>
public sealed record RegisterDay(DateOnly Day, DayStanding Standing, int At);

/// <summary>A register as read so far.</summary>
/// <param name="Layout">How it is laid out.</param>
/// <param name="Lines">The children, in the file's order.</param>
/// <param name="Days">The dates, in order of the calendar.</param>
/// <param name="Marks">The marks by day, then by place in the file. A lesson's blanks are here too where they mean absent.</param>
/// <param name="Doubts">What a person must settle.</param>
/// <param name="Notes">What was done without asking: sentences.</param>
/// <param name="Cells">What became of every cell that holds something.</param>
public sealed record RegisterReading(
    RegisterLayout Layout,
    IReadOnlyList<RegisterLine> Lines,
    IReadOnlyList<RegisterDay> Days,
    IReadOnlyList<RegisterMark> Marks,
    IReadOnlyList<Doubt> Doubts,
    IReadOnlyList<string> Notes,
    IReadOnlyList<CellFate> Cells)
{
    /// <summary>Every doubt has its answer: it may be saved.</summary>
    public bool IsSettled => Doubts.All(doubt => doubt.IsSettled);

    /// <summary>How many marks have a standing.</summary>
    public int Count(MarkStanding standing) => Marks.Count(mark => mark.Standing == standing);
}
