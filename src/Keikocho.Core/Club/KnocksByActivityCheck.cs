namespace Keikocho.Core.Club;

/// <summary>Judges rates of knocks: counts are added up again, and the ends of an interval are tried in the chances themselves.</summary>
public static class KnocksByActivityCheck
{
    private const double Nearly = 1e-6;

    /// <summary>What is wrong with <paramref name="answer"/>, a sentence each; empty when it is right.</summary>
    public static IReadOnlyList<string> Objections(KnocksQuestion question, KnocksAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(answer);
        var objections = new List<string>();
        void Expect(bool holds, string what)
        {
            if (!holds) objections.Add(what);
        }

        Expect(answer.All.Knocks == answer.Activities.Sum(a => a.Knocks) && answer.All.ChildEvenings == question.ChildEvenings, "All together is all activities.");
        Expect(answer.All.NearMisses == answer.Activities.Sum(a => a.NearMisses), "Near misses are counted apart.");
        Expect(answer.Activities.Count == question.Activities.Count, "Every activity has its line.");
        foreach (var asked in question.Activities)
        {
            var said = answer.Activities.SingleOrDefault(a => a.Activity == asked.Activity);
            Expect(said is not null && said.Knocks == asked.Knocks && said.NearMisses == asked.NearMisses && said.ChildEvenings == asked.ChildEvenings, $"{asked.Activity} has its own counts.");
        }

        foreach (var rate in answer.Activities.Prepend(answer.All))
        {
            Expect(rate.TooFewToSay == (rate.Knocks < question.Rule.TooFewBelow), "Too few to say is below the limit.");
            Expect((rate.PerHundred is null) == (rate.TooFewToSay || rate.ChildEvenings is null or 0), "A rate is said exactly where there is enough to say.");
            if (rate is not { PerHundred: { } per, From: { } from, To: { } to, ChildEvenings: { } of }) continue;
            var tail = (1 - (question.Rule.IntervalPercent / 100.0)) / 2;
            Expect(Math.Abs((per * of) - (100.0 * rate.Knocks)) < Nearly * of, "The rate is knocks to 100 child-evenings.");
            Expect(from <= per && per <= to, "The rate lies in its interval.");
            Expect(Math.Abs(AtLeast(rate.Knocks, of, from / 100) - tail) < Nearly, "At the lower end so many or more are as rare as said.");
            Expect(rate.Knocks == of || Math.Abs(1 - AtLeast(rate.Knocks + 1, of, to / 100) - tail) < Nearly, "At the upper end so many or fewer are as rare as said.");
        }

        for (var i = 1; i < answer.Activities.Count; i++)
        {
            var (a, b) = (answer.Activities[i - 1], answer.Activities[i]);
            Expect((a.PerHundred ?? -1) > (b.PerHundred ?? -1) || ((a.PerHundred ?? -1) == (b.PerHundred ?? -1) && a.Knocks >= b.Knocks), "The highest rate is first, then the larger count.");
        }

        return objections;
    }

    /// <summary>The chance of so many or more, child by child: whether there are still fewer than so many after each.</summary>
    private static double AtLeast(int hits, int of, double share)
    {
        if (hits <= 0) return 1;
        var fewer = new double[hits];
        fewer[0] = 1;
        var reached = 0.0;
        for (var child = 0; child < of; child++)
        {
            reached += fewer[hits - 1] * share;
            for (var i = hits - 1; i > 0; i--) fewer[i] = (fewer[i] * (1 - share)) + (fewer[i - 1] * share);
            fewer[0] *= 1 - share;
        }

        return reached;
    }
}
