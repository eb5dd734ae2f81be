namespace Keikocho.Core.Attendance;

/// <summary>Judges a whole attendance answer by the equations that its figures must satisfy.</summary>
public static class AttendanceCheck
{
    /// <summary>What is wrong with <paramref name="answer"/>, a sentence each; empty when it is right.</summary>
    public static IReadOnlyList<string> Objections(AttendanceSnapshot snapshot, AttendanceAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        ArgumentNullException.ThrowIfNull(answer);
        var rule = snapshot.Rule ?? new PriorRule();
        var objections = new List<string>();
        void Expect(bool holds, string what)
        {
            if (!holds)
                objections.Add(what);
        }

        var (a, b) = (answer.Prior.A, answer.Prior.B);
        var enough = snapshot.Children.Where(c => c.Held >= rule.LeastLessons).ToArray();
        Expect(answer.Prior.Children == enough.Length, "The number of children with enough lessons is wrong.");
        double lessons = enough.Sum(c => c.Held);
        double attended = enough.Sum(c => c.Attended);
        var proposed = a == rule.ProposedA && b == rule.ProposedB;
        if (enough.Length < rule.LeastChildren)
            Expect(proposed && answer.Prior.Source == PriorSource.TooFewChildren, "With too few children the proposed prior is taken.");
        else if (attended == 0 || attended == lessons)
            Expect(proposed && answer.Prior.Source == PriorSource.AllOrNothing, "Without any spread the proposed prior is taken.");
        else
        {
            // The spread that this prior leads one to expect must be the spread there is; at a limit it must lie beyond it.
            var p = attended / lessons;
            var there = enough.Sum(c => c.Held * Math.Pow(((double)c.Attended / c.Held) - p, 2)) / (p * (1 - p));
            var share = 1 / (a + b + 1);
            var expected = enough.Sum(c => ((1 - share) + (share * c.Held)) * (1 - (c.Held / lessons)));
            Expect(Math.Abs((a / (a + b)) - p) < 1e-12, "The common rate is not the club's.");
            Expect(
                answer.Prior.Source switch
                {
                    PriorSource.Fitted => Math.Abs(there - expected) < 1e-9 * expected,
                    PriorSource.NoMoreThanChance => Math.Abs(a + b - rule.MostStrength) < 1e-9 && there < expected * (1 + 1e-9),
                    PriorSource.MoreThanAnyBeta => Math.Abs(a + b - PriorRule.LeastStrength) < 1e-9 && there > expected * (1 - 1e-9),
                    _ => false,
                },
                "The prior does not lead one to expect the spread there is.");
        }

        Expect(answer.Children.Count == snapshot.Children.Count, "Every child has its line.");
        foreach (var (child, line) in snapshot.Children.Zip(answer.Children))
        {
            Expect(line.Child == child.Child && Math.Abs(line.A - a - child.Attended) < 1e-9 && Math.Abs(line.B - b - (child.Held - child.Attended)) < 1e-9, $"{child.Child}: the child's own lessons are added to the common rate.");
            if (child is { Needed: { } needed, Left: { } left })
                Expect(line.Chance is { } c && Math.Abs(c - Tail(line.A, line.B, needed, left)) < 1e-9, $"{child.Child}: the chance is not the sum of its terms.");
            else
                Expect(line.Chance is null && line.Words is null, $"{child.Child}: no chance was asked for.");
        }

        var comes = snapshot.Children.Zip(answer.Children).Where(c => c.First.Tonight).Select(c => c.Second.A / (c.Second.A + c.Second.B)).ToArray();
        var chances = PoissonBinomial.Of(comes).Chances;
        objections.AddRange(PoissonBinomialCheck.Objections(comes, chances, 1e-10));
        objections.AddRange(PoissonBinomialCheck.Objections(chances, rule.LikelyPercent, new LikelyRange(answer.Tonight.From, answer.Tonight.To, answer.Tonight.Chance)));
        Expect(Math.Abs(answer.Tonight.Mean - comes.Sum()) < 1e-9 && answer.Tonight.Asked == comes.Length, "Tonight's mean is the sum of the rates.");
        return objections;
    }

    /// <summary>Each term from its closed form: a binomial coefficient times rising factorials.</summary>
    private static double Tail(double a, double b, int needed, int left)
    {
        double sum = 0;
        for (var k = Math.Max(0, needed); k <= left; k++)
        {
            double term = 1;
            for (var i = 0; i < left; i++)
                term *= (i < k ? (a + i) * (left - i) / (k - i) : b + i - k) / (a + b + i);
            sum += term;
        }

        return sum;
    }
}
