using System.Collections.Immutable;
using Keikocho.App.Club;
using Keikocho.App.Sightings;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Book;
using Keikocho.Store.Calendar;
using Keikocho.Store.Marks;
using Keikocho.Store.People;

namespace Keikocho.App.Students;

/// <summary>One way of falling.</summary>
/// <param name="Heading">"Backward".</param>
/// <param name="Open">"open to stage 3 (standing)", or "shut".</param>
/// <param name="Next">The next stage and what opens it; null where all are open.</param>
/// <param name="Because">Why the next stage, or the highest open one, is as it is.</param>
public sealed record WayLine(string Heading, string Open, string? Next, string Because);

/// <summary>An item and what was last seen of it.</summary>
/// <param name="Name">The item.</param>
/// <param name="Words">What was seen, when, on how many evenings good.</param>
/// <param name="Latest">The latest evening.</param>
public sealed record ItemLine(string Name, string Words, DateOnly Latest);

/// <summary>One mark of something seen.</summary>
/// <param name="Mark">The mark.</param>
/// <param name="Words">What, when, by whom.</param>
/// <param name="IsFall">A fall.</param>
public sealed record SeenMarkLine(Guid Mark, string Words, bool IsFall);

/// <summary>A stand-down with its history.</summary>
/// <param name="Id">Which.</param>
/// <param name="Words">What it forbids, since when, who entered it.</param>
/// <param name="Fate">Review day, or who lifted it, when and why.</param>
/// <param name="Stands">Whether it stands or will.</param>
/// <param name="ReviewPassed">Its review day has come; it stands all the same.</param>
/// <param name="Label">For a list to choose from.</param>
public sealed record StandDownLine(Guid Id, string Words, string Fate, bool Stands, bool ReviewPassed, string Label);

