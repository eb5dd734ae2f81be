using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;

namespace Keikocho.Core.Evening;

/// <summary>Refuses a question about a card that means nothing.</summary>
internal static class CardGuard
{
    public static void Guard(CardSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot.Rule);
        ArgumentNullException.ThrowIfNull(snapshot.LookAt);
        ArgumentNullException.ThrowIfNull(snapshot.WordsDue);
        ArgumentNullException.ThrowIfNull(snapshot.Together);
        ArgumentNullException.ThrowIfNull(snapshot.Here);
        snapshot.Rule.Guard();
        NoGaps.In(snapshot.Parts, "parts");
        NoGaps.In(snapshot.Children, "children");
        NoGaps.In(snapshot.Items, "items");
        NoGaps.In(snapshot.Words, "words");
        NoGaps.In(snapshot.Adults, "adults");
        NoGaps.In(snapshot.Games, "games");
        NoGaps.In(snapshot.Taken, "slots that were done");
        Parts(snapshot.Parts);
        Twice(snapshot.Children.Select(c => c.Key), "child");
        Twice(snapshot.Items.Select(i => i.Key), "item");
        Twice(snapshot.Adults.Select(a => a.Key), "adult");
        if (snapshot.ShortBy < 0)
            throw new ArgumentException("Missing adults are counted from 0.", nameof(snapshot));
        foreach (var child in snapshot.Children)
            Child(child);
        var known = snapshot.Children.Select(c => c.Key).ToHashSet(StringComparer.Ordinal);
        foreach (var item in snapshot.Items)
            Item(item, known);
        foreach (var game in snapshot.Games)
        {
            if (game.LeastChildren < 1 || game.MostChildren < game.LeastChildren || game.SquareMetresAChild < 0)
                throw new ArgumentException($"{game.Name}: a game is for one child or more, from the fewest to the most, with a space of 0 or more for each.", nameof(snapshot));
        }

        foreach (var taken in snapshot.Taken)
        {
            if (snapshot.Items.All(i => i.Key != taken.Item))
                throw new ArgumentException($"Slot {taken.Slot} was done with {taken.Item}, which is not among the items; add it there or take it out.", nameof(snapshot));
        }

        Twice(snapshot.Taken.Select(t => $"{t.Slot}"), "slot");
    }

    private static void Parts(IReadOnlyList<CardPart> parts)
    {
        var falls = parts.ToList().FindIndex(p => p.Kind == CardPartKind.Falls);
        var slot = parts.ToList().FindIndex(p => p.Kind == CardPartKind.Slot);
        if (slot >= 0 && (falls < 0 || falls > slot))
            throw new ArgumentException("Falls come before the first slot; put them there.", nameof(parts));
        if (parts.FirstOrDefault(p => p.Minutes is < 1 or > 300 || !Enum.IsDefined(p.Kind)) is { } wrong)
            throw new ArgumentException($"{wrong.Name}: a part is of a kind that there is, and takes 1 to 300 minutes.", nameof(parts));
    }

    private static void Child(CardChild child)
    {
        if (child.LessonsToTest < 0 || child.EveningsUnseen < 0)
            throw new ArgumentException($"{child.Name}: lessons and evenings are counted from 0.", nameof(child));
        foreach (var gate in child.Gates ?? [])
        {
            ArgumentNullException.ThrowIfNull(gate);
            foreach (var stage in gate.OpenStages)
                FallWords.Guard(gate.Way, stage, child.Name);
        }
    }

    private static void Item(CardItem item, HashSet<string> known)
    {
        ArgumentNullException.ThrowIfNull(item.Standing);
        ArgumentNullException.ThrowIfNull(item.ShownAgo);
        if (item.Standing.Keys.FirstOrDefault(k => !known.Contains(k)) is { } strange)
            throw new ArgumentException($"{item.Name} says where {strange} stands, who is not among the children; take it out.", nameof(item));
        if (item.ShownAgo.Any(a => a < 1))
            throw new ArgumentException($"{item.Name}: lessons ago are counted from 1.", nameof(item));
        if (!Enum.IsDefined(item.Kind) || item.Standing.Values.Any(s => !Enum.IsDefined(s)))
            throw new ArgumentException($"{item.Name}: its kind, or where a child stands, is none that there is.", nameof(item));
        foreach (var planned in new[] { item.FirstDrill, item.FreeDrill }.OfType<PlannedThrow>())
        {
            foreach (var way in planned.Ways)
                FallWords.Guard(way, planned.Stage, item.Name);
        }
    }

    private static void Twice(IEnumerable<string> keys, string what)
    {
        if (keys.GroupBy(k => k, StringComparer.Ordinal).FirstOrDefault(g => g.Count() > 1) is { } twice)
            throw new ArgumentException($"The {what} {twice.Key} is there twice; take one out.", nameof(keys));
    }
}
