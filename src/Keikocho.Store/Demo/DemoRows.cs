using Keikocho.Store.Calendar;
using Keikocho.Store.Club;
using Keikocho.Store.Evening;
using Keikocho.Store.Keeping;
using Keikocho.Store.Marks;
using Keikocho.Store.People;
using Keikocho.Store.Promotion;
using Keikocho.Store.Safety;
using Keikocho.Store.Syllabus;

namespace Keikocho.Store.Demo;

/// <summary>How large the demo club is.</summary>
public enum DemoSize
{
    /// <summary>About sixty children, two programmes, eighteen months.</summary>
    Small = 0,
    /// <summary>2,000 children on the register in 45 programmes of 40 and one of 200, ten years, about two million marks: for the benchmarks.</summary>
    Large = 1,
}

/// <summary>The register of one lesson.</summary>
/// <param name="Lesson">The lesson.</param>
/// <param name="Marks">All its marks, in the order in which they were made.</param>
public sealed record LessonMarks(LessonRow Lesson, IReadOnlyList<MarkRow> Marks);

/// <summary>All rows of a demo club. The marks are made while they are walked through, so that a large club needs no large memory.</summary>
public sealed class DemoRows
{
    /// <summary>The day that the club was made for: it has a lesson of the juniors on it.</summary>
    public required DateOnly Today { get; init; }
    /// <summary>The club.</summary>
    public required ClubRow Club { get; init; }
    /// <summary>Halls.</summary>
    public required IReadOnlyList<HallRow> Halls { get; init; }
    /// <summary>Devices: laptops, and one tablet whose marks sometimes clash.</summary>
    public required IReadOnlyList<DeviceRow> Devices { get; init; }
    /// <summary>Adults, leaders and children.</summary>
    public required IReadOnlyList<PersonRow> People { get; init; }
    /// <summary>Families with more than one member in the club.</summary>
    public required IReadOnlyList<FamilyRow> Families { get; init; }
    /// <summary>Their members.</summary>
    public required IReadOnlyList<FamilyMemberRow> FamilyMembers { get; init; }
    /// <summary>Contacts.</summary>
    public required IReadOnlyList<ContactRow> Contacts { get; init; }
    /// <summary>Registrations.</summary>
    public required IReadOnlyList<RegistrationRow> Registrations { get; init; }
    /// <summary>Photo consents, given and refused.</summary>
    public required IReadOnlyList<ConsentRow> Consents { get; init; }
    /// <summary>Duties of adults and leaders.</summary>
    public required IReadOnlyList<DutyRow> Duties { get; init; }
    /// <summary>Children who do not work together.</summary>
    public required IReadOnlyList<KeepApartRow> KeepAparts { get; init; }
    /// <summary>Ladders.</summary>
    public required IReadOnlyList<LadderRow> Ladders { get; init; }
    /// <summary>Ranks.</summary>
    public required IReadOnlyList<RankRow> Ranks { get; init; }
    /// <summary>The published editions of the syllabus, oldest first.</summary>
    public required IReadOnlyList<EditionRow> Editions { get; init; }
    /// <summary>Items with their ids.</summary>
    public required IReadOnlyList<ItemRow> Items { get; init; }
    /// <summary>The unit of each term and programme since the first edition.</summary>
    public required IReadOnlyList<TermUnitRow> TermUnits { get; init; }
    /// <summary>Age rules that the club entered.</summary>
    public required IReadOnlyList<AgeRuleRow> AgeRules { get; init; }
    /// <summary>Programmes.</summary>
    public required IReadOnlyList<ProgrammeRow> Programmes { get; init; }
    /// <summary>Weekly hours.</summary>
    public required IReadOnlyList<WeeklyHourRow> WeeklyHours { get; init; }
    /// <summary>Terms, oldest first; the last contains today.</summary>
    public required IReadOnlyList<TermRow> Terms { get; init; }
    /// <summary>Closures.</summary>
    public required IReadOnlyList<ClosureRow> Closures { get; init; }
    /// <summary>Evenings.</summary>
    public required IReadOnlyList<EveningRow> Evenings { get; init; }
    /// <summary>Lessons by date and start, to the end of the present term.</summary>
    public required IReadOnlyList<LessonRow> Lessons { get; init; }
    /// <summary>One promotion test a term and programme, and the date of the next.</summary>
    public required IReadOnlyList<PromotionTestRow> PromotionTests { get; init; }
    /// <summary>Enrolments.</summary>
    public required IReadOnlyList<EnrolmentRow> Enrolments { get; init; }
    /// <summary>Places in the register, by term.</summary>
    public required IReadOnlyList<RegisterPlaceRow> RegisterPlaces { get; init; }
    /// <summary>Crossings to the main group.</summary>
    public required IReadOnlyList<CrossingRow> Crossings { get; init; }
    /// <summary>Awards. Who has none wears the first rank.</summary>
    public required IReadOnlyList<AwardRow> Awards { get; init; }
    /// <summary>Stand-downs: one that stands, one whose review day has passed, one that was lifted, and those of the knocks.</summary>
    public required IReadOnlyList<StandDownRow> StandDowns { get; init; }
    /// <summary>Agreed other ways of showing.</summary>
    public required IReadOnlyList<AdaptationRow> Adaptations { get; init; }
    /// <summary>Items chosen from pools.</summary>
    public required IReadOnlyList<ChosenItemRow> ChosenItems { get; init; }
    /// <summary>Verdicts set against the sum.</summary>
    public required IReadOnlyList<OverruleRow> Overrules { get; init; }
    /// <summary>Children who are asked to work together.</summary>
    public required IReadOnlyList<KeepTogetherRow> KeepTogethers { get; init; }
    /// <summary>What stands at the mats.</summary>
    public required IReadOnlyList<ObstacleRow> Obstacles { get; init; }
    /// <summary>What each end worked on in the present term and the one before.</summary>
    public required IReadOnlyList<ShowingRow> Showings { get; init; }
    /// <summary>Who worked together at the last lessons.</summary>
    public required IReadOnlyList<TogetherRow> Togethers { get; init; }
    /// <summary>Knocks: one that was recovered from, one whose child is still off the mat.</summary>
    public required IReadOnlyList<KnockRow> Knocks { get; init; }
    /// <summary>Their accident records.</summary>
    public required IReadOnlyList<KnockLineRow> KnockLines { get; init; }
    /// <summary>Near misses.</summary>
    public required IReadOnlyList<NearMissRow> NearMisses { get; init; }
    /// <summary>The trail with its chain.</summary>
    public required IReadOnlyList<TrailRow> Trail { get; init; }
    /// <summary>The registers by date and start, up to yesterday; made anew, and alike, each time they are walked through.</summary>
    public required IEnumerable<LessonMarks> Registers { get; init; }
}
