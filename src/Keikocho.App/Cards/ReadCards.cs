using System.Collections.Immutable;
using Keikocho.App.Club;
using Keikocho.App.Sightings;
using Keikocho.App.Syllabus;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Book;
using Keikocho.Store.Calendar;
using Keikocho.Store.Evening;
using Keikocho.Store.Marks;
using Keikocho.Store.Syllabus;

namespace Keikocho.App.Cards;

/// <summary>Makes tonight's cards from who came: four statements, however many children there are.</summary>
public sealed class ReadCards(Reckonings reckonings, EditionsInHand editions)
{
    private const int LongestMemory = 400;

    /// <summary>The cards of a lesson.</summary>
    /// <param name="club">The club.</param>
    /// <param name="lesson">The lesson.</param>
    /// <param name="plan">The plan that somebody chose; null lets the numbers decide.</param>
    public EveningCards Of(OpenClub club, LessonRow lesson, CardPlan? plan = null)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(lesson);
        return Read(club, lesson).Cards(plan);
    }

    /// <summary>The cards of a lesson, and those if one more adult who leads an end were missing; null where plan B holds already.</summary>
    public (EveningCards Now, EveningCards? IfOneMoreIsMissing) WithPlanB(OpenClub club, LessonRow lesson)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(lesson);
        var making = Read(club, lesson);
        var now = making.Cards(null);
        return (now, now.Cards.Length == 0 || now.Cards.Any(c => c.Plan != CardPlan.AsPlanned) ? null : making.Cards(making.PlanB));
    }

    private CardMaking Read(OpenClub club, LessonRow lesson)
    {
        var book = club.Book;
        var programme = book.Programme(lesson.ProgrammeId)!;
        var states = AttendanceReader.OfLesson(club.Reading, lesson.Id);
        var register = book.RegisterOf(programme.Id, lesson.Date).DistinctBy(e => e.PersonId).Select(e => book.Person(e.PersonId)!).Where(p => !p.IsErased).ToList();
        var taken = register.Any(p => states.TryGetValue(p.Id, out var state) && state.Word != AttendanceWord.Untouched);
        var children = CallNames.Show([.. register.Select(p => new NamedChild(new PersonId(p.Id), p.CallName, p.Family, book.RankOf(p.Id, programme.LadderId)?.Name))])
            .Select(n => new GridChild(n.Person.Value, n.Name, true, book.EndOf(n.Person.Value, programme, lesson, lesson.Date)))
            .Where(c => !taken || (states.TryGetValue(c.PersonId, out var state) && state.Word == AttendanceWord.Present)).ToList();
        var evidence = EvidenceReader.Of(club.Reading, [.. children.Select(c => c.PersonId)], null, lesson.Date);
        var showings = ShowingReader.Of(club.Reading, programme.Id, lesson.Date.AddDays(-LongestMemory), lesson.Date);
        var facts = new CardChildren(book, lesson, reckonings.Of(club, programme), evidence, showings);
        var adults = CardAdults.Of(book, lesson, states, children.Select(c => (c.PersonId, c.End)), taken,
            lesson.Date < club.Today || (lesson.Date == club.Today && lesson.Start <= club.Clock.LocalTime));
        var minutes = (int)(lesson.End - lesson.Start).TotalMinutes;
        return new CardMaking(book, editions, lesson, programme, evidence, showings, facts, adults, minutes, children, taken);
    }
}

