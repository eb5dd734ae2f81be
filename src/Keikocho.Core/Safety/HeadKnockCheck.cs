using Keikocho.Core.Kernel;

namespace Keikocho.Core.Safety;

/// <summary>
/// Judges the dates by walking a calendar: a day at a time, counting days since the knock and days since the last recorded beginning of days
/// without symptoms, until every condition of a step holds.
/// </summary>
public static class HeadKnockCheck
{
    private const int FarEnough = 800;

    /// <summary>What is wrong with <paramref name="answer"/>, a sentence each; empty when it is right.</summary>
    public static IReadOnlyList<string> Objections(HeadKnockSnapshot snapshot, HeadKnockAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        ArgumentNullException.ThrowIfNull(answer);
        var objections = new List<string>();
        void Expect(bool holds, string what)
        {
            if (!holds) objections.Add(what);
        }

        var walk = Walk(snapshot);
        Expect(answer.DayZero == walk.Zero, $"Day 0 is {walk.Zero.Iso()}.");
        Expect(answer.FreeFrom == walk.Free, $"The first day without symptoms is {walk.Free?.Iso() ?? "none"}.");
        Expect((answer.Advice is null) == (walk.Advised is null) && answer.Advice?.Dated == walk.Advised, $"The advice that counts is dated {walk.Advised?.Iso() ?? "never"}.");
        DateOnly?[] dates = [answer.LightMovement, answer.NoContactDrills, answer.FallsAndContact, answer.TestOrContest];
        foreach (var step in Enum.GetValues<KnockStep>())
        {
            var right = First(snapshot, walk, step);
            Expect(dates[(int)step - 1] == right, $"{step}: earliest is {right?.Iso() ?? "none"}, not {dates[(int)step - 1]?.Iso() ?? "none"}.");
            var own = answer.Steps.SingleOrDefault(s => s.Step == step);
            Expect(own is not null && own.Earliest == right, $"{step} is listed once with its date.");
            Expect(own is null || own.IsShut != IsOpen(snapshot, walk, step, right), $"{step} is {(own is { IsShut: true } ? "not shut" : "shut")} today.");
        }

        var contest = First(snapshot, walk, KnockStep.TestOrContest);
        Expect(
            answer.Tests.Select(t => (t.On, t.WordsOnly)).SequenceEqual(snapshot.Tests.ToHashSet().Order().Select(t => (t, walk.Advised is null || contest is null || t.DayNumber < contest.Value.DayNumber))),
            "A test before the earliest day, or without advice, is words only.");
        var contact = First(snapshot, walk, KnockStep.FallsAndContact);
        var lessons = snapshot.Lessons.ToList();
        lessons.Sort();
        Expect(answer.FirstLesson == (contact is null ? null : lessons.Where(l => l >= contact).Cast<DateOnly?>().FirstOrDefault()), "The first lesson is the first from the earliest day on.");
        var isMissing = walk.Free is null || walk.Advised is null || contact is null || contact > snapshot.Today;
        Expect(answer.Missing.Count > 0 == isMissing, "Something is missing exactly while the stand-down cannot be lifted.");
        Expect(answer.SeeADoctor.OfType<StillSymptoms>().Any() == (walk.Free is null && snapshot.Today.DayNumber - walk.Zero.DayNumber >= DoctorAfter(snapshot.Rule)), "A doctor is asked when symptoms go on.");
        return objections;
    }

    private static (DateOnly Zero, DateOnly? Free, DateOnly? Advised, DateOnly LastEvent) Walk(HeadKnockSnapshot s)
    {
        DateOnly zero = s.On, last = s.On;
        DateOnly? free = null, advised = null;
        for (var day = s.On; day <= s.Today; day = day.AddDays(1))
        {
            var isFurther = day > s.On && s.FurtherKnocks.Contains(day);
            if (isFurther) (zero, free, advised, last) = (day, null, null, day);
            if (s.SymptomsOn.Contains(day)) (free, advised, last) = (null, null, day);
            else if (s.FreeFrom.Contains(day) && !isFurther) (free, advised, last) = (day, null, day);
            if (free is not null && advised is null && s.Advice.Any(a => a.Dated == day)) advised = day;
        }

        return (zero, free, advised, last);
    }

    private static DateOnly? First(HeadKnockSnapshot s, (DateOnly Zero, DateOnly? Free, DateOnly? Advised, DateOnly LastEvent) walk, KnockStep step)
    {
        if (walk.Free is not { } free || (step == KnockStep.NoContactDrills && walk.Advised is null)) return null;
        for (var i = 0; i < FarEnough; i++)
        {
            var day = walk.LastEvent.AddDays(i);
            if (Holds(s.Rule, step, day.DayNumber - walk.Zero.DayNumber, day.DayNumber - free.DayNumber) && !(day < walk.Advised && step != KnockStep.LightMovement)) return day;
        }

        return null;
    }

    // Every rule that holds must be content: the club's own figures and each protocol by itself.
    private static bool Holds(KnockRule rule, KnockStep step, int sinceKnock, int sinceFree)
    {
        var stages = step switch { KnockStep.LightMovement => 1, KnockStep.NoContactDrills => 3, KnockStep.FallsAndContact => 4, _ => 5 };
        bool Content(int rest, int freeDays, int contactDay, int contestDay, int hours) =>
            sinceKnock >= Math.Max(2, rest)
            && sinceFree * 24 >= stages * hours
            && (step < KnockStep.FallsAndContact || (sinceFree >= freeDays && sinceKnock >= contactDay && (!rule.FallsWaitForContestDay || sinceKnock >= contestDay)))
            && (step != KnockStep.TestOrContest || sinceKnock >= contestDay);
        return Content(0, rule.SymptomFreeDays, 0, rule.ContestDay, rule.HoursPerStage)
            && KnockProtocols.All.Where(p => p.Key == rule.Protocol || p.Key == rule.AlsoProtocol)
                .All(p => Content(p.RestDays, p.SymptomFreeDays, p.ContactDay, p.ContestDay, p.HoursPerStage));
    }

    private static bool IsOpen(HeadKnockSnapshot s, (DateOnly Zero, DateOnly? Free, DateOnly? Advised, DateOnly LastEvent) walk, KnockStep step, DateOnly? earliest)
    {
        if (earliest is not { } from || s.Today < from || s.Today == walk.Zero) return false;
        if (step != KnockStep.LightMovement && walk.Advised is null) return false;
        KnockLifting?[] words = step < KnockStep.FallsAndContact ? [s.Lifted, s.Eased] : [s.Lifted];
        return words.Any(l => l is not null && l.On >= from && l.On <= s.Today);
    }

    private static int DoctorAfter(KnockRule rule) => KnockProtocols.All
        .Where(p => (p.Key == rule.Protocol || p.Key == rule.AlsoProtocol) && p.DoctorAfterDays > 0)
        .Aggregate(rule.DoctorAfterDays, (least, p) => Math.Min(least, p.DoctorAfterDays));
}
