using System.Collections.Frozen;
using System.Collections.Immutable;
using Keikocho.Core.Kernel;
using Keikocho.Store.Calendar;
using Keikocho.Store.Club;
using Keikocho.Store.People;
using Keikocho.Store.Promotion;
using Keikocho.Store.Syllabus;

namespace Keikocho.Store.Book;

/// <summary>
/// A club's people and calendar in memory: nothing personal is searched or sorted in SQL, and no page reads them again while nothing
/// has changed. Nothing in it is ever changed; a new one is read when the club's revisions rise.
/// </summary>
public sealed class ClubBook
{
    private readonly FrozenDictionary<Guid, BookPerson> people;
    private readonly FrozenDictionary<Guid, ImmutableArray<LessonRow>> lessonsByProgramme;
    private readonly FrozenDictionary<Guid, LessonRow> lessons;
    private readonly FrozenDictionary<DateOnly, ImmutableArray<LessonRow>> lessonsByDate;
    private readonly FrozenDictionary<Guid, ImmutableArray<EnrolmentRow>> enrolmentsByProgramme;
    private readonly FrozenDictionary<Guid, ImmutableArray<EnrolmentRow>> enrolmentsByPerson;
    private readonly FrozenDictionary<(Guid Person, Guid Ladder), AwardRow> newestAward;
    private readonly FrozenDictionary<Guid, ImmutableArray<AwardRow>> awardsByPerson;
    private readonly FrozenDictionary<Guid, RankRow> ranks;
    private readonly FrozenDictionary<(Guid Person, Guid Programme), ImmutableArray<CrossingRow>> crossings;
    private readonly FrozenDictionary<Guid, EveningRow> evenings;
    private readonly FrozenDictionary<Guid, ImmutableArray<PublishedEdition>> editions;
    private readonly FrozenDictionary<(Guid Programme, Guid Term), string> units;
    private readonly FrozenDictionary<Guid, string> itemKeys;
    private readonly FrozenDictionary<string, Guid> itemIds;

    private readonly FrozenDictionary<Guid, ImmutableArray<HeldTimeOff>> timeOffs;

