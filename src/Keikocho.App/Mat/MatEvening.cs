using System.Collections.Immutable;
using Keikocho.App.Pairs;

namespace Keikocho.App.Mat;

/// <summary>
/// What one tablet may know of its evening: names, belts, ends, who is here, what each child may safely do. No size, no contact, no
/// medical word, no reason of a stand-down, nothing of another evening's marks.
/// </summary>
/// <param name="Token">To send back with marks.</param>
/// <param name="Join">What the tablet is for.</param>
/// <param name="Clock">The hour at the club.</param>
/// <param name="Lessons">The lessons of the evening, by start.</param>
/// <param name="Adults">Adults and leaders on duty.</param>
/// <param name="Top">What stands in the top line whatever is shown.</param>
/// <param name="Activities">What may go on when there is a knock.</param>
/// <param name="Lacks">Changes when what each child lacks is to be fetched anew; empty for a junior leader, who never gets it.</param>
public sealed record MatEvening(
    string Token, MatJoin Join, MatClock Clock, ImmutableArray<MatLesson> Lessons, ImmutableArray<MatPerson> Adults, MatTop Top, ImmutableArray<MatWord> Activities, string Lacks);

/// <summary>What a tablet is for.</summary>
/// <param name="Id">The joining.</param>
/// <param name="Number">What the laptop calls it.</param>
/// <param name="Device">The tablet's id: marks of a wiped memory are told apart by it.</param>
/// <param name="Person">Who acts on it.</param>
/// <param name="Name">That person's name.</param>
/// <param name="Teaches">Whether an adult who teaches holds it; else a junior leader.</param>
/// <param name="Evening">The evening in words.</param>
/// <param name="Sequence">The highest count of this tablet that the laptop has.</param>
/// <param name="Date">The evening's date.</param>
/// <param name="EndsAt">Milliseconds since 1970, UTC.</param>
public sealed record MatJoin(Guid Id, int Number, Guid Device, Guid Person, string Name, bool Teaches, string Evening, int Sequence, DateOnly Date, long EndsAt);

/// <summary>The hour at the club, whatever the tablet's clock says.</summary>
/// <param name="Now">Milliseconds since 1970, UTC.</param>
/// <param name="Minute">Minutes since midnight at the club.</param>
public sealed record MatClock(long Now, int Minute);

/// <summary>One lesson of the evening.</summary>
/// <param name="Id">Its id names the day of a mark.</param>
/// <param name="Name">The programme.</param>
/// <param name="Start">Minutes since midnight.</param>
/// <param name="UkemiFrom">Minutes since midnight.</param>
/// <param name="UkemiTo">Minutes since midnight.</param>
/// <param name="Half">Minutes since midnight.</param>
/// <param name="End">Minutes since midnight.</param>
/// <param name="IsOn">False where it is to come: nobody can be here yet.</param>
/// <param name="Children">In register order.</param>
/// <param name="Care">What to take care of, by name.</param>
/// <param name="Items">What can be seen tonight, by end.</param>
/// <param name="Cards">The card of each end; one where the ends are joined.</param>
/// <param name="Pairs">Who works with whom, by end and activity.</param>
/// <param name="PlanB">The cards if one more adult is missing, for when the laptop is not reached; none for a junior leader, and none where plan B holds already.</param>
public sealed record MatLesson(
    Guid Id, string Name, int Start, int UkemiFrom, int UkemiTo, int Half, int End, bool IsOn,
    ImmutableArray<MatChild> Children, ImmutableArray<MatCare> Care, ImmutableArray<MatItem> Items, ImmutableArray<MatCard> Cards, ImmutableArray<MatPairs> Pairs, ImmutableArray<MatCard> PlanB);

/// <summary>One child on the register of a lesson.</summary>
/// <param name="Id">Who.</param>
/// <param name="Name">As called, with a second part where two share it.</param>
/// <param name="Full">Said when a tap asks once more.</param>
/// <param name="Ask">Another child has the same called name and belt: a tap asks once more.</param>
/// <param name="End">0 beginners' end, 1 main group.</param>
/// <param name="Belt">The rank in words.</param>
/// <param name="Drawing">Classes of the belt's drawing; null for none.</param>
/// <param name="Mark">Word of the look for its state: present, late, left, told, absent, or empty.</param>
/// <param name="Words">The state in words.</param>
/// <param name="Sign">The stamp's sign.</param>
/// <param name="Role">What the child may do tonight: throws and is thrown, tori only, moves alone, watches.</param>
/// <param name="AskAdult">The plain sign: there is something that an adult opens with a code. Never on a junior leader's tablet.</param>
/// <param name="CheckFirst">Whoever fetches the child is checked with an instructor first. Never on a junior leader's tablet, which says so of everybody.</param>
public sealed record MatChild(
    Guid Id, string Name, string Full, bool Ask, int End, string Belt, string? Drawing, string Mark, string Words, string Sign, string Role, bool AskAdult, bool CheckFirst);

/// <summary>An adult or leader on duty.</summary>
public sealed record MatPerson(Guid Id, string Name, string Duty, string Mark, string Words, string Sign);

/// <summary>What stands in the top line.</summary>
/// <param name="Adults">Adults needed and here.</param>
/// <param name="ShortBy">How many are missing.</param>
/// <param name="FirstAider">Who.</param>
/// <param name="NoFirstAider">Nobody here holds first aid in date.</param>
public sealed record MatTop(string Adults, int ShortBy, string FirstAider, bool NoFirstAider);

/// <summary>A line of what to take care of.</summary>
public sealed record MatCare(string Names, string Do);

/// <summary>Something that can be seen tonight.</summary>
/// <param name="Id">The item; empty for a fall.</param>
/// <param name="Name">In words.</param>
/// <param name="Kind">item, word or fall.</param>
/// <param name="Code">For a fall, the code of a clean one.</param>
/// <param name="Ends">Bits: 1 for the beginners' end, 2 for the main group.</param>
/// <param name="Critical">Looked at child by child, always.</param>
public sealed record MatItem(Guid Id, string Name, string Kind, int Code, int Ends, bool Critical);

/// <summary>A word with its number.</summary>
public sealed record MatWord(int Value, string Words);

/// <summary>One end's card, without a reason and without a mark.</summary>
/// <param name="End">0 beginners' end, 1 main group.</param>
/// <param name="Both">Both ends work together on it.</param>
/// <param name="Heading">The end in words.</param>
/// <param name="Empty">Why there is no card; empty where there is one.</param>
/// <param name="Lead">Who leads, and who holds a drill.</param>
/// <param name="PlanB">What holds because an adult is missing; empty as planned.</param>
/// <param name="LookAt">Names to look at; empty for a junior leader.</param>
/// <param name="Words">Tonight's words.</param>
/// <param name="Parts">In order.</param>
public sealed record MatCard(
    int End, bool Both, string Heading, string Empty, string Lead, string PlanB, string LookAt, ImmutableArray<string> Words, ImmutableArray<MatCardPart> Parts);

/// <summary>A part of a card.</summary>
/// <param name="Number">From 1.</param>
/// <param name="Start">Minutes since midnight.</param>
/// <param name="Minutes">Its length.</param>
/// <param name="Title">In large letters.</param>
/// <param name="Lines">What stands under it.</param>
/// <param name="Slot">The slot; 0 for none.</param>
/// <param name="Item">What is worked on; empty for none.</param>
/// <param name="Falls">Falls are marked in it.</param>
public sealed record MatCardPart(int Number, int Start, int Minutes, string Title, ImmutableArray<string> Lines, int Slot, Guid? Item, bool Falls);
