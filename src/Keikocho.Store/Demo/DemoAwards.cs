using Keikocho.Core.Kernel;
using Keikocho.Store.Calendar;
using Keikocho.Store.Promotion;
using Keikocho.Store.Syllabus;

namespace Keikocho.Store.Demo;

/// <summary>Ranks over time: brought along, or given at a test to a child who had the lessons and the weeks.</summary>
internal sealed class DemoAwards
{
    private readonly DemoMaking making;
    private readonly DemoCast cast;
    private readonly IReadOnlyList<RankRow> ranks;
    private readonly Dictionary<Guid, Standing> standings = [];
    private ILookup<Guid, (DateOnly On, int Step)>? steps;

    public DemoAwards(DemoMaking making, DemoCast cast, IReadOnlyList<RankRow> ranks)
    {
        this.making = making;
        this.cast = cast;
        this.ranks = ranks;
        foreach (var stay in cast.Stays) Begin(stay);
        for (var term = 0; term < making.Terms.Count; term++) Walk(term);
        SetNextTests();
    }

    public List<PromotionTestRow> Tests { get; } = [];
    public List<AwardRow> Awards { get; } = [];
    public List<CrossingRow> Crossings { get; } = [];

    /// <summary>The step of the ladder that a person wears on the morning of a day; 0 for the first.</summary>
    public int StepOn(Guid person, DateOnly day)
    {
        steps ??= Awards.Select(a => (a.PersonId, On: a.On!.Value, Step: ranks.TakeWhile(r => r.Id != a.RankId).Count())).ToLookup(a => a.PersonId, a => (a.On, a.Step));
        return steps[person].Where(a => a.On < day).Select(a => a.Step).DefaultIfEmpty().Max();
    }

    private sealed class Standing
    {
        public int Step { get; set; }
        public int Attended { get; set; }
        public DateOnly CountsFrom { get; set; }
        public bool HasCrossed { get; set; }
    }

    private void Begin(Stay stay)
    {
        if (standings.TryGetValue(stay.Person.Id, out var known))
        {
            // Came up from another programme: joins the main group there at once.
            if (known.Step > 0) Cross(stay, stay.From, null, stay.Number, true);
            return;
        }

        var standing = new Standing { Step = stay.StartRank, CountsFrom = stay.From };
        standings.Add(stay.Person.Id, standing);
        if (stay.StartRank == 0) return;
        if (stay.Transferred)
        {
            Give(stay, stay.StartRank, stay.From.AddDays(-200), AwardSource.Transferred, null, stay.Person.MadeAt);
            // The rank is worn, the falls are seen first.
            Cross(stay, stay.From.AddDays(14), cast.Head.Id, stay.Number, false);
        }
        else
        {
            var first = making.Terms[0].From;
            for (var step = 1; step <= stay.StartRank; step++)
            {
                var on = first.AddDays(-125 * (stay.StartRank - step) - 30);
                Give(stay, step, on, AwardSource.Imported, null, making.MadeAt);
                if (step == 1) Cross(stay, on, null, stay.Number, true);
                standing.CountsFrom = on.AddDays(1);
            }
        }

        standing.HasCrossed = true;
        stay.Enrolment.CountsFrom = standing.CountsFrom;
    }

    private void Walk(int term)
    {
        var plan = making.Terms[term];
        for (var programme = 0; programme < making.ProgrammeRows.Count; programme++)
        {
            var madeAt = LondonTime.At(plan.From.AddDays(-7), 20 * 60);
            var isOver = plan.Test < making.Today;
            var test = new PromotionTestRow
            {
                Club = 1,
                Id = making.Ids.Of(DemoPart.Test, madeAt, term, programme),
                ProgrammeId = making.ProgrammeRows[programme].Id,
                Date = plan.Test,
                ListClosedAt = isOver ? LondonTime.At(plan.Test.AddDays(-6), 20 * 60) : null,
                ResultsLockedAt = isOver ? LondonTime.At(plan.Test, 13 * 60) : null,
            };
            Tests.Add(test);
            if (!isOver) continue;
            var lessons = making.Kept[programme].Where(l => l.Term == term && l.Row.ClosureId is null && l.Row.Date < plan.Test).ToList();
            foreach (var stay in cast.ByProgramme[programme])
                if (stay.IsOn(plan.Test)) Try(stay, lessons, term, test);
        }
    }

    /// <summary>The test of the term after this one is set already: whoever is not in time for this one is told the date.</summary>
    private void SetNextTests()
    {
        const int weeksToTheNext = 16;
        var last = making.Terms[^1];
        var madeAt = LondonTime.At(last.From.AddDays(-7), 20 * 60);
        for (var programme = 0; programme < making.ProgrammeRows.Count; programme++)
        {
            Tests.Add(new PromotionTestRow
            {
                Club = 1,
                Id = making.Ids.Of(DemoPart.Test, madeAt, making.Terms.Count, programme),
                ProgrammeId = making.ProgrammeRows[programme].Id,
                Date = last.Test.AddDays(7 * weeksToTheNext),
            });
        }
    }

    private void Try(Stay stay, List<DemoLesson> lessons, int term, PromotionTestRow test)
    {
        var standing = standings[stay.Person.Id];
        foreach (var lesson in lessons)
            if (stay.IsOn(lesson.Row.Date) && lesson.Row.Date >= standing.CountsFrom && DemoTap.Of(making.Seed, stay, lesson).Counts(lesson.Hour)) standing.Attended++;
        if (standing.Step == DemoLadder.Highest || standing.Attended < DemoLadder.LessonsNeeded(standing.Step)) return;
        if (test.Date < standing.CountsFrom.AddDays(7 * DemoLadder.WeeksNeeded(standing.Step))) return;
        var draw = Draw.About(making.Seed, DemoPart.Promotion, stay.Number, term);
        // Not everybody who has the lessons shows everything on the day.
        if (!draw.Chance(850)) return;
        standing.Step++;
        standing.Attended = 0;
        standing.CountsFrom = test.Date.AddDays(1);
        stay.Enrolment.CountsFrom = standing.CountsFrom;
        Give(stay, standing.Step, test.Date, AwardSource.Promoted, test.Id, test.ResultsLockedAt!.Value);
        if (!standing.HasCrossed) Cross(stay, test.Date, cast.Head.Id, stay.Number, false);
        standing.HasCrossed = true;
    }

    private void Give(Stay stay, int step, DateOnly on, AwardSource source, Guid? test, DateTimeOffset madeAt) => Awards.Add(new AwardRow
    {
        Club = 1,
        Id = making.Ids.Of(DemoPart.Award, madeAt, stay.Number, step),
        PersonId = stay.Person.Id,
        LadderId = making.LadderId,
        RankId = ranks[step].Id,
        On = on,
        Source = source,
        TestId = test,
        ById = source == AwardSource.Promoted ? cast.Head.Id : null,
        MadeAt = madeAt,
    });

    private void Cross(Stay stay, DateOnly on, Guid? by, int number, bool withTheRegister)
    {
        var madeAt = withTheRegister && on < making.Terms[0].From ? making.MadeAt : LondonTime.At(on, 13 * 60 + 30);
        Crossings.Add(new CrossingRow
        {
            Club = 1,
            Id = making.Ids.Of(DemoPart.Crossing, madeAt, number),
            PersonId = stay.Person.Id,
            ProgrammeId = making.ProgrammeRows[stay.Programme].Id,
            End = MatEnd.Main,
            On = on,
            ById = by,
            MadeAt = madeAt,
        });
    }
}
