using Keikocho.Core.Partners;

namespace Keikocho.App.Pairs;

/// <summary>Who of those who are here has a place, and who needs an adult: one child without a partner must not cost the others theirs.</summary>
/// <param name="Question">The question of those who have a place.</param>
/// <param name="Left">Who needs an adult, in register order.</param>
public sealed record Seated(PartnersQuestion Question, IReadOnlyList<PartnersChild> Left)
{
    /// <summary>Finds out.</summary>
    /// <param name="question">Everybody who is here.</param>
    /// <param name="standing">The groups that stand; null where none were put to use.</param>
    /// <param name="answer">The pairs made anew, where they are known.</param>
    public static Seated Of(PartnersQuestion question, IReadOnlyList<StandingGroup>? standing, PartnersAnswer? answer = null)
    {
        ArgumentNullException.ThrowIfNull(question);
        if (standing is null)
            return Without(question, (answer ?? PairsTonight.Make(question)).Unplaced.Select(u => u.Child).ToHashSet().Contains);
        if (RepairPairs.Make(new RepairQuestion(question, standing)).Offers.Count > 0)
            return new Seated(question, []);

        // Whoever had no place when these were put to use still has none.
        var placed = standing.SelectMany(g => g.Members).ToHashSet();
        return Without(question, child => !placed.Contains(child));
    }

    private static Seated Without(PartnersQuestion question, Predicate<Core.Kernel.PersonId> isLeft)
    {
        // Who has no partner by a stand-down is in no pair and no list of those who want one.
        bool IsLeft(PartnersChild child) => child.MayHaveContact && child.MayBeOnTheMat && isLeft(child.Child);
        return new Seated(question with { Children = [.. question.Children.Where(c => !IsLeft(c))] }, [.. question.Children.Where(IsLeft).OrderBy(c => c.Register)]);
    }
}