/// <summary>The making of the cards of one evening: everything is read.</summary>
internal sealed class CardMaking(
    ClubBook book, EditionsInHand editions, LessonRow lesson, ProgrammeRow programme, Dictionary<Guid, ChildEvidence> evidence, IReadOnlyList<HeldShowing> showings,
    CardChildren facts, CardAdults adults, int minutes, IReadOnlyList<GridChild> children, bool taken)
{
    private readonly PublishedEdition? published = book.EditionOn(programme.LadderId, lesson.Date) ?? book.NewestEdition(programme.LadderId);

    private bool BothEnds => children.Select(c => c.End).Distinct().Count() > 1;

    /// <summary>What the numbers would decide with one adult fewer who leads: shut wins, so nothing is thrown at the beginners' end even where enough remain.</summary>
    public CardPlan PlanB => BothEnds && adults.Leads.Count - 1 < 2 ? CardPlan.EndsJoined : CardPlan.NoThrowing;

    /// <summary>The cards of a plan; null lets the numbers decide.</summary>
    public EveningCards Cards(CardPlan? plan)
    {
        var isJoined = BothEnds && (plan == CardPlan.EndsJoined || (plan is null && adults.Leads.Count < 2));
        ImmutableArray<CardView> cards;
        if (!CardNotes.HasRoom(minutes)) cards = [];
        else if (isJoined) cards = [Joined()];
        else
        {
            var (beginners, main) = adults.Share(children.Any(c => c.End == MatEnd.Beginners), children.Any(c => c.End == MatEnd.Main));
            cards =
            [
                One(MatEnd.Beginners, beginners, plan == CardPlan.EndsJoined ? CardPlan.NoThrowing : plan),
                One(MatEnd.Main, main, plan is CardPlan.NoThrowing ? null : plan == CardPlan.EndsJoined ? CardPlan.NoThrowing : plan),
            ];
        }

        var firstAider = adults.Sum.FirstAiders.Count > 0 ? string.Join(", ", adults.Sum.FirstAiders) : "nobody here";
        return new EveningCards(cards, isJoined, plan, taken, firstAider, minutes);
    }

    /// <summary>The card of one end.</summary>
    private CardView One(MatEnd end, IReadOnlyList<CardAdult> here, CardPlan? plan) =>
        Make(end, end == MatEnd.Beginners ? "Beginners’ end" : "Main group", [.. children.Where(c => c.End == end)], here, plan,
        plan == CardPlan.NoThrowing || !here.Any(a => a.MayLead) || (plan is null && end == MatEnd.Beginners && adults.ShortBy > 0) ? OnTheGround(ItemsOf(end)) : ItemsOf(end),
        WordsOf(end), [end]);

    /// <summary>One card for both ends, on which nothing is thrown.</summary>
    private CardView Joined() => Make(
        MatEnd.Beginners, "Both ends", children, [.. adults.All.Select(a => a.Adult)], CardPlan.EndsJoined,
        OnTheGround([.. ItemsOf(MatEnd.Beginners).Concat(ItemsOf(MatEnd.Main)).DistinctBy(i => i.Id)]),
        [.. WordsOf(MatEnd.Beginners).Concat(WordsOf(MatEnd.Main)).DistinctBy(i => i.Id)],
        [MatEnd.Beginners, MatEnd.Main]);

    private CardView Make(
        MatEnd end, string heading, IReadOnlyList<GridChild> own, IReadOnlyList<CardAdult> here, CardPlan? plan,
        IReadOnlyList<GridItem> items, IReadOnlyList<GridItem> words, IReadOnlyList<MatEnd> ends)
    {
        var asked = words.Select(w => (w.Id, w.Item.Key)).ToList();
        var present = own.Select(c => facts.Child(c.PersonId, c.Name, asked)).ToList();
        var keys = items.Select(i => i.Item.Key).ToHashSet(StringComparer.Ordinal);
        var card = MakeCard.Make(new CardSnapshot(
            end, lesson.Start, CardNotes.Parts(minutes), present,
            [.. items.Select(i => ItemOf(i, own, ends))],
            [.. words.Select(w => new DueWord(w.Item.Key, w.Item.Name, w.Item.Safety))],
            here, taken || adults.ShortBy > 0 ? adults.ShortBy : 0, plan, CardNotes.Games,
            Players(children), Players(own),
            [.. Tonight(ends).Where(s => keys.Contains(book.ItemKey(s.ItemId) ?? "")).DistinctBy(s => s.Slot).Select(s => new SlotTaken(s.Slot, book.ItemKey(s.ItemId)!))],
            new CardRule(ClubRules.Whole(book, "card.urgentLessons", lesson.Date, new CardRule().UrgentLessons), ClubRules.YesNo(book, "card.serveBoth", lesson.Date, true)),
            new LookAtRule(ClubRules.Whole(book, "lookAt.moreThan", lesson.Date, 3), ClubRules.Whole(book, "lookAt.names", lesson.Date, 3)),
            new WordsDueRule(ClubRules.Whole(book, "words.ask", lesson.Date, 5))));
        return new CardWording(book, programme, lesson, own, here, items, words, i => Showing(i, ends), [.. Tonight(ends)]).Of(card, heading, UnitOf()?.Name);
    }

    private CardItem ItemOf(GridItem item, IReadOnlyList<GridChild> own, IReadOnlyList<MatEnd> ends)
    {
        var (first, free) = ThrowPlans.Of(item.Item);
        var before = Held().Where(l => Before(l)).Reverse().Select(l => l.Id).ToList();
        var alternative = item.Item.Alternative is { } key ? published!.Edition.Items.FirstOrDefault(i => i.Key == key) : null;
        return new CardItem(
            item.Item.Key, item.Item.Name, item.Item.Kind,
            own.ToDictionary(c => c.PersonId.ToString("D"), c => facts.Standing(c.PersonId, item.Id)),
            [.. showings.Where(s => s.ItemId == item.Id && ends.Contains((MatEnd)s.End)).Select(s => before.IndexOf(s.LessonId) + 1).Where(a => a > 0).Distinct()],
            first, free, item.Item.LoadsTheNeck, alternative is { LoadsTheNeck: false } ? alternative.Name : null);
    }

    private IEnumerable<LessonRow> Held() => book.LessonsOf(programme.Id).Where(l => l.ClosureId is null);

    private bool Before(LessonRow other) => other.Date < lesson.Date || (other.Date == lesson.Date && other.Start < lesson.Start);

    private IEnumerable<HeldShowing> Tonight(IReadOnlyList<MatEnd> ends) => showings.Where(s => s.LessonId == lesson.Id && ends.Contains((MatEnd)s.End));

    // "3rd showing this term"
    private string Showing(Guid item, IReadOnlyList<MatEnd> ends)
    {
        var from = book.TermOn(lesson.Date)?.From ?? lesson.Date.AddDays(-100);
        var number = showings.Where(s => s.ItemId == item && s.On >= from && s.LessonId != lesson.Id && ends.Contains((MatEnd)s.End)).Select(s => s.LessonId).Distinct().Count() + 1;
        var end = number % 100 is 11 or 12 or 13 ? "th" : (number % 10) switch { 1 => "st", 2 => "nd", 3 => "rd", _ => "th" };
        return $"{number}{end} showing this term";
    }

    private Unit? UnitOf() => published is { } some && book.TermOn(lesson.Date) is { } term && book.UnitOf(programme.Id, term.Id) is { } key
        ? some.Edition.Units.FirstOrDefault(u => u.Key == key) : null;

    // The first course at the beginners' end; in the main group the unit of the term; else what the children are going for.
    private List<GridItem> ItemsOf(MatEnd end)
    {
        if (published is not { } some) return [];
        var front = end == MatEnd.Beginners ? some.Edition.FirstCourse : UnitOf()?.Items ?? [];
        var all = ItemChoice.ItemsOf(book, some.Edition).Where(i => !SeenWords.IsAsked(i.Item.Kind) && i.Item.Kind is not (ItemKind.Etiquette or ItemKind.Exercise)).ToDictionary(i => i.Item.Key, StringComparer.Ordinal);
        var own = front.Distinct().Where(all.ContainsKey).Select(k => all[k]).ToList();
        return own.Count > 0 ? own : [.. GoingForOf(some, end).Where(all.ContainsKey).Select(k => all[k])];
    }

    // Where nothing is thrown there is work on the ground all the same: the syllabus's own, where the end has too little.
    private List<GridItem> OnTheGround(List<GridItem> own)
    {
        static bool IsGround(GridItem item) => item.Item.Kind is ItemKind.HoldDown or ItemKind.Escape or ItemKind.Turnover;
        return published is null || own.Count(IsGround) >= 2
            ? own
            : [.. own.Concat(ItemChoice.ItemsOf(book, published.Edition).Where(IsGround)).DistinctBy(i => i.Id)];
    }

    private List<GridItem> WordsOf(MatEnd end)
    {
        if (published is not { } some) return [];
        var all = ItemChoice.ItemsOf(book, some.Edition).Where(i => SeenWords.IsAsked(i.Item.Kind)).ToDictionary(i => i.Item.Key, StringComparer.Ordinal);
        return [.. GoingForOf(some, end).Where(all.ContainsKey).Select(k => all[k])];
    }

    private readonly Dictionary<MatEnd, IReadOnlyList<string>> goingFor = [];

    private IReadOnlyList<string> GoingForOf(PublishedEdition some, MatEnd end)
    {
        if (goingFor.TryGetValue(end, out var known)) return known;
        GridChild[] own = [.. children.Where(c => c.End == end)];
        return goingFor[end] = own.Length == 0 ? [] : GoingFor.Keys(book, editions, some, lesson, new EveningChildren(end, false, [.. own], [], taken), evidence);
    }

    private CardPlayers Players(IReadOnlyList<GridChild> own)
    {
        // The line between the ends: each has its share of the mat by numbers until a plan of the mat says otherwise.
        var mat = book.HallOf(lesson) is { MatLengthCm: { } length, MatWidthCm: { } width } ? length * width / 10_000m : (decimal?)null;
        return new CardPlayers(
            own.Count, mat is { } whole && children.Count > 0 ? whole * own.Count / children.Count : mat,
            own.Any(c => ChildGates.Standing(book, evidence[c.PersonId], lesson.Date).Standing.Count > 0));
    }
}
