using System.Globalization;
using Keikocho.Store.Calendar;
using Keikocho.Store.Club;
using Keikocho.Store.Kernel;
using Keikocho.Store.People;

namespace Keikocho.Store.Demo;

/// <summary>The frame of one demo club: its calendar with rows, on which the cast and the marks stand.</summary>
internal sealed class DemoMaking
{
    /// <summary>Lessons of the first course.</summary>
    public const int FirstCourseLessons = 14;

    /// <summary>Weeks of the first course.</summary>
    public const int FirstCourseWeeks = 10;

    /// <summary>Registers of the large club; the last is as large as five of the others.</summary>
    public const int LargeProgrammes = 46;

    public DemoMaking(DateOnly today, int seed, DemoSize size)
    {
        Today = today;
        Seed = seed;
        Size = size;
        Ids = new DemoIds(seed);
        Terms = DemoCalendar.Terms(today, size == DemoSize.Large ? 30 : 5);
        Hours = size == DemoSize.Large ? LargeHours() : SmallHours();
        MadeAt = LondonTime.At(Terms[0].From.AddDays(-14), 10 * 60);
        HallRows = [.. Enumerable.Range(0, Hours.Max(h => h.Hall) + 1).Select(Hall)];
        ProgrammeRows = [.. Enumerable.Range(0, Hours.Max(h => h.Programme) + 1).Select(Programme)];
        TermRows = [.. Terms.Select((t, i) => new TermRow { Club = 1, Id = Ids.Of(DemoPart.Term, MadeAt, i), Name = t.Name, From = t.From, To = t.To })];
        ClosureRows = [.. DemoCalendar.Closures(today, Terms).Select((c, i) => (c, Row(c, i)))];
        LayLessons();
    }

    public DateOnly Today { get; }
    public int Seed { get; }
    public DemoSize Size { get; }
    public DemoIds Ids { get; }
    /// <summary>When the club began to keep its register here.</summary>
    public DateTimeOffset MadeAt { get; }
    public Guid LadderId => Ids.Of(DemoPart.Ladder, MadeAt, 0);
    public IReadOnlyList<DemoTerm> Terms { get; }
    public IReadOnlyList<DemoHour> Hours { get; }
    public IReadOnlyList<HallRow> HallRows { get; }
    public IReadOnlyList<ProgrammeRow> ProgrammeRows { get; }
    public IReadOnlyList<TermRow> TermRows { get; }
    public IReadOnlyList<(DemoClosure Plan, ClosureRow Row)> ClosureRows { get; }
    public List<EveningRow> EveningRows { get; } = [];
    /// <summary>By date, start and programme.</summary>
    public List<DemoLesson> Lessons { get; } = [];
    /// <summary>For each programme, the lessons with a register, by date.</summary>
    public List<DemoLesson>[] Kept { get; private set; } = [];

    /// <summary>Days after today of the two weekly evenings.</summary>
    private static readonly int[] BothEvenings = [0, 3];

    private static DemoHour[] SmallHours() =>
    [
        new(0, 0, 0, 17 * 60 + 30, 18 * 60 + 45, 17 * 60 + 45, 17 * 60 + 55, 18 * 60 + 7),
        new(0, 3, 1, 17 * 60 + 30, 18 * 60 + 45, 17 * 60 + 45, 17 * 60 + 55, 18 * 60 + 7),
        new(1, 0, 0, 18 * 60 + 55, 20 * 60 + 10, 19 * 60 + 10, 19 * 60 + 20, 19 * 60 + 32),
    ];

    private static DemoHour[] LargeHours() =>
    [
        .. from programme in Enumerable.Range(0, LargeProgrammes)
           from evening in BothEvenings
           let hall = programme / 2
           let start = programme % 2 == 0 ? 17 * 60 : 18 * 60 + 25
           select new DemoHour(programme, hall % 5 + evening, hall, start, start + 70, start + 15, start + 25, start + 35),
    ];

    private HallRow Hall(int number) => new()
    {
        Club = 1,
        Id = Ids.Of(DemoPart.Hall, MadeAt, number),
        Name = Size == DemoSize.Large ? Numbered("Hall", number + 1) : number == 0 ? "Lock House hall" : "School gym",
        MatLengthCm = number % 2 == 0 ? 1200 : 1000,
        MatWidthCm = 800,
        StripCm = 100,
        Address = Size == DemoSize.Large ? null : number == 0 ? "Lock House, 4 Towpath Lane, Larkwater" : "Larkwater School, Mill Street, Larkwater",
        Entrance = Size == DemoSize.Large ? null : number == 0 ? "The blue gate on Towpath Lane; an adult waits there" : "The car park behind the gym",
        Hospital = Size == DemoSize.Large ? null : "Larkwater General, Bridge Road",
    };