    internal ClubBook(BookRows rows, DateOnly? today = null)
    {
        Club = rows.Club;
        LessonsFrom = rows.LessonsFrom;
        Halls = rows.Halls;
        Programmes = [.. rows.Programmes.OrderBy(p => p.Position).ThenBy(p => p.Id)];
        Hours = [.. rows.Hours.OrderBy(h => ((int)h.Weekday + 6) % 7).ThenBy(h => h.Start).ThenBy(h => h.Id)];
        Terms = [.. rows.Terms.OrderBy(t => t.From)];
        Closures = [.. rows.Closures.OrderBy(c => c.From).ThenBy(c => c.Id)];
        Tests = [.. rows.Tests.OrderBy(t => t.Date).ThenBy(t => t.Id)];
        Settings = rows.Settings;
        Duties = [.. rows.Duties.OrderBy(d => d.Kind).ThenBy(d => d.From).ThenBy(d => d.Id)];
        editions = rows.Editions.Where(e => e.PublishedAt is not null).OrderBy(e => e.From).ThenBy(e => e.PublishedAt).ThenBy(e => e.Id)
            .GroupBy(e => e.LadderId).ToFrozenDictionary(g => g.Key, g => g.Select(e => new PublishedEdition(e)).ToImmutableArray());
        var named = RankNames.Of(rows.Ranks, editions, today);
        Ranks = [.. named.Where(r => r.Position > 0).OrderBy(r => r.LadderId).ThenBy(r => r.Position).ThenBy(r => r.Id)];
        people = rows.People.ToFrozenDictionary(p => p.Id);
        lessons = rows.Lessons.ToFrozenDictionary(l => l.Id);
        var inOrder = rows.Lessons.OrderBy(l => l.Date).ThenBy(l => l.Start).ThenBy(l => l.Id).ToList();
        lessonsByProgramme = inOrder.GroupBy(l => l.ProgrammeId).ToFrozenDictionary(g => g.Key, g => g.ToImmutableArray());
        lessonsByDate = inOrder.GroupBy(l => l.Date).ToFrozenDictionary(g => g.Key, g => g.ToImmutableArray());
        var enrolments = rows.Enrolments.OrderBy(e => e.Position).ThenBy(e => e.From).ThenBy(e => e.Id).ToList();
        enrolmentsByProgramme = enrolments.GroupBy(e => e.ProgrammeId).ToFrozenDictionary(g => g.Key, g => g.ToImmutableArray());
        enrolmentsByPerson = enrolments.GroupBy(e => e.PersonId).ToFrozenDictionary(g => g.Key, g => g.ToImmutableArray());
        ranks = named.ToFrozenDictionary(r => r.Id);
        var replaced = rows.Awards.Where(a => a.Replaces is not null).Select(a => a.Replaces!.Value).ToHashSet();
        var standing = rows.Awards.Where(a => !replaced.Contains(a.Id) && ranks.ContainsKey(a.RankId))
            .OrderBy(a => a.On ?? DateOnly.MinValue).ThenBy(a => ranks[a.RankId].Position).ThenBy(a => a.MadeAt).ThenBy(a => a.Id).ToList();
        awardsByPerson = standing.GroupBy(a => a.PersonId).ToFrozenDictionary(g => g.Key, g => g.ToImmutableArray());
        newestAward = standing.GroupBy(a => (a.PersonId, a.LadderId)).ToFrozenDictionary(g => g.Key, g => g.Last());
        crossings = rows.Crossings.OrderBy(c => c.On).ThenBy(c => c.MadeAt).ThenBy(c => c.Id)
            .GroupBy(c => (c.PersonId, c.ProgrammeId)).ToFrozenDictionary(g => g.Key, g => g.ToImmutableArray());
        evenings = rows.Evenings.ToFrozenDictionary(e => e.Id);
        editions = rows.Editions.Where(e => e.PublishedAt is not null).OrderBy(e => e.From).ThenBy(e => e.PublishedAt).ThenBy(e => e.Id)
            .GroupBy(e => e.LadderId).ToFrozenDictionary(g => g.Key, g => g.Select(e => new PublishedEdition(e)).ToImmutableArray());
        units = rows.TermUnits.ToFrozenDictionary(t => (t.ProgrammeId, t.TermId), t => t.UnitKey);
        AgeRules = [.. rows.AgeRules.Where(r => r.EndedAt is null).OrderBy(r => r.MadeAt).ThenBy(r => r.Id).Select(r => new EnteredAgeRule(r))];
        itemKeys = rows.Items.ToFrozenDictionary(i => i.Id, i => i.Key);
        itemIds = rows.Items.ToFrozenDictionary(i => i.Key, i => i.Id, StringComparer.Ordinal);
        timeOffs = rows.TimeOffs.OrderBy(t => t.MadeAt).ThenBy(t => t.Id).GroupBy(t => t.PersonId).ToFrozenDictionary(g => g.Key, g => g.ToImmutableArray());
    }

    /// <summary>The club.</summary>
    public ClubRow Club { get; }
    /// <summary>Lessons of earlier days are not in the book; ranks and crossings of those who left before it are not either.</summary>
    public DateOnly LessonsFrom { get; }
    /// <summary>Halls.</summary>
    public ImmutableArray<HallRow> Halls { get; }
    /// <summary>Programmes in their order.</summary>
    public ImmutableArray<ProgrammeRow> Programmes { get; }
    /// <summary>Weekly hours from Monday on.</summary>
    public ImmutableArray<WeeklyHourRow> Hours { get; }
    /// <summary>Terms by date.</summary>
    public ImmutableArray<TermRow> Terms { get; }
    /// <summary>Closures by date.</summary>
    public ImmutableArray<ClosureRow> Closures { get; }
    /// <summary>Promotion tests by date.</summary>
    public ImmutableArray<PromotionTestRow> Tests { get; }
    /// <summary>Settings as entered, unordered.</summary>
    public ImmutableArray<SettingRow> Settings { get; }
    /// <summary>Duties, head instructor first.</summary>
    public ImmutableArray<DutyRow> Duties { get; }
    /// <summary>Ranks of all ladders, lowest first within each; those that no edition has any more are found by id only.</summary>
    public ImmutableArray<RankRow> Ranks { get; }
    /// <summary>Age rules that the club entered and that hold, oldest first.</summary>
    public ImmutableArray<EnteredAgeRule> AgeRules { get; }
    /// <summary>Everybody.</summary>
    public IEnumerable<BookPerson> People => people.Values;

