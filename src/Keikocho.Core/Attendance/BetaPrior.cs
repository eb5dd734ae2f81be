namespace Keikocho.Core.Attendance;

/// <summary>Where a prior comes from.</summary>
public enum PriorSource
{
    /// <summary>Fitted to the club's own register.</summary>
    Fitted = 0,
    /// <summary>Too few children with enough lessons: the proposed one.</summary>
    TooFewChildren = 1,
    /// <summary>Every lesson attended, or none: no spread to fit, so the proposed one.</summary>
    AllOrNothing = 2,
    /// <summary>Children differ by no more than chance: the club's own rate at the most strength allowed.</summary>
    NoMoreThanChance = 3,
    /// <summary>Children differ by more than any beta allows: the club's own rate at the least strength.</summary>
    MoreThanAnyBeta = 4,
}

/// <summary>What is believed of any child's rate before its own lessons: a beta distribution, worth <paramref name="A"/> lessons attended and <paramref name="B"/> missed.</summary>
/// <param name="A">Above 0.</param>
/// <param name="B">Above 0.</param>
/// <param name="Children">Children with enough lessons to count.</param>
/// <param name="Source">Fitted, proposed, or at a limit.</param>
public sealed record BetaPrior(double A, double B, int Children, PriorSource Source)
{
    /// <summary>The common rate, 0 to 1.</summary>
    public double Mean => A / (A + B);

    /// <summary>
    /// Fits a prior by the method of moments for counts of different sizes: the spread of the rates, each weighed by its lessons,
    /// less the spread that chance alone would give.
    /// </summary>
    /// <remarks>
    /// With p the pooled rate, S the weighed sum of squares about it, n the lessons of a child, w their sum and k the children,
    /// the share of the spread that is between children is r = (S/(p(1-p)) - (k-1)) / (w - sum n^2/w - (k-1)), and a + b = 1/r - 1
    /// (J. C. Kleinman, Proportions with extraneous variance, JASA 68, 1973, 46-54, weights n; from memory).
    /// Where that is no beta: see <see cref="PriorSource"/>.
    /// </remarks>
    public static BetaPrior Fit(IReadOnlyList<LessonCount> register, PriorRule rule)
    {
        ArgumentNullException.ThrowIfNull(register);
        ArgumentNullException.ThrowIfNull(rule);
        rule.Guard();
        long lessons = 0, attended = 0, squares = 0;
        var children = 0;
        foreach (var child in register)
        {
            child.Guard();
            if (child.Held < rule.LeastLessons)
                continue;
            children++;
            lessons += child.Held;
            attended += child.Attended;
            squares += (long)child.Held * child.Held;
        }

        if (children < rule.LeastChildren)
            return new BetaPrior(rule.ProposedA, rule.ProposedB, children, PriorSource.TooFewChildren);
        if (attended == 0 || attended == lessons)
            return new BetaPrior(rule.ProposedA, rule.ProposedB, children, PriorSource.AllOrNothing);

        var p = (double)attended / lessons;

        // Sorted by size: the same children in another order give the same last digit.
        var spread = register
            .Where(c => c.Held >= rule.LeastLessons)
            .Select(c => c.Held * Square(((double)c.Attended / c.Held) - p))
            .Order().Sum();
        var between = (spread / (p * (1 - p))) - (children - 1);
        var whole = lessons - ((double)squares / lessons) - (children - 1);
        if (between <= 0 || (whole / between) - 1 > rule.MostStrength)
            return new BetaPrior(p * rule.MostStrength, (1 - p) * rule.MostStrength, children, PriorSource.NoMoreThanChance);
        var strength = (whole / between) - 1;
        return strength < PriorRule.LeastStrength
            ? new BetaPrior(p * PriorRule.LeastStrength, (1 - p) * PriorRule.LeastStrength, children, PriorSource.MoreThanAnyBeta)
            : new BetaPrior(p * strength, (1 - p) * strength, children, PriorSource.Fitted);
    }

    /// <summary>What is believed of a child's rate with its own lessons added.</summary>
    public ChildRate Of(LessonCount child)
    {
        ArgumentNullException.ThrowIfNull(child);
        child.Guard();
        return new ChildRate(A + child.Attended, B + (child.Held - child.Attended));
    }

    private static double Square(double x) => x * x;
}
