using Keikocho.Core.Kernel;

namespace Keikocho.Core.Evening;

/// <summary>Puts items into the slots of a card.</summary>
internal static class FillSlots
{
    /// <summary>Key of the item of each slot; null where nothing is left. What was done already stays in its slot.</summary>
    public static IReadOnlyList<string?> Fill(CardSnapshot snapshot, IReadOnlyList<ItemScore> ordered, List<Reason> reasons)
    {
        var names = snapshot.Items.ToDictionary(i => i.Key, i => i.Name, StringComparer.Ordinal);
        var slots = new string?[snapshot.Parts.Count(p => p.Kind == CardPartKind.Slot)];
        var free = new List<int>();
        for (var i = 0; i < slots.Length; i++)
        {
            slots[i] = snapshot.Taken.FirstOrDefault(t => t.Slot == i + 1)?.Item;
            if (slots[i] is { } taken) reasons.Add(new SlotIsTaken(i + 1, names[taken]));
            else free.Add(i);
        }

        var left = new Queue<string>(ordered.Select(o => o.Key).Where(k => !slots.Contains(k)));
        foreach (var slot in free)
            slots[slot] = left.Count > 0 ? left.Dequeue() : null;
        if (snapshot.Rule.ServeBoth && slots.Length > 1 && free.Count > 0 && free[^1] == slots.Length - 1) Serve(snapshot, ordered, slots, names, reasons);
        return slots;
    }

    // A newcomer and a child near its test: where the numbers leave one of them without anything, the last slot is theirs.
    private static void Serve(CardSnapshot snapshot, IReadOnlyList<ItemScore> ordered, string?[] slots, Dictionary<string, string> names, List<Reason> reasons)
    {
        if (slots[^1] is not { } last) return;
        var byKey = snapshot.Items.ToDictionary(i => i.Key, StringComparer.Ordinal);
        var wanting = snapshot.Children.Where(c => c.IsNewcomer || WeighItems.IsUrgent(c, snapshot.Rule)).ToArray();
        CardChild[] Served(string other) => [.. wanting.Where(c => slots[..^1].Append(other).OfType<string>().Any(k => WeighItems.Need(c, byKey[k]) > 0))];
        var (best, most) = (last, Served(last));
        foreach (var item in ordered.Where(o => !o.HeldBack && !slots.Contains(o.Key)))
        {
            var served = Served(item.Key);
            if (served.Length > most.Length) (best, most) = (item.Key, served);
        }

        if (best == last) return;
        var before = Served(last);
        slots[^1] = best;
        reasons.Add(new SlotServes(names[best], [.. most.Except(before).Select(c => c.Name)], names[last]));
    }
}
