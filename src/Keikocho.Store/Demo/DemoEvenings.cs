using Keikocho.Core.Kernel;
using Keikocho.Core.Partners;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Evening;
using Keikocho.Store.Kernel;

namespace Keikocho.Store.Demo;

/// <summary>What the evenings of the small demo left behind beside marks: what each end worked on, who worked with whom, what stands at the mat.</summary>
internal sealed class DemoEvenings
{
    /// <summary>Lessons back for which pairs are known.</summary>
    private const int LessonsWithPairs = 8;

    /// <summary>An item is worked on for so many lessons running.</summary>
    private const int LessonsEach = 2;

    private readonly DemoMaking making;
    private readonly DemoCast cast;
    private readonly DemoAwards awards;
    private readonly DemoCare care;

    public DemoEvenings(DemoMaking making, DemoCast cast, DemoAwards awards, DemoSyllabus syllabus, DemoCare care, DemoRegisters registers)
    {
        (this.making, this.cast, this.awards, this.care) = (making, cast, awards, care);
        if (making.Size == DemoSize.Large) return;
        for (var programme = 0; programme < making.ProgrammeRows.Count; programme++)
        {
            var lessons = making.Kept[programme].Where(l => l.Term >= making.Terms.Count - 2 && l.Row.ClosureId is null).ToList();
            foreach (var own in lessons.GroupBy(l => l.Term))
            {
                var edition = syllabus.On(making.Terms[own.Key].From).Edition;
                var unit = edition.Units.Single(u => u.Key == DemoSyllabus.UnitOf(own.Key)).Items;
                // The teens have no beginners' end.
                if (programme == 0) Show(MatEnd.Beginners, [.. own], edition, edition.FirstCourse, syllabus, registers);
                Show(MatEnd.Main, [.. own], edition, unit, syllabus, registers);
            }
        }

        foreach (var lesson in making.Kept[0].Where(l => l.Row.ClosureId is null).TakeLast(LessonsWithPairs)) Pair(lesson);
        // Two of the main group as near in age as there are: Hana settles beside the other.
        var one = Child("Hana");
        var other = Nearest(one);
        KeepTogethers =
        [
            new KeepTogetherRow
            {
                Club = 1, Id = making.Ids.Of(DemoPart.KeepTogether, LondonTime.At(making.Terms[^1].From.AddDays(9), 20 * 60), 0), FirstId = one, SecondId = other, From = making.Terms[^1].From.AddDays(9),
            },
        ];
        Obstacles =
        [
            new ObstacleRow
            {
                Club = 1, Id = making.Ids.Of(DemoPart.Obstacle, making.MadeAt, 0), HallId = making.HallRows[0].Id, Name = "Pillar", FromLengthCm = 700, FromWidthCm = 0, LengthCm = 40, WidthCm = 40,
            },
        ];
    }

    /// <summary>The first day of the present term: the hall was measured anew.</summary>
    public DateOnly FirstDay => making.Terms[^1].From;
    public List<ShowingRow> Showings { get; } = [];
    public List<TogetherRow> Togethers { get; } = [];
    public IReadOnlyList<KeepTogetherRow> KeepTogethers { get; } = [];
    public IReadOnlyList<ObstacleRow> Obstacles { get; } = [];

    private Guid Child(string given) => cast.Stays.First(s => s.To is null && Seal.Open(s.Person.Given) == given).Person.Id;

    private Guid Nearest(Guid child)
    {
        var born = Seal.Open(cast.Stays.First(s => s.Person.Id == child).Person.Born)!.Value.DayNumber;
        return cast.ByProgramme[0].Where(s => s.To is null && s.Person.Id != child && awards.StepOn(s.Person.Id, making.Today) > 0 && care.StandDowns.All(d => d.PersonId != s.Person.Id))
            .OrderBy(s => Math.Abs(Seal.Open(s.Person.Born)!.Value.DayNumber - born)).ThenBy(s => s.Number).First().Person.Id;
    }

    /// <summary>A throw first, the ground after it, each in the order of the syllabus and for two lessons running.</summary>
    private void Show(MatEnd end, List<DemoLesson> lessons, Edition edition, IReadOnlyList<string> keys, DemoSyllabus syllabus, DemoRegisters registers)
    {
        var items = keys.Distinct(StringComparer.Ordinal).Select(k => edition.Items.First(i => i.Key == k)).ToList();
        Item[] standing = [.. items.Where(i => i.Kind is ItemKind.Throw or ItemKind.Combination or ItemKind.Counter)];
        Item[] ground = [.. items.Where(i => i.Kind is ItemKind.HoldDown or ItemKind.Escape or ItemKind.Turnover or ItemKind.Sequence)];
        for (var n = 0; n < lessons.Count; n++)
        {
            var slot = 0;
            foreach (var part in new[] { standing, ground })
            {
                if (part.Length == 0) continue;
                slot++;
                var lesson = lessons[n];
                var madeAt = LondonTime.At(lesson.Row.Date, lesson.Hour.HalfTime + (slot == 1 ? 2 : 18), (int)end * 20);
                Showings.Add(new ShowingRow
                {
                    Club = 1,
                    Id = making.Ids.Of(DemoPart.Showing, madeAt, lesson.Number, ((int)end * 10) + slot),
                    LessonId = lesson.Row.Id,
                    End = (int)end,
                    ItemId = syllabus.ItemIds[part[n / LessonsEach % part.Length].Key],
                    Slot = slot,
                    ById = registers.ActingAdult(lesson),
                    MadeAt = madeAt,
                });
            }
        }
    }

    /// <summary>Neighbours by age turn in together, the other neighbour at the next lesson; each end is a round of its own.</summary>
    private void Pair(DemoLesson lesson)
    {
        var day = lesson.Row.Date;
        var there = cast.ByProgramme[0].Where(s => s.IsOn(day) && DemoTap.Of(making.Seed, s, lesson).Counts(lesson.Hour) && !care.StandDowns.Any(d => d.PersonId == s.Person.Id && d.From <= day && !(d.LiftedOn <= day)))
            .OrderBy(s => Seal.Open(s.Person.Born)).ThenBy(s => s.Number).ToLookup(s => awards.StepOn(s.Person.Id, day) > 0);
        foreach (var isMain in new[] { false, true })
        {
            var children = there[isMain].Select(s => s.Person).ToList();
            var madeAt = LondonTime.At(day, lesson.Hour.HalfTime + 3, isMain ? 30 : 0);
            for (var i = lesson.Number % 2; i + 1 < children.Count; i += 2)
            {
                var (one, other) = (children[i].Id, children[i + 1].Id);
                if (one.CompareTo(other) > 0) (one, other) = (other, one);
                Togethers.Add(new TogetherRow
                {
                    Club = 1,
                    Id = making.Ids.Of(DemoPart.Together, madeAt, lesson.Number, Togethers.Count),
                    LessonId = lesson.Row.Id,
                    OneId = one,
                    OtherId = other,
                    Round = isMain ? 2 : 1,
                    Activity = (int)PairsActivity.TurnIns,
                    MadeAt = madeAt,
                });
            }
        }
    }
}
