using Keikocho.Core.Kernel;

namespace Keikocho.Core.Intake;

/// <summary>Everything a reading of a roster depends on.</summary>
/// <param name="Sheet">The sheet.</param>
/// <param name="Today">The club's date today; ages and two-digit years need it.</param>
/// <param name="SaidByColumn">What the instructor said columns mean, by column from 1.</param>
/// <param name="Ranks">The ladder's ranks in the club's words, lowest first; empty when there is no ladder yet: ranks are then kept as written.</param>
/// <param name="Known">The persons the club has.</param>
/// <param name="Erased">Those who were erased.</param>
/// <param name="Answers">The answers given so far.</param>
public sealed record RosterQuestion(
    Sheet Sheet,
    DateOnly Today,
    IReadOnlyDictionary<int, ColumnMeaning> SaidByColumn,
    IReadOnlyList<string> Ranks,
    IReadOnlyList<KnownPerson> Known,
    ErasedPersons Erased,
    Answers Answers);

/// <summary>What is to become of one line.</summary>
public enum LineStanding
{
    /// <summary>A child the club does not have yet.</summary>
    New,
    /// <summary>Already here.</summary>
    Known,
    /// <summary>Set aside: not saved.</summary>
    SetAside,
    /// <summary>Waits for an answer.</summary>
    Open,
}

/// <summary>One value that the file has otherwise than the club.</summary>
/// <param name="Field">What it is: "rank", "birth date".</param>
/// <param name="Old">What is held; empty when nothing is.</param>
/// <param name="New">What the file says.</param>
/// <param name="Take">True: take the file's; false: leave; null: not answered.</param>
public sealed record Difference(string Field, string Old, string New, bool? Take);

/// <summary>One line of the roster.</summary>
/// <param name="Rows">Its row, and the rows joined to it.</param>
/// <param name="Child">What it says; nothing but an empty child for a line that was set aside.</param>
/// <param name="Standing">What is to become of it.</param>
/// <param name="Person">Who it is, when already here.</param>
/// <param name="Differences">What differs from what is held.</param>
/// <param name="Why">The reason, for a line set aside; empty otherwise.</param>
public sealed record RosterLine(
    IReadOnlyList<int> Rows,
    RosterChild Child,
    LineStanding Standing,
    PersonId? Person,
    IReadOnlyList<Difference> Differences,
    string Why);

/// <summary>A roster as read so far: what is certain, what is in doubt, and what became of every cell.</summary>
/// <param name="Columns">Where the table lies and what its columns tell.</param>
/// <param name="Lines">The lines, in the file's order.</param>
/// <param name="Doubts">What a person must settle, in the file's order, whole columns first.</param>
/// <param name="Notes">What was done without asking: sentences.</param>
/// <param name="Cells">What became of every cell that holds something.</param>
public sealed record RosterReading(
    ColumnsGuess Columns,
    IReadOnlyList<RosterLine> Lines,
    IReadOnlyList<Doubt> Doubts,
    IReadOnlyList<string> Notes,
    IReadOnlyList<CellFate> Cells)
{
    /// <summary>Every doubt has its answer: it may be saved.</summary>
    public bool IsSettled => Doubts.All(doubt => doubt.IsSettled);

    /// <summary>Children the club does not have yet.</summary>
    public int New => Lines.Count(line => line.Standing == LineStanding.New);

    /// <summary>Already here with nothing to change.</summary>
    public int Unchanged => Lines.Count(line => line.Standing == LineStanding.Known && line.Differences.Count == 0);

    /// <summary>Already here with values that differ.</summary>
    public int Changed => Lines.Count(line => line.Standing == LineStanding.Known && line.Differences.Count > 0);

    /// <summary>Lines set aside.</summary>
    public int SetAside => Lines.Count(line => line.Standing == LineStanding.SetAside);
}