    /// <summary>The person; null when there is none.</summary>
    public BookPerson? Person(Guid id) => people.GetValueOrDefault(id);

    /// <summary>The lesson; null when there is none in the book.</summary>
    public LessonRow? Lesson(Guid id) => lessons.GetValueOrDefault(id);

    /// <summary>The programme; null when there is none.</summary>
    public ProgrammeRow? Programme(Guid id) => Programmes.FirstOrDefault(p => p.Id == id);

    /// <summary>Lessons of a programme by date and start.</summary>
    public ImmutableArray<LessonRow> LessonsOf(Guid programme) => lessonsByProgramme.GetValueOrDefault(programme, []);

    /// <summary>Lessons of a day by start, closed ones too.</summary>
    public ImmutableArray<LessonRow> LessonsOn(DateOnly day) => lessonsByDate.GetValueOrDefault(day, []);

    /// <summary>The hall of a lesson.</summary>
    public HallRow? HallOf(LessonRow lesson)
    {
        ArgumentNullException.ThrowIfNull(lesson);
        return Evening(lesson) is { } evening ? Halls.FirstOrDefault(h => h.Id == evening.HallId) : null;
    }

    /// <summary>The evening of a lesson, with when it was closed.</summary>
    public EveningRow? Evening(LessonRow lesson)
    {
        ArgumentNullException.ThrowIfNull(lesson);
        return evenings.GetValueOrDefault(lesson.EveningId);
    }

    /// <summary>The term that a day lies in; null between terms.</summary>
    public TermRow? TermOn(DateOnly day) => Terms.FirstOrDefault(t => t.From <= day && t.To >= day);

    /// <summary>The closure; null when there is none.</summary>
    public ClosureRow? Closure(Guid? id) => id is null ? null : Closures.FirstOrDefault(c => c.Id == id);

    /// <summary>Who is on a programme's register on a day, in register order.</summary>
    public IEnumerable<EnrolmentRow> RegisterOf(Guid programme, DateOnly day) =>
        enrolmentsByProgramme.GetValueOrDefault(programme, []).Where(e => e.From <= day && (e.To is null || e.To >= day));

    /// <summary>Everybody who ever was on a programme's register, in register order.</summary>
    public ImmutableArray<EnrolmentRow> EnrolmentsOf(Guid programme) => enrolmentsByProgramme.GetValueOrDefault(programme, []);

    /// <summary>A person's enrolments in register order.</summary>
    public ImmutableArray<EnrolmentRow> EnrolmentsOfPerson(Guid person) => enrolmentsByPerson.GetValueOrDefault(person, []);

    /// <summary>The rank that a person wears on a ladder; null when none is recorded.</summary>
    public RankRow? RankOf(Guid person, Guid? ladder) =>
        ladder is { } some && newestAward.TryGetValue((person, some), out var award) ? ranks[award.RankId] : null;

    /// <summary>The newest award of a person on a ladder; null when none is recorded.</summary>
    public AwardRow? NewestAwardOf(Guid person, Guid? ladder) =>
        ladder is { } some ? newestAward.GetValueOrDefault((person, some)) : null;

    /// <summary>A person's standing awards, oldest first.</summary>
    public ImmutableArray<AwardRow> AwardsOf(Guid person) => awardsByPerson.GetValueOrDefault(person, []);

    /// <summary>The rank; null when there is none.</summary>
    public RankRow? Rank(Guid id) => ranks.GetValueOrDefault(id);

    /// <summary>
    /// The end at which a child works at a lesson: the change for that lesson, else the newest crossing not after its day, else by
    /// rank: above the first rank of the ladder is the main group, everybody else the beginners' end.
    /// </summary>
    public MatEnd EndOf(Guid person, ProgrammeRow programme, LessonRow? lesson, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(programme);
        var own = crossings.GetValueOrDefault((person, programme.Id), []);
        if (lesson is not null && own.LastOrDefault(c => c.LessonId == lesson.Id) is { } tonight) return tonight.End;
        if (own.LastOrDefault(c => c.LessonId is null && c.On <= day) is { } crossed) return crossed.End;
        return RankOf(person, programme.LadderId) is { Position: > 1 } ? MatEnd.Main : MatEnd.Beginners;
    }

