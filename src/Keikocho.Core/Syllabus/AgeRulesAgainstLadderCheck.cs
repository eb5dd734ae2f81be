using Keikocho.Core.Intake;
using Keikocho.Core.Names;

namespace Keikocho.Core.Syllabus;

/// <summary>Judges the list by the sheets of the children: what it names is on none of them, and what they leave out by age it names.</summary>
public static class AgeRulesAgainstLadderCheck
{
    /// <summary>What is wrong with <paramref name="answer"/>, a sentence each; empty when it is right.</summary>
    public static IReadOnlyList<string> Objections(AgeRulesSnapshot question, AgeRulesAnswer answer, NameIndex? names = null)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(answer);
        var objections = new List<string>();
        var edition = PreparedEdition.Of(question.Edition, names);
        IEnumerable<string?> units = question.Edition.Units.Select(u => u.Key).Append(null);
        foreach (var (child, unit) in question.Children.SelectMany(_ => units, (c, u) => (c, u)))
        {
            var sheet = MakeSheet.Make(new(question.Edition, child.Rank, question.TestOn, unit, question.Rules, SheetChild.Plain(child.Born)), edition);
            var listed = answer.NotAllowed.Where(n => n.Rank == child.Rank && n.Children.Contains(child.Child)).ToList();
            foreach (var item in sheet.Lines.SelectMany(l => l.Items).Where(i => listed.Any(n => n.Item == i.Item.Key)))
                objections.Add($"{child.Child}: {item.Item.Name} is listed, but it is on the sheet.");
            foreach (var left in sheet.LeftOut.OfType<BarredByAge>().Where(b => listed.All(n => n.ItemName != b.Item)))
                objections.Add($"{child.Child}: {left.Item} is left out by age, but it is not listed.");
        }

        if (answer.NotAllowed.Any(n => n.Children.Count > n.Of || (question.Children.Count > 0 && n.Children.Count == 0)))
            objections.Add("A line counts children that are not there.");
        objections.AddRange(Conditions(question, answer));
        return objections;
    }

    /// <summary>Each condition as one row of letters: what is named stands in it, and what a rule spells in it is named.</summary>
    private static IEnumerable<string> Conditions(AgeRulesSnapshot question, AgeRulesAnswer answer)
    {
        foreach (var rank in question.Edition.Ranks)
        {
            foreach (var requirement in rank.Requirements.Where(r => r.Condition is not null))
            {
                var text = $" {NameFold.Fold(requirement.Condition!)} ";
                var named = answer.Conditions.Where(c => c.Rank == rank.Key && c.Requirement == requirement.Key).ToList();
                foreach (var rule in question.Children.Count > 0 ? [] : question.Rules)
                {
                    foreach (var technique in rule.Techniques.Where(t => text.Contains($" {NameFold.Fold(t)} ", StringComparison.Ordinal)))
                    {
                        if (!named.Any(n => n.Rule.BelowAge >= rule.BelowAge))
                            yield return $"The condition \"{requirement.Condition}\" names {technique}, but it is not listed.";
                    }
                }

                foreach (var bad in named.Where(n => !question.Rules.Contains(n.Rule) || !n.Because.Sentence.Contains(n.Technique, StringComparison.Ordinal)))
                    yield return $"The condition \"{requirement.Condition}\" is listed under a rule that is not there.";
            }
        }

        if (answer.Conditions.Any(c => question.Edition.Ranks.All(r => r.Key != c.Rank || r.Requirements.All(q => q.Key != c.Requirement || q.Condition is null))))
            yield return "A condition is listed that is not there.";
    }
}
