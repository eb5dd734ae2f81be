using Keikocho.Core.Evening;
using Keikocho.Store.Calendar;
using Keikocho.Store.Demo;
using Keikocho.Store.Kernel;
using Keikocho.Store.Marks;
using Keikocho.Store.People;

namespace Keikocho.Store.Tests.Demo;

/// <summary>A small demo with the questions that the tests ask of it.</summary>
internal sealed class Made
{
    private static readonly Lazy<IReadOnlyList<Made>> All = new(() =>
    [
        .. new[] { "2026-11-25", "2028-02-29", "2026-12-31", "2027-01-01", "2026-12-25", "2027-01-09", "2026-08-15", "2026-03-29", "2025-10-26", "2027-06-06" }
            .SelectMany((day, i) => new[] { new Made(DateOnly.Parse(day, System.Globalization.CultureInfo.InvariantCulture), 1), new Made(DateOnly.Parse(day, System.Globalization.CultureInfo.InvariantCulture), 1000 - 77 * i) }),
    ]);

    public Made(DateOnly today, int seed)
    {
        Rows = DemoClub.Make(today, seed, DemoSize.Small);
        Registers = [.. Rows.Registers];
        States = [.. Registers.SelectMany(r => r.Marks.GroupBy(m => m.PersonId).Select(g => FoldMarks.Fold(r.Lesson, g.Key, [.. g], new AttendanceRules())!))];
        ById = Rows.People.ToDictionary(p => p.Id);
        Said = $"today {today:yyyy-MM-dd}, seed {seed}";
    }

    /// <summary>Ordinary days, a leap day, the turn of the year, Christmas Day and both changes of the clocks, each with two seeds.</summary>
    public static IReadOnlyList<Made> Samples => All.Value;

    public DemoRows Rows { get; }
    public IReadOnlyList<LessonMarks> Registers { get; }
    public IReadOnlyList<AttendanceRow> States { get; }
    public IReadOnlyDictionary<Guid, PersonRow> ById { get; }
    public string Said { get; }
    public DateOnly Today => Rows.Today;
    public ProgrammeRow Juniors => Rows.Programmes[0];
    public ProgrammeRow Teens => Rows.Programmes[1];
    public TermRow Term => Rows.Terms[^1];
    public PromotionTestRow NextTest => Rows.PromotionTests.First(t => t.ProgrammeId == Juniors.Id && t.Date >= Today);

    public IEnumerable<LessonRow> LessonsOf(ProgrammeRow programme) => Rows.Lessons.Where(l => l.ProgrammeId == programme.Id);
    public IEnumerable<EnrolmentRow> Now(ProgrammeRow programme) => Rows.Enrolments.Where(e => e.ProgrammeId == programme.Id && e.From <= Today && (e.To is null || e.To >= Today));
    public IEnumerable<DutyRow> Duties(DutyKind kind) => Rows.Duties.Where(d => d.Kind == kind);
    public IEnumerable<PersonRow> Adults => Rows.Duties.Where(d => d.Kind != DutyKind.JuniorLeader).Select(d => ById[d.PersonId]).Distinct();
    public IEnumerable<PersonRow> Leaders => Duties(DutyKind.JuniorLeader).Select(d => ById[d.PersonId]);
    public IEnumerable<PersonRow> Children => Rows.People.Except(Adults).Except(Leaders);
    public int Attended(Guid person) => States.Count(s => s.PersonId == person && s.Counts);

    public int? RankNow(Guid person) => Rows.Awards.Where(a => a.PersonId == person).OrderBy(a => a.On).LastOrDefault() is { } award
        ? Rows.Ranks.Single(r => r.Id == award.RankId).Position
        : null;

    public static string CalledOf(PersonRow person) => Seal.Open(person.Called) ?? Seal.Open(person.Given)!;

    public static int AgeOn(DateOnly born, DateOnly day)
    {
        var years = day.Year - born.Year;
        return (day.Month, day.Day).CompareTo((born.Month, born.Day)) < 0 ? years - 1 : years;
    }

    public int? Age(PersonRow person) => Seal.Open(person.Born) is { } born ? AgeOn(born, Today) : null;
}
