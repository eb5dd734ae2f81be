using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Core.Names;
using Keikocho.Core.Syllabus;

namespace Keikocho.Core.Intake;

/// <summary>Everything a reading of a sign-off grid depends on.</summary>
/// <param name="Sheet">The sheet.</param>
/// <param name="Today">The club's date today.</param>
/// <param name="Known">The persons the club has.</param>
/// <param name="Erased">Those who were erased.</param>
/// <param name="Items">The items of the club's syllabus.</param>
/// <param name="Techniques">The names by which techniques are found.</param>
/// <param name="Lessons">Days on which a lesson of the programme was held, in order.</param>
/// <param name="Held">What the club has, by person, item key and day; a leader's suggestion is not there until it is confirmed.</param>
/// <param name="Answers">The answers given so far.</param>
public sealed record SignOffQuestion(
    Sheet Sheet,
    DateOnly Today,
    IReadOnlyList<KnownPerson> Known,
    ErasedPersons Erased,
    IReadOnlyList<Item> Items,
    NameIndex Techniques,
    IReadOnlyList<DateOnly> Lessons,
    IReadOnlyDictionary<(PersonId Person, string Item, DateOnly Day), HeldSeen> Held,
    Answers Answers);

/// <summary>What is held of one child, one item and one evening.</summary>
/// <param name="Word">The word; null where two adults disagree.</param>
/// <param name="Settled">It counts as enough by itself.</param>
public readonly record struct HeldSeen(SeenWord? Word, bool Settled = false);

/// <summary>How a sign-off grid is laid out.</summary>
public enum SignOffLayout
{
    /// <summary>No grid was found.</summary>
    None,
    /// <summary>Children down, items across.</summary>
    ChildrenDown,
    /// <summary>Items down, children across.</summary>
    ItemsDown,
}

/// <summary>One item of the grid.</summary>
/// <param name="At">Column of the file, or row when the items run down.</param>
/// <param name="Heading">The heading as written.</param>
/// <param name="Item">Key of the item; null while it is open or when it was left out.</param>
/// <param name="LeftOut">Why it was left out; empty otherwise.</param>
public sealed record SignOffColumn(int At, string Heading, string? Item, string LeftOut);

/// <summary>One sighting of the grid.</summary>
/// <param name="Person">Whose.</param>
/// <param name="Item">Key of the item.</param>
/// <param name="Day">The evening.</param>
/// <param name="Word">Good, prompted, not yet.</param>
/// <param name="Settled">The club counts this tick as enough by itself.</param>
/// <param name="Held">What is held for that evening; null when nothing is.</param>
/// <param name="Standing">What is to become of it.</param>
/// <param name="Row">Row of the file, from 1.</param>
/// <param name="Column">Column of the file, from 1.</param>
public sealed record SignOffMark(
    PersonId Person, string Item, DateOnly Day, SeenWord Word, bool Settled, HeldSeen? Held, MarkStanding Standing, int Row, int Column);

/// <summary>A sign-off grid as read so far.</summary>
/// <param name="Layout">How it is laid out.</param>
/// <param name="Lines">The children, in the file's order.</param>
/// <param name="Columns">The items, in the file's order.</param>
/// <param name="Marks">The sightings, in the file's order.</param>
/// <param name="Doubts">What a person must settle.</param>
/// <param name="Notes">What was done without asking: sentences.</param>
/// <param name="Cells">What became of every cell that holds something.</param>
public sealed record SignOffReading(
    SignOffLayout Layout,
    IReadOnlyList<RegisterLine> Lines,
    IReadOnlyList<SignOffColumn> Columns,
    IReadOnlyList<SignOffMark> Marks,
    IReadOnlyList<Doubt> Doubts,
    IReadOnlyList<string> Notes,
    IReadOnlyList<CellFate> Cells)
{
    /// <summary>Every doubt has its answer: it may be saved.</summary>
    public bool IsSettled => Doubts.All(doubt => doubt.IsSettled);

    /// <summary>How many sightings have a standing.</summary>
    public int Count(MarkStanding standing) => Marks.Count(mark => mark.Standing == standing);
}
