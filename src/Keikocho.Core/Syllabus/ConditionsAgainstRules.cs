using Keikocho.Core.Kernel;

namespace Keikocho.Core.Syllabus;

/// <summary>A condition, which is free text and printed as it stands, names a technique that an age rule bars.</summary>
/// <param name="Rank">Key of the rank.</param>
/// <param name="RankName">Its name.</param>
/// <param name="Requirement">Key of the requirement.</param>
/// <param name="Technique">The technique, as the name library or the rule spells it.</param>
/// <param name="Rule">The rule; of several the strictest.</param>
/// <param name="Because">In a sentence.</param>
public sealed record ConditionNotAllowed(string Rank, string RankName, string Requirement, string Technique, AgeRule Rule, Reason Because);

/// <summary>A condition names what a rule bars.</summary>
/// <param name="Condition">The condition.</param>
/// <param name="Rank">Name of the rank.</param>
/// <param name="Technique">The technique.</param>
/// <param name="Rule">The rule.</param>
public sealed record ConditionNamesBarred(string Condition, string Rank, string Technique, AgeRule Rule) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"The condition \"{Condition}\" of {Rank} names {Technique}, which the rule \"{Rule.Name}\" ({Rule.Source}, {Rule.SourceOn.Full()}) bars below {Words.Count(Rule.BelowAge, "year")}; write it as an item or reword it.";
}

/// <summary>
/// Finds techniques that conditions name and age rules bar. What the text means nobody can know ("not as Koshi-guruma" names it too), so
/// nothing is taken off a sheet: it is said, and somebody reads it.
/// </summary>
internal static class ConditionsAgainstRules
{
    public static IEnumerable<ConditionNotAllowed> Find(AgeRulesSnapshot snapshot, ItemNames names)
    {
        string[] said = [.. snapshot.Rules.SelectMany(rule => rule.Techniques)];
        foreach (var rank in snapshot.Edition.Ranks)
        {
            var children = snapshot.Children.Where(c => c.Rank == rank.Key).ToList();
            foreach (var requirement in rank.Requirements.Where(r => !string.IsNullOrWhiteSpace(r.Condition)))
            {
                foreach (var technique in names.In(requirement.Condition!, said))
                {
                    var strictest = snapshot.Rules.Where(rule => Bars(rule, technique, snapshot.Edition.Items, names) && IsFor(rule, children, snapshot)).MaxBy(rule => rule.BelowAge);
                    if (strictest is not null)
                        yield return new(rank.Key, rank.Name, requirement.Key, technique, strictest, new ConditionNamesBarred(requirement.Condition!.Trim(), rank.Name, technique, strictest));
                }
            }
        }
    }

    private static bool Bars(AgeRule rule, string technique, IReadOnlyList<Item> items, ItemNames names) =>
        rule.Techniques.Any(said => names.Means(said, technique))
        || AgeBars.IsOfKind(rule, technique, items, names)
        || items.Any(item => rule.Items.Contains(item.Key) && item.Technique is { } its && names.Alike(its, technique));

    // Without children the whole ladder is held against the rules.
    private static bool IsFor(AgeRule rule, List<RankCandidate> children, AgeRulesSnapshot snapshot) =>
        snapshot.Children.Count == 0 || children.Any(c => c.Born is not { } born || AgeBars.YearsBy(rule.AgeBy, born, snapshot.TestOn) < rule.BelowAge);
}
