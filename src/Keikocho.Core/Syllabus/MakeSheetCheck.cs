using Keikocho.Core.Names;

namespace Keikocho.Core.Syllabus;

/// <summary>
/// Judges a sheet from the edition alone: which lines there must be, and for each which items and how many. It shares no step with
/// the sum but the comparing of spellings.
/// </summary>
public static class MakeSheetCheck
{
    /// <summary>What is wrong with <paramref name="answer"/>, a sentence each; empty when it is right.</summary>
    public static IReadOnlyList<string> Objections(SheetSnapshot question, RequirementSheet answer, NameIndex? names = null)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(answer);
        var objections = new List<string>();
        var expected = new ExpectedLines(question, names).All();
        foreach (var missing in expected.Select(e => e.Key).Except(answer.Lines.Select(l => l.Requirement)))
            objections.Add($"The line {missing} is missing.");
        foreach (var line in answer.Lines)
        {
            if (expected.FirstOrDefault(e => e.Key == line.Requirement) is not { } wanted)
                objections.Add($"The line {line.Requirement} is not asked.");
            else
                objections.AddRange(About(line, wanted, question).Select(o => $"{line.Requirement}: {o}"));
        }

        if (answer.Lines.Select(l => l.Requirement).Distinct().Count() != answer.Lines.Count)
            objections.Add("A line stands twice.");
        objections.AddRange(Order(answer.Lines));
        objections.AddRange(Head(question, answer, expected.Any(e => e.Drawn)));
        return objections;
    }

    private static IEnumerable<string> About(SheetLine line, ExpectedLine wanted, SheetSnapshot question)
    {
        if (string.IsNullOrWhiteSpace(line.Title))
            yield return "it has no words.";
        if (line.Count != wanted.Count)
            yield return $"{line.Count} instead of {wanted.Count} are asked.";
        if (!line.Items.Select(i => i.Item.Key).Order(StringComparer.Ordinal).SequenceEqual(wanted.Shown.Keys.Order(StringComparer.Ordinal)))
            yield return $"the items are {string.Join(", ", line.Items.Select(i => i.Item.Key))} instead of {string.Join(", ", wanted.Shown.Keys)}.";
        var requirement = wanted.Requirement;
        if (line.Condition != requirement.Condition || line.Critical != requirement.Critical || line.Carry != requirement.Carry)
            yield return "condition, weight or carry are not the requirement's.";
        if ((line.FromRank is null) != wanted.Own)
            yield return "it does not say from which rank it comes.";
        if ((line.Ages is not null) != (question.Child is null && requirement.Ages is { } band && (band.From ?? band.To) is not null))
            yield return "ages stand on the copy on the wall and nowhere else.";
        foreach (var item in line.Items)
        {
            if (question.Child is not { } child)
            {
                if (item.Way is not null || item.KeptUntil is not null || item.InsteadOf is not null || item.Chosen)
                    yield return $"{item.Item.Key} is one child's, and this is the wall's.";
                continue;
            }

            if (!wanted.Shown.TryGetValue(item.Item.Key, out var asked))
                continue;
            if ((item.InsteadOf is null) != asked.Contains(item.Item.Key))
                yield return $"{item.Item.Key} says wrongly whether it stands in for another.";
            if (item.Way != child.Ways.FirstOrDefault(w => w.Item == item.Item.Key)?.Wording)
                yield return $"{item.Item.Key} is not shown in the agreed way.";
            // A stand-in keeps its own pass or that of what it stands in for.
            var own = child.Kept.Where(k => k.Item == item.Item.Key && k.Until >= question.TestOn).Select(k => k.Until).ToList();
            var others = child.Kept.Where(k => asked.Contains(k.Item) && k.Until >= question.TestOn).Select(k => k.Until).ToList();
            var right = own.Count > 0 ? item.KeptUntil == own.Max()
                : item.InsteadOf is null ? item.KeptUntil is null
                : item.KeptUntil is { } day ? others.Contains(day) : others.Count < asked.Count;
            if (!right)
                yield return $"{item.Item.Key} is wrongly kept or not kept.";
            if (item.Chosen != wanted.Chosen.Contains(item.Item.Key))
                yield return $"{item.Item.Key} is wrongly marked as chosen.";
        }
    }

    private static IEnumerable<string> Order(IReadOnlyList<SheetLine> lines)
    {
        for (var i = 1; i < lines.Count; i++)
        {
            if (lines[i].Part < lines[i - 1].Part)
                yield return $"{lines[i].Requirement} stands behind a later part.";
        }

        foreach (var part in lines.GroupBy(l => l.Part))
        {
            var safe = part.Select(l => part.Key >= SheetPart.Words && l.Items.Any(i => i.Item.Safety)).ToList();
            if (safe.SkipWhile(s => s).Any(s => s))
                yield return $"In {part.Key} a safety word does not come first.";
            var again = part.Where((_, i) => !safe[i]).Select(l => l.FromRank is not null).ToList();
            if (again.SkipWhile(a => !a).Any(a => !a) && part.All(l => l.Carry != Carry.OnceAskedStays))
                yield return $"In {part.Key} something new stands behind what is asked again.";
        }

        foreach (var line in lines.Where(l => l.Items.SkipWhile(i => i.Item.Safety).Any(i => i.Item.Safety)))
            yield return $"{line.Requirement}: a safety word does not come first.";
    }

    private static IEnumerable<string> Head(SheetSnapshot question, RequirementSheet answer, bool drawn)
    {
        var ranks = question.Edition.Ranks.ToList();
        var at = ranks.FindIndex(r => r.Key == question.Rank);
        var unit = question.Edition.Units.ToList().FindIndex(u => u.Key == question.Unit);
        if (answer.Rank != question.Rank || answer.RankName != ranks[at].Name || answer.FromRankName != (at > 0 ? ranks[at - 1].Name : null))
            yield return "The ranks at the head are wrong.";
        if (answer.EditionName != question.Edition.Name || answer.EditionFrom != question.Edition.From || answer.TestOn != question.TestOn)
            yield return "The edition or the day at the head is wrong.";
        if (answer.UnitNumber != (unit < 0 ? null : unit + 1) || answer.UnitName != (unit < 0 ? null : question.Edition.Units[unit].Name))
            yield return "The unit at the head is wrong.";
        if (answer.Draw != (drawn && question.Child is { } child ? child.Draw : null))
            yield return "The number of the draw is wrong.";
        var minima = ranks[at].Minima;
        var years = ExpectedLines.Years(question);
        var other = question.Child is null ? null : minima.ForAges?.FirstOrDefault(m => m.Ages.Holds(years));
        if (answer.Minima.Lessons != (other?.Lessons ?? minima.Lessons) || answer.Minima.Weeks != (other?.Weeks ?? minima.Weeks)
            || answer.Minima.Months != (other?.Months ?? minima.Months) || answer.Minima.Age != minima.Age)
            yield return "The least time is not that of this age.";
    }
}

/// <summary>A line that must be there.</summary>
/// <param name="Key">Its key.</param>
/// <param name="Requirement">Its requirement.</param>
/// <param name="Own">It is of the rank itself.</param>
/// <param name="Count">How many.</param>
/// <param name="Shown">Keys that stand on it, each with the keys of the edition that led to it.</param>
/// <param name="Chosen">Which of them are chosen or drawn.</param>
/// <param name="Drawn">It was drawn by lot.</param>
internal sealed record ExpectedLine(
    string Key, Requirement Requirement, bool Own, int Count, IReadOnlyDictionary<string, HashSet<string>> Shown, IReadOnlySet<string> Chosen, bool Drawn = false);
