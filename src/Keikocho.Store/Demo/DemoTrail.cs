using Keikocho.Core.Evening;
using Keikocho.Store.Keeping;

namespace Keikocho.Store.Demo;

/// <summary>The trail that such a club would have left, in the order of time, with its chain.</summary>
internal static class DemoTrail
{
    public static List<TrailRow> Of(DemoMaking making, DemoCast cast, DemoAwards awards, DemoPapers papers, DemoSyllabus syllabus, DemoCare care, DemoKnocks knocks, DemoEvenings evenings, Guid club, DemoRegisters registers, IReadOnlyList<Guid> laptops)
    {
        var lines = new List<TrailRow>();
        void Say(DateTimeOffset at, TrailKind kind, Guid subject, Guid? by, Guid? device = null) =>
            lines.Add(new TrailRow { Club = 1, At = at, Kind = kind, SubjectId = subject, ById = by, DeviceId = device });

        var head = cast.Head.Id;
        Say(making.MadeAt, TrailKind.ClubMade, club, null);
        foreach (var person in cast.Adults.Concat(cast.Leaders).Concat(cast.Children)) Say(person.MadeAt, TrailKind.PersonAdded, person.Id, head);
        foreach (var duty in papers.Duties) Say(making.MadeAt, TrailKind.DutyChanged, duty.PersonId, head);
        for (var t = 0; t < making.Terms.Count; t++) Say(LondonTime.At(making.Terms[t].From.AddDays(-7), 20 * 60), TrailKind.CalendarChanged, making.TermRows[t].Id, head);
        foreach (var (_, closure) in making.ClosureRows) Say(closure.MadeAt, TrailKind.ClosureMade, closure.Id, head);
        foreach (var award in awards.Awards) Say(award.MadeAt, TrailKind.RankRecorded, award.PersonId, award.ById ?? head);
        foreach (var crossing in awards.Crossings) Say(crossing.MadeAt, TrailKind.Crossed, crossing.PersonId, crossing.ById ?? head);
        SaySyllabus(making, syllabus, head, Say);
        SayCare(care, Say);
        SayEvenings(knocks, evenings, head, laptops[0], Say);
        var rows = making.EveningRows.ToDictionary(e => e.Id);
        foreach (var lesson in making.Lessons.Where(l => l.HasRegister(making.Today)))
        {
            var device = laptops[making.Size == DemoSize.Large ? lesson.Hour.Hall : 0];
            var by = registers.ActingAdult(lesson);
            Say(LondonTime.At(lesson.Row.Date, lesson.Hour.HalfTime + 3, 59), TrailKind.RestAbsent, lesson.Row.Id, by, device);
            var evening = rows[lesson.Row.EveningId];
            // The last lesson of the evening closes it.
            evening.ClosedAt = LondonTime.At(lesson.Row.Date, lesson.Hour.End + 20);
            evening.ClosedById = by;
        }

        foreach (var evening in making.EveningRows)
            if (evening.ClosedAt is { } closedAt) Say(closedAt, TrailKind.EveningClosed, evening.Id, evening.ClosedById);
        if (making.Size == DemoSize.Small)
        {
            foreach (var register in registers)
            {
                foreach (var mark in register.Marks)
                    if (mark.Kind == MarkKind.Corrected) Say(mark.MadeAt, TrailKind.MarkCorrected, mark.Id, mark.ById, mark.DeviceId);
                foreach (var stood in register.Marks.Where(m => m.Kind == MarkKind.Confirmed).GroupBy(m => m.PersonId))
                    Say(stood.First().MadeAt, TrailKind.SightingChanged, stood.Key, stood.First().ById, stood.First().DeviceId);
            }
        }

        // A stable sort: what was said at one instant stays in the order above.
        var ordered = lines.OrderBy(l => l.At).ToList();
        byte[] before = [];
        for (var i = 0; i < ordered.Count; i++)
        {
            ordered[i].Number = i + 1;
            ordered[i].Hash = before = TrailChain.HashOf(ordered[i], before);
        }

        return ordered;
    }

    private static void SaySyllabus(DemoMaking making, DemoSyllabus syllabus, Guid head, Action<DateTimeOffset, TrailKind, Guid, Guid?, Guid?> say)
    {
        foreach (var edition in syllabus.Editions) say(edition.PublishedAt!.Value, TrailKind.EditionPublished, edition.Id, edition.PublishedById, null);
        foreach (var rule in syllabus.AgeRules) say(rule.MadeAt, TrailKind.AgeRuleChanged, rule.Id, rule.ById, null);
        for (var t = syllabus.FirstTerm; t < making.Terms.Count; t++)
            foreach (var _ in making.ProgrammeRows) say(LondonTime.At(making.Terms[t].From.AddDays(-7), 20 * 60 + 45), TrailKind.UnitSet, making.TermRows[t].Id, head, null);
    }

    private static void SayCare(DemoCare care, Action<DateTimeOffset, TrailKind, Guid, Guid?, Guid?> say)
    {
        foreach (var stand in care.StandDowns)
        {
            say(stand.MadeAt, TrailKind.StandDownMade, stand.PersonId, stand.ById, null);
            if (stand.LiftedOn is { } lifted) say(LondonTime.At(lifted, 17 * 60), TrailKind.StandDownChanged, stand.PersonId, stand.LiftedById, null);
        }

        foreach (var way in care.Ways) say(LondonTime.At(way.AgreedOn, 20 * 60), TrailKind.AdaptationChanged, way.PersonId, way.ById, null);
        foreach (var choice in care.Choices.DistinctBy(c => (c.PersonId, c.Requirement))) say(choice.MadeAt, TrailKind.ItemsChosen, choice.PersonId, choice.ById, null);
        foreach (var verdict in care.Overrules) say(verdict.MadeAt, TrailKind.VerdictOverruled, verdict.PersonId, verdict.ById, null);
    }

    private static void SayEvenings(DemoKnocks knocks, DemoEvenings evenings, Guid head, Guid laptop, Action<DateTimeOffset, TrailKind, Guid, Guid?, Guid?> say)
    {
        foreach (var knock in knocks.Knocks) say(knock.MadeAt, TrailKind.KnockMade, knock.Id, head, laptop);
        foreach (var line in knocks.Lines) say(line.MadeAt, TrailKind.KnockLineAdded, line.KnockId, line.ById, line.DeviceId);
        foreach (var near in knocks.NearMisses) say(near.MadeAt, TrailKind.NearMissEntered, near.Id, near.ById, laptop);
        foreach (var showing in evenings.Showings) say(showing.MadeAt, TrailKind.ShowingChanged, showing.LessonId, showing.ById, laptop);
        foreach (var round in evenings.Togethers.DistinctBy(t => (t.LessonId, t.Round))) say(round.MadeAt, TrailKind.TogetherChanged, round.LessonId, head, laptop);
        foreach (var wish in evenings.KeepTogethers)
            foreach (var child in new[] { wish.FirstId, wish.SecondId }) say(LondonTime.At(wish.From, 20 * 60), TrailKind.PairWishChanged, child, head, laptop);
        foreach (var obstacle in evenings.Obstacles) say(LondonTime.At(evenings.FirstDay, 9 * 60), TrailKind.ObstacleChanged, obstacle.Id, head, laptop);
    }
}