/// <summary>What was seen of one child, for the adults who teach, on the laptop.</summary>
/// <param name="Gates">The fall gates today.</param>
/// <param name="Ways">A line each way.</param>
/// <param name="Items">What was seen of items, in the order of the edition.</param>
/// <param name="Waiting">Suggestions, newest first.</param>
/// <param name="Marks">The latest marks, newest first.</param>
/// <param name="StandDowns">Those that stand first, then the lifted ones, newest first.</param>
/// <param name="Agreed">Agreed ways: item and wording.</param>
/// <param name="Lessons">Evenings to choose from.</param>
/// <param name="Choices">Items to choose from, by key.</param>
/// <param name="Adults">Adults of 18 and over with a duty, to choose from.</param>
/// <param name="MayConfirm">Whether whoever acts may confirm sightings and falls.</param>
public sealed record StudentSeen(
    FallGateAnswer Gates,
    ImmutableArray<WayLine> Ways,
    ImmutableArray<ItemLine> Items,
    ImmutableArray<SeenMarkLine> Waiting,
    ImmutableArray<SeenMarkLine> Marks,
    ImmutableArray<StandDownLine> StandDowns,
    ImmutableArray<(string Item, string Words)> Agreed,
    IReadOnlyList<(string Value, string Words)> Lessons,
    ImmutableArray<GridItem> Choices,
    IReadOnlyList<(string Value, string Words)> Adults,
    SignOff MayConfirm)
{
    private const int MostMarks = 12;

    /// <summary>Reads it: one statement beyond the evidence.</summary>
    public static StudentSeen Of(OpenClub club, ProgrammeRow programme, BookPerson person, ChildEvidence evidence)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(programme);
        ArgumentNullException.ThrowIfNull(person);
        ArgumentNullException.ThrowIfNull(evidence);
        var (book, today) = (club.Book, club.Today);
        var marks = EvidenceReader.MarksOf(club.Reading, person.Id);
        var gates = ChildGates.Of(book, evidence, today);
        var names = new ItemNames(book, programme);
        var choices = ItemChoice.EditionOf(book, programme, today) is { } edition ? ItemChoice.ItemsOf(book, edition) : [];
        return new StudentSeen(
            gates,
            [.. gates.Ways.Select(Way)],
            [.. evidence.Items.OrderBy(i => names.Place(i.Key)).ThenBy(i => names.Name(i.Key), StringComparer.Ordinal).Select(i => Item(names.Name(i.Key), names.Kind(i.Key), i.Value))],
            [.. marks.Where(m => !m.Mark.Confirmed).Select(m => Mark(book, names, m.Mark, m.On))],
            [.. marks.Take(MostMarks).Select(m => Mark(book, names, m.Mark, m.On))],
            [.. evidence.StandDowns.OrderBy(s => s.LiftedOn is null ? 0 : 1).ThenByDescending(s => s.From).Select(s => StandDown(book, s, today))],
            [.. evidence.Ways.Select(w => (names.Name(w.ItemId), $"{w.Wording}, agreed on {w.AgreedOn.Full()}{By(book, w.ById)}"))],
            LessonChoice.List(club, null, programme.Id),
            choices,
            [.. book.DutiesOn(today).Select(d => d.PersonId).Distinct().Select(book.Person).OfType<BookPerson>().Where(p => SignOff.IsAdult(p.Born, p.SeenAdult, today)).Select(p => (p.Id.ToString("D"), p.FullName))],
            club.Acting is { } acting ? SignOff.Of(book.DutiesOn(today).Where(d => d.PersonId == acting.Id), acting.Born, acting.SeenAdult, today) : default);
    }

    private static WayLine Way(WayGate gate)
    {
        var next = gate.Stages.FirstOrDefault(s => s.State != GateState.Open && FallForms.Exists(gate.Way, s.Stage));
        var said = next ?? gate.Stages.Last(s => s.State == GateState.Open);
        return new WayLine(
            FallForms.Heading(gate.Way),
            FallsView.GateLine(gate),
            next is null ? null : $"{FallForms.Capital(FallWords.Stage(next.Stage))}: {(next.State == GateState.LookAgain ? "look again" : "shut")}{(next.OpensWith is { } opens ? $"; {opens}" : "")}{(next.MayBeTried ? "; may be tried with a named instructor watching" : "")}.",
            said.Because.Sentence);
    }

    private static ItemLine Item(string name, ItemKind kind, IReadOnlyList<SeenEvening> evenings)
    {
        var latest = evenings[^1];
        var good = evenings.Count(e => e is { Word: SeenWord.Good, Confirmed: true });
        return new ItemLine(name, $"{SeenWords.Of(latest, kind)} on {latest.On.Full()}; {SeenWords.Of(SeenWord.Good, kind)} on {Shared.Counted.Of(good, "evening")}", latest.On);
    }

    private static SeenMarkLine Mark(ClubBook book, ItemNames names, StandingMark mark, DateOnly on)
    {
        var item = mark.Mark.ItemId!.Value;
        string what;
        if (item == MarkCode.Falls)
        {
            var (way, stage, clean) = EvidenceCode.FallOf(mark.Code);
            what = $"Fall {FallWords.Of(way)}, {FallWords.Stage(stage)}: {(clean ? "clean" : "head touched")}";
        }
        else
        {
            what = $"{names.Name(item)}: {(EvidenceCode.WordOf(mark.Code) is { } word ? SeenWords.Of(word, names.Kind(item)) : "")}";
        }

        return new SeenMarkLine(mark.Mark.Id, $"{what}, {on.Full()}{(mark.Mark.ById is { } by ? By(book, by) : ", from a file")}{(mark.Confirmed ? "" : ", suggested")}", item == MarkCode.Falls);
    }

    private static StandDownLine StandDown(ClubBook book, Keikocho.Store.Safety.HeldStandDown held, DateOnly today)
    {
        var scope = FallForms.Capital(WaitingView.Scope(held.Scope));
        var passed = held.LiftedOn is null && held.ReviewOn <= today;
        var fate = held.LiftedOn is { } lifted
            ? $"Lifted on {lifted.Full()}{(held.LiftedById is { } adult ? By(book, adult) : "")}: {held.LiftedWhy?.TrimEnd('.')}."
            : (held.ReviewOn, passed) switch
            {
                (null, _) => "No review day is set; it stands until it is lifted.",
                ({ } day, true) => $"The review of {day.Full()} is due; it stands all the same.",
                ({ } day, false) => $"To be looked at again on {day.Full()}, which ends nothing by itself.",
            };
        return new StandDownLine(
            held.Id,
            $"{scope} {(held.From > today ? "from" : "since")} {held.From.Full()}, entered{By(book, held.ById)}{(held.WhoseWord is { } word ? $"; lifted by the word of: {word}" : "")}.",
            fate,
            held.LiftedOn is null || held.LiftedOn > today,
            passed,
            $"{scope} since {held.From.Full()}");
    }

    private static string By(ClubBook book, Guid adult) => book.Person(adult) is { IsErased: false } person ? $" by {person.FullName}" : "";

    /// <summary>Names of items in the newest edition that has them.</summary>
    private sealed class ItemNames
    {
        private readonly Dictionary<Guid, (Item Item, int Place)> items = [];
        private readonly ClubBook book;

        public ItemNames(ClubBook book, ProgrammeRow programme)
        {
            this.book = book;
            foreach (var edition in book.EditionsOf(programme.LadderId))
            {
                for (var place = 0; place < edition.Edition.Items.Count; place++)
                    if (book.ItemId(edition.Edition.Items[place].Key) is { } id) items[id] = (edition.Edition.Items[place], place);
            }
        }

        public string Name(Guid id) => items.TryGetValue(id, out var known) ? known.Item.Name : book.ItemKey(id) ?? "an item that is gone";

        public ItemKind Kind(Guid id) => items.TryGetValue(id, out var known) ? known.Item.Kind : ItemKind.Throw;

        public int Place(Guid id) => items.TryGetValue(id, out var known) ? known.Place : int.MaxValue;
    }
}
