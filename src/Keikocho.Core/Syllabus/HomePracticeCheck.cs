namespace Keikocho.Core.Syllabus;

/// <summary>Judges what a child is told to practise at home, without the code that chose it.</summary>
public static class HomePracticeCheck
{
    // What needs a mat or a partner; an escape is only the movement, so its own name may not stand there either: it names the hold.
    private static readonly ItemKind[] Never =
    [
        ItemKind.Fall, ItemKind.Throw, ItemKind.HoldDown, ItemKind.Turnover, ItemKind.Combination, ItemKind.Counter, ItemKind.Sequence,
        ItemKind.Exercise, ItemKind.FreePractice, ItemKind.Strangle, ItemKind.Armlock,
    ];

    /// <summary>What is wrong with <paramref name="things"/>, a sentence each; empty when it is right.</summary>
    public static IReadOnlyList<string> Objections(RequirementSheet sheet, IReadOnlySet<string>? secure, IReadOnlyList<string> things)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(things);
        var objections = new List<string>();
        if (things.Count != 3)
            objections.Add($"Three things are practised at home, not {things.Count}.");
        if (things.Distinct(StringComparer.Ordinal).Count() != things.Count)
            objections.Add("A thing is said twice.");
        foreach (var thing in things)
        {
            foreach (var line in sheet.Lines)
            {
                foreach (var (item, _, _, kept, _) in line.Items)
                {
                    var says = thing.Contains(item.Name, StringComparison.OrdinalIgnoreCase);
                    var moves = item.Order is Order.EscapeFrom way && thing.Contains(way.By, StringComparison.OrdinalIgnoreCase);
                    if (says && Never.Contains(item.Kind))
                        objections.Add($"{item.Name} is not for the home.");
                    if ((says || moves) && item.LoadsTheNeck)
                        objections.Add($"{item.Name} loads the neck.");
                    if (says && item.Kind is ItemKind.Question && (kept is not null || secure?.Contains(item.Key) == true))
                        objections.Add($"{item.Name} is secure already.");
                }
            }
        }

        var hasOpenWord = sheet.Lines.Any(l => l.Items.Any(i => i.Item.Kind == ItemKind.Word && i.Item is { LoadsTheNeck: false } && i is { KeptUntil: null, Way: null } && secure?.Contains(i.Item.Key) != true));
        if (hasOpenWord && (things.Count == 0 || !things[0].Contains("call", StringComparison.Ordinal)))
            objections.Add("Words come first.");
        return objections;
    }
}
