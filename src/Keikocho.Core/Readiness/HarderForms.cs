using Keikocho.Core.Syllabus;

namespace Keikocho.Core.Readiness;

/// <summary>Which harder forms meet an easier one, through any number of steps. Falls are met by falls alone.</summary>
internal static class HarderForms
{
    public static Dictionary<string, List<string>>? Of(ReadinessParts parts)
    {
        Dictionary<string, List<string>>? direct = null;
        if (parts.HarderForms is { } given)
        {
            foreach (var item in given)
                Add(ref direct, item);
        }

        foreach (var line in parts.Sheet.Lines)
        {
            foreach (var on in line.Items)
                Add(ref direct, on.Item);
        }

        return direct;
    }

    /// <summary>Every form that is harder than the item, itself left out.</summary>
    public static IEnumerable<string> Than(Dictionary<string, List<string>> direct, string item)
    {
        if (!direct.TryGetValue(item, out var first))
            return [];
        var met = new SortedSet<string>(StringComparer.Ordinal);
        var open = new Stack<string>(first);
        while (open.TryPop(out var next))
        {
            if (next == item || !met.Add(next) || !direct.TryGetValue(next, out var further))
                continue;
            foreach (var one in further)
                open.Push(one);
        }

        return met;
    }

    private static void Add(ref Dictionary<string, List<string>>? direct, Item item)
    {
        if (item.Covers is not { Count: > 0 } covers || item.Kind == ItemKind.Fall)
            return;
        direct ??= new Dictionary<string, List<string>>(StringComparer.Ordinal);
        foreach (var easier in covers)
        {
            if (!direct.TryGetValue(easier, out var harder))
                direct[easier] = harder = [];
            harder.Add(item.Key);
        }
    }
}