    private ProgrammeRow Programme(int number) => new()
    {
        Club = 1,
        Id = Ids.Of(DemoPart.Programme, MadeAt, number),
        Name = Size == DemoSize.Large ? Numbered("Juniors", number + 1) : number == 0 ? "Juniors" : "Teens",
        Position = number + 1,
        LadderId = LadderId,
        FirstCourseLessons = FirstCourseLessons,
        FirstCourseWeeks = FirstCourseWeeks,
        TrialLessons = 3,
    };

    private static string Numbered(string word, int number) => string.Create(CultureInfo.InvariantCulture, $"{word} {number}");

    private ClosureRow Row(DemoClosure plan, int number) => new()
    {
        Club = 1,
        Id = Ids.Of(DemoPart.Closure, LondonTime.At(plan.EnteredOn, 9 * 60), number),
        Name = plan.Name,
        From = plan.From,
        To = plan.To,
        HallId = plan.Hall is { } hall ? HallRows[hall].Id : null,
        MadeAt = LondonTime.At(plan.EnteredOn, 9 * 60),
    };

    private void LayLessons()
    {
        var evenings = new Dictionary<(DateOnly, int), EveningRow>();
        for (var t = 0; t < Terms.Count; t++)
        {
            // Laid a week before the term, one after the other: ids rise with the dates, and rows that belong together lie together.
            var laidAt = LondonTime.At(Terms[t].From.AddDays(-7), 20 * 60);
            for (var day = Terms[t].From; day <= Terms[t].To; day = day.AddDays(1))
            {
                foreach (var hour in Hours.Where(h => DemoCalendar.IsEvening(Today, day, h.DaysAfterToday)).OrderBy(h => h.Start).ThenBy(h => h.Programme))
                {
                    var closure = ClosureRows.FirstOrDefault(c => c.Plan.From <= day && day <= c.Plan.To && (c.Plan.Hall is null || c.Plan.Hall == hour.Hall));
                    var marksKept = closure.Plan?.MarksKept ?? false;
                    if (!evenings.TryGetValue((day, hour.Hall), out var evening))
                    {
                        evening = new EveningRow
                        {
                            Club = 1,
                            Id = Ids.Of(DemoPart.Evening, laidAt.AddMilliseconds(EveningRows.Count), day.DayNumber, hour.Hall),
                            Date = day,
                            HallId = HallRows[hour.Hall].Id,
                        };
                        evenings.Add((day, hour.Hall), evening);
                        EveningRows.Add(evening);
                    }

                    var row = new LessonRow
                    {
                        Club = 1,
                        Id = Ids.Of(DemoPart.Lesson, laidAt.AddMilliseconds(Lessons.Count), day.DayNumber, hour.Programme),
                        ProgrammeId = ProgrammeRows[hour.Programme].Id,
                        EveningId = evening.Id,
                        Date = day,
                        Start = Time(hour.Start),
                        End = Time(hour.End),
                        UkemiFrom = Time(hour.UkemiFrom),
                        UkemiTo = Time(hour.UkemiTo),
                        HalfTime = Time(hour.HalfTime),
                        ClosureId = closure.Row?.Id,
                    };
                    Lessons.Add(new DemoLesson(Lessons.Count, row, hour, t, marksKept));
                }
            }
        }

        // One register was never found again: the juniors' last evening in the first hall four weeks ago or before.
        var forgotten = Lessons.Last(l => l.Hour is { Programme: 0, DaysAfterToday: 0 } && l.Row.Date <= Today.AddDays(-28) && l.Row.ClosureId is null);
        forgotten.Row.RegisterMissing = true;
        Kept = new List<DemoLesson>[ProgrammeRows.Count];
        for (var p = 0; p < Kept.Length; p++) Kept[p] = [];
        foreach (var lesson in Lessons)
            if (lesson.HasRegister(Today)) Kept[lesson.Hour.Programme].Add(lesson);
    }

    public static TimeOnly Time(int minutes) => new(minutes / 60, minutes % 60);

    /// <summary>The first lesson of a programme with a register, that was held, on or after a day.</summary>
    public DateOnly FirstHeld(int programme, DateOnly day) =>
        Kept[programme].First(l => l.Row.Date >= day && l.Row.ClosureId is null).Row.Date;

    /// <summary>A person of this age today.</summary>
    public PersonRow Person(int number, string given, string family, int? age, DateTimeOffset madeAt, string? called = null)
    {
        var draw = Draw.About(Seed, DemoPart.Birth, number);
        return new PersonRow
        {
            Club = 1,
            Id = Ids.Of(DemoPart.Person, madeAt, number),
            Given = Seal.Close(given),
            Family = Seal.Close(family),
            Called = Seal.CloseIfAny(called),
            Born = age is { } years ? Seal.Close(Today.AddYears(-years).AddDays(-draw.Between(1, 360))) : null,
            MadeAt = madeAt,
        };
    }
}
