namespace Keikocho.Core.Readiness;

/// <summary>Judges a family's page against the verdict that it was written from, without the code that wrote it.</summary>
public static class ParentsPageCheck
{
    private static readonly string[] Forbidden =
        ["fail", "score", "average", "chance", "likely", " in 10", "%", "percent", "ranking", "leader's", "disagree", "better than", "worse than"];

    /// <summary>What is wrong with <paramref name="page"/>, a sentence each; empty when it is right.</summary>
    public static IReadOnlyList<string> Objections(ParentsPageSnapshot question, ParentsPageAnswer page)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(page);
        var objections = new List<string>();
        string[] all = [page.Title, .. page.Opening, .. page.Sections.SelectMany(s => s.Sentences.Prepend(s.Heading))];
        var sentences = page.Opening.Concat(page.Sections.SelectMany(s => s.Sentences)).ToArray();

        // Names that the club gave may hold any word; they are taken out before the words are looked for.
        string[] own = [question.Child, question.SpeakTo, question.Sheet.RankName, .. question.Answer.Lines.SelectMany(l => l.Items).Select(i => i.Name), .. question.UnitsMissed.SelectMany(u => new[] { u.Unit, u.Term, u.ReturnsIn ?? "" })];
        foreach (var text in all)
        {
            var bare = own.Where(o => o.Length > 0).OrderByDescending(o => o.Length).Aggregate(text, (t, o) => t.Replace(o, "", StringComparison.Ordinal));
            foreach (var word in Forbidden.Where(w => bare.Contains(w, StringComparison.OrdinalIgnoreCase)))
                objections.Add($"The page says \"{word.Trim()}\": {text}");
        }

        if (!sentences.All(s => s.EndsWith('.')))
            objections.Add("Every line of the page is a sentence.");
        if (question.Answer.Overrule is { Why.Length: > 3 } overrule && all.Any(t => t.Contains(overrule.Why.Trim(), StringComparison.Ordinal)))
            objections.Add("Why an instructor decided otherwise is not on the page.");
        foreach (var line in question.Answer.Lines)
        {
            foreach (var item in line.Items)
            {
                var heading = line.Met ? "What is secure" : "What is not yet";
                if ((!line.Met || item.IsMet) && !page.Sections.Any(s => s.Heading == heading && s.Sentences.Any(t => t.StartsWith(item.Name, StringComparison.Ordinal))))
                    objections.Add($"{item.Name} is missing from \"{heading}\".");
            }
        }

        foreach (var said in question.WhichList ?? [])
        {
            if (!sentences.Contains(said))
                objections.Add($"The page does not say by which list the child is tested: {said}");
        }

        foreach (var unit in question.UnitsMissed)
        {
            if (!sentences.Any(s => s.Contains(unit.Unit, StringComparison.Ordinal) && s.Contains(unit.ReturnsIn ?? "not set", StringComparison.Ordinal)))
                objections.Add($"The missed unit {unit.Unit} is not on the page with its term.");
        }

        if (question.Answer.Verdict == ReadyWord.NotThisTime && question.Answer.NextTestOn is { } next
            && !sentences.Any(s => s.Contains(Kernel.PlainDate.Full(next), StringComparison.Ordinal)))
            objections.Add("Not this time names the next date.");
        if (!sentences.Any(s => s.Contains(question.SpeakTo.Trim(), StringComparison.Ordinal)))
            objections.Add("The page names whom to speak to.");
        if (page.SumVersion != ParentsPage.SumVersion)
            objections.Add("The page carries the version of its sum.");
        return objections;
    }
}
