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
/// <param name="Instead">What it may be corrected to by whoever acts: value and words; empty where that is not his or hers to do.</param>
public sealed record SeenMarkLine(Guid Mark, string Words, bool IsFall, ImmutableArray<(string Value, string Words)> Instead);

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
/// <param name="Changes">What was corrected or taken back: the first mark, who and when, and what became of it; for those who instruct.</param>
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
    SignOff MayConfirm,
    ImmutableArray<string> Changes)
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
        var names = new ItemsOfLadders(book, programme.LadderId);
        var history = EvidenceReader.HistoryOf(club.Reading, person.Id);
        var marks = history.Standing;
        List<DutyRow> duties = club.Acting is { } acts ? [.. book.DutiesOn(today).Where(d => d.PersonId == acts.Id)] : [];
        var may = club.Acting is { } acting ? SignOff.Of(duties, acting.Born, acting.SeenAdult, today) : default;
        SeenMarkLine Line((StandingMark Mark, DateOnly On) m) => Mark(book, names, m.Mark, m.On, Instead(names, m.Mark, may, club.Acting?.Id));
        var gates = ChildGates.Of(book, evidence, today);
        var choices = ItemChoice.EditionOf(book, programme, today) is { } edition ? ItemChoice.ItemsOf(book, edition) : [];
        return new StudentSeen(
            gates,
            [.. LinesOf(gates)],
            [.. evidence.Items.OrderBy(i => names.Place(i.Key)).ThenBy(i => names.Name(i.Key), StringComparer.Ordinal).Select(i => Item(names.Name(i.Key), names.Kind(i.Key), i.Value, day => IsClosed(book, programme.Id, day)))],
            [.. marks.Where(m => !m.Mark.Confirmed).Select(Line)],
            [.. marks.Take(MostMarks).Select(Line)],
            [.. evidence.StandDowns.OrderBy(s => s.LiftedOn is null ? 0 : 1).ThenByDescending(s => s.From).Select(s => StandDown(book, s, today))],
            [.. evidence.Ways.Select(w => (names.Name(w.ItemId), $"{w.Wording}, agreed on {w.AgreedOn.Full()}{By(book, w.ById)}"))],
            LessonChoice.List(club, null, programme.Id),
            choices,
            [.. book.DutiesOn(today).Select(d => d.PersonId).Distinct().Select(book.Person).OfType<BookPerson>().Where(p => SignOff.IsAdult(p.Born, p.SeenAdult, today)).Select(p => (p.Id.ToString("D"), p.FullName))],
            may,
            duties.Any(d => d.Kind is DutyKind.HeadInstructor or DutyKind.Instructor) ? [.. history.Changes.Take(MostMarks).Select(c => Change(club, names, c))] : []);
    }

    // Ways that are shut for the very same reason stand on one line.
    private static IEnumerable<WayLine> LinesOf(FallGateAnswer gates) => gates.Ways.Select(g => (Gate: g, Said: SaidOf(g)))
        .GroupBy(g => g.Said.Because is GateReason and not StageIsOpen ? $"{g.Gate.OpenTo} {g.Said.Stage} {g.Said.OpensWith} {g.Said.MayBeTried} {((GateReason)g.Said.Because).Rest}" : $"{g.Gate.Way}")
        .Select(same => Way([.. same.Select(g => g.Gate)]));

    private static StageGate SaidOf(WayGate gate) =>
        gate.Stages.FirstOrDefault(s => s.State != GateState.Open && FallForms.Exists(gate.Way, s.Stage)) ?? gate.Stages.Last(s => s.State == GateState.Open);

    private static WayLine Way(IReadOnlyList<WayGate> same)
    {
        var gate = same[0];
        var said = SaidOf(gate);
        var next = said.State == GateState.Open ? null : said;
        return new WayLine(
            same.Count == 1 ? FallForms.Heading(gate.Way) : SameReason.Named([.. same.Select(g => g.Way)]),
            FallsView.GateLine(gate),
            next is null ? null : $"{FallForms.Capital(FallWords.Stage(next.Stage))}: {(next.State == GateState.LookAgain ? "look again" : "shut")}{(next.OpensWith is { } opens ? $"; {opens}" : "")}{(next.MayBeTried ? "; may be tried with a named instructor watching" : "")}.",
            Because(said.Because));
    }

    // The heading says already which way and how far it is open.
    private static string Because(Reason reason) =>
        reason is StageIsOpen && reason.Sentence.Split(": open; ", 2) is [_, var days] ? FallForms.Capital(days) : reason.Sentence;

    private static ItemLine Item(string name, ItemKind kind, IReadOnlyList<SeenEvening> evenings, Func<DateOnly, bool> isClosed)
    {
        var latest = evenings[^1];
        var good = evenings.Count(e => e is { Word: SeenWord.Good, Confirmed: true });
        return new ItemLine(
            name,
            $"{SeenWords.Of(latest, kind)} on {latest.On.Full()}{(isClosed(latest.On) ? " (the lesson was closed afterwards)" : "")}; {SeenWords.Of(SeenWord.Good, kind)} on {Shared.Counted.Of(good, "evening")}",
            latest.On);
    }

    // What was seen was seen, whatever became of the lesson: it counts on, and the page says so.
    private static bool IsClosed(ClubBook book, Guid programme, DateOnly day) =>
        book.LessonsOn(day).Where(l => l.ProgrammeId == programme).ToList() is { Count: > 0 } lessons && lessons.All(l => l.ClosureId is not null);

    private static SeenMarkLine Mark(ClubBook book, ItemsOfLadders names, StandingMark mark, DateOnly on, ImmutableArray<(string, string)> instead)
    {
        var by = mark.Mark.ById is { } adult ? By(book, adult) : ", from a file";
        var closed = book.Lesson(mark.Mark.LessonId) is { ClosureId: not null } ? "; the lesson was closed afterwards" : "";
        var corrected = mark.Mark.Kind == MarkKind.Corrected ? ", corrected" : "";
        var item = mark.Mark.ItemId!.Value;
        return new SeenMarkLine(mark.Mark.Id, $"{What(names, item, mark.Code)}, {on.Full()}{corrected}{by}{(mark.Confirmed ? "" : ", suggested")}{closed}", item == MarkCode.Falls, instead);
    }

    /// <summary>"O-goshi: good", "Fall backward, stage 3 (standing): clean".</summary>
    private static string What(ItemsOfLadders names, Guid item, int code)
    {
        if (item != MarkCode.Falls) return $"{names.Name(item)}{(names.Name(item).EndsWith('?') ? "" : ":")} {Word(names, item, code)}";
        var (way, stage, _) = EvidenceCode.FallOf(code);
        return $"Fall {FallWords.Of(way)}, {FallWords.Stage(stage)}: {Word(names, item, code)}";
    }

    private static string Word(ItemsOfLadders names, Guid item, int code) => item == MarkCode.Falls
        ? EvidenceCode.FallOf(code).Clean ? "clean" : "head touched"
        : EvidenceCode.WordOf(code) is { } word ? SeenWords.Of(word, names.Kind(item)) : "";

    private static ImmutableArray<(string Value, string Words)> Instead(ItemsOfLadders names, StandingMark mark, SignOff may, Guid? acting)
    {
        var item = mark.Mark.ItemId!.Value;
        var isFall = item == MarkCode.Falls;
        if (acting is null || !((isFall ? may.Falls : may.Sightings) || (mark.Mark.ById == acting && !mark.Confirmed))) return [];
        var now = Word(names, item, mark.Code);
        IEnumerable<(string Value, string Words)> all = isFall ? FallForms.Outcomes : SeenWords.Choices(names.Kind(item));
        return [.. all.Where(c => c.Words != now), (SeenWords.Nothing, "nothing was to be marked")];
    }

    private static string Change(OpenClub club, ItemsOfLadders names, SeenChange change)
    {
        var (before, after) = (EvidenceCode.Says(change.Before)!.Value.Code, EvidenceCode.Says(change.After)?.Code ?? 0);
        var item = change.Before.ItemId!.Value;
        var fate = after == 0 ? "taken back" : $"then {Word(names, item, after)},";
        return $"{What(names, item, before)}, {change.On.Full()}: marked{Hand(club, change.Before)}; {fate}{Hand(club, change.After)}.";
    }

    private static string Hand(OpenClub club, MarkRow mark) =>
        $"{(mark.ById is { } by ? By(club.Book, by) : " from a file")} on {club.Clock.DayOf(mark.MadeAt).Full()} at {club.Clock.TimeOf(mark.MadeAt).Plain()}";

    private static StandDownLine StandDown(ClubBook book, Keikocho.Store.Safety.HeldStandDown held, DateOnly today)
    {
        var scope = FallForms.Capital(WaitingView.Scope(held.Scope));
        var passed = held.LiftedOn is null && held.ReviewOn <= today;
        var fate = held.LiftedOn is { } lifted
            ? $"Lifted on {lifted.Full()}{(held.LiftEnteredOn > lifted ? $", entered on {held.LiftEnteredOn.Value.Full()}," : "")}{(held.LiftedById is { } adult ? By(book, adult) : "")}: {held.LiftedWhy?.TrimEnd('.')}."
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
}
