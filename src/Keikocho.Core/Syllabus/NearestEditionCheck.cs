namespace Keikocho.Core.Syllabus;

/// <summary>Judges the choice of an edition by crossing off both lists item by item.</summary>
public static class NearestEditionCheck
{
    /// <summary>What is wrong with <paramref name="answer"/>, a sentence each; empty when it is right.</summary>
    public static IReadOnlyList<string> Objections(NearestEditionSnapshot question, NearestEditionAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(answer);
        var objections = new List<string>();
        var older = Open(question.Older.Lines, question);
        // A line for certain that holds at once adds what the older sheet does not ask for certain anyway.
        var certain = question.Older.Lines.Where(Certain).SelectMany(l => l.Items).Select(i => i.Item.Key).ToList();
        foreach (var line in question.Newer.Lines.Where(l => question.AtOnce.Contains(l.Requirement)))
            older += Open([Certain(line) ? line with { Items = [.. line.Items.Where(i => !certain.Contains(i.Item.Key))] } : line], question);
        var newer = Open(question.Newer.Lines, question);
        if (answer.OlderLeft != older || answer.NewerLeft != newer)
            objections.Add($"Left are {older} and {newer}, not {answer.OlderLeft} and {answer.NewerLeft}.");
        var isToCome = question.NewerFrom is { } first && first.CompareTo(question.Newer.TestOn) > 0;
        if (answer.IsNewer != (!isToCome && (question.Newer.TestOn.CompareTo(question.Changeover) >= 0 || newer <= older)))
            objections.Add("The other edition is the nearer one.");
        var shown = answer.Sheet.Lines.SelectMany(l => l.Items).Select(i => i.Item.Key).ToHashSet(StringComparer.Ordinal);
        if (shown.Overlaps(question.GoneAtOnce))
            objections.Add("Something that is gone for safety is asked.");
        var must = question.Newer.Lines.Where(l => question.AtOnce.Contains(l.Requirement)).SelectMany(l => l.Items).Select(i => i.Item.Key).Except(question.GoneAtOnce);
        if (!shown.IsSupersetOf(must))
            objections.Add("Something that holds at once is not asked.");
        if (answer.Sheet.EditionName != (answer.IsNewer ? question.Newer : question.Older).EditionName)
            objections.Add("The sheet is not of the edition that was chosen.");
        return objections;

        bool Certain(SheetLine line) => line.Count >= line.Items.Count(i => !question.GoneAtOnce.Contains(i.Item.Key));
    }

    private static int Open(IReadOnlyList<SheetLine> lines, NearestEditionSnapshot question)
    {
        var open = 0;
        foreach (var line in lines)
        {
            var items = line.Items.Where(i => !question.GoneAtOnce.Contains(i.Item.Key)).ToList();
            var todo = items.Count(i => i.KeptUntil is null && !question.Secured.Contains(i.Item.Key));
            // All but n - k of what is there must be done.
            var spare = items.Count - Math.Min(line.Count, items.Count);
            open += Math.Max(0, todo - spare);
        }

        return open;
    }
}