    /// <summary>The newest value of a setting that holds on a day; null where nobody has set it.</summary>
    public string? Setting(string key, DateOnly day) => Settings
        .Where(s => s.Key == key && s.From <= day)
        .OrderBy(s => s.From).ThenBy(s => s.MadeAt).ThenBy(s => s.Id)
        .LastOrDefault()?.Value;

    /// <summary>A ladder's published editions, by the day from which each holds.</summary>
    public ImmutableArray<PublishedEdition> EditionsOf(Guid? ladder) => ladder is { } some ? editions.GetValueOrDefault(some, []) : [];

    /// <summary>The edition that holds on a day; null before the first.</summary>
    public PublishedEdition? EditionOn(Guid? ladder, DateOnly day) => EditionsOf(ladder).LastOrDefault(e => e.From <= day);

    /// <summary>
    /// The edition before the one that holds on a day, where a child may still be tested by it on that day; null where everybody is tested
    /// by the one that holds.
    /// </summary>
    public PublishedEdition? OlderBeside(Guid? ladder, DateOnly day)
    {
        var own = EditionsOf(ladder);
        for (var i = own.Length - 1; i > 0; i--)
            if (own[i].From <= day) return own[i].Changeover > day ? own[i - 1] : null;
        return null;
    }

    /// <summary>The first edition that holds only from after a day; null where none is published.</summary>
    public PublishedEdition? ComingAfter(Guid? ladder, DateOnly day) => EditionsOf(ladder).FirstOrDefault(e => e.From > day);

    /// <summary>The edition that was published last, even if it holds only from a day to come; null before the first.</summary>
    public PublishedEdition? NewestEdition(Guid? ladder) => EditionsOf(ladder) is { Length: > 0 } own ? own[^1] : null;

    /// <summary>Key of the unit of a programme in a term; null where none is set.</summary>
    public string? UnitOf(Guid programme, Guid term) => units.GetValueOrDefault((programme, term));

    /// <summary>Key of an item; null for an id that no edition gave.</summary>
    public string? ItemKey(Guid id) => itemKeys.GetValueOrDefault(id);

    /// <summary>Id of an item, the same through all editions; null for a key that no edition names.</summary>
    public Guid? ItemId(string key) => itemIds.TryGetValue(key, out var id) ? id : null;

    /// <summary>Every decision about a child's least time, oldest first, those that ended one too.</summary>
    public ImmutableArray<HeldTimeOff> TimeOffsOf(Guid person) => timeOffs.GetValueOrDefault(person, []);

    /// <summary>What is taken off a child's least time for a rank; null where nothing is.</summary>
    /// <param name="person">The child.</param>
    /// <param name="ladder">The ladder.</param>
    /// <param name="rank">Key of the rank.</param>
    public HeldTimeOff? TimeOffOf(Guid person, Guid? ladder, string rank) =>
        TimeOffsOf(person).LastOrDefault(t => Rank(t.RankId) is { } known && known.LadderId == ladder && known.Key == rank) is { Percent: > 0 } held ? held : null;

    /// <summary>Duties that hold on a day.</summary>
    public IEnumerable<DutyRow> DutiesOn(DateOnly day) => Duties.Where(d => d.From <= day && (d.To is null || d.To >= day));
}

/// <summary>The rows that a book is made of.</summary>
internal sealed record BookRows(
    ClubRow Club,
    ImmutableArray<HallRow> Halls,
    List<ProgrammeRow> Programmes,
    List<WeeklyHourRow> Hours,
    List<TermRow> Terms,
    List<ClosureRow> Closures,
    List<PromotionTestRow> Tests,
    ImmutableArray<SettingRow> Settings,
    List<DutyRow> Duties,
    List<RankRow> Ranks,
    List<BookPerson> People,
    List<LessonRow> Lessons,
    List<EveningRow> Evenings,
    List<EnrolmentRow> Enrolments,
    List<AwardRow> Awards,
    List<CrossingRow> Crossings,
    List<EditionRow> Editions,
    List<TermUnitRow> TermUnits,
    List<AgeRuleRow> AgeRules,
    List<ItemRow> Items,
    List<HeldTimeOff> TimeOffs,
    DateOnly LessonsFrom);
