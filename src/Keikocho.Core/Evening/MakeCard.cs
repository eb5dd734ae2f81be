using Keikocho.Core.Kernel;

namespace Keikocho.Core.Evening;

/// <summary>Tonight's card for one end, from who actually came: falls first, then what the children present need most.</summary>
public static class MakeCard
{
    /// <summary>Makes it. The order of items counts (the ladder's), and that of children (the register's); no other order does.</summary>
    /// <exception cref="ArgumentException">Something is there twice or unknown, a figure is out of range, or falls do not come first.</exception>
    public static EndCard Make(CardSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        CardGuard.Guard(snapshot);
        var settings = (IReadOnlyList<SettingUsed>)[.. snapshot.Rule.Used(), .. snapshot.LookAt.Used(), .. snapshot.WordsDue.Used()];
        var lead = snapshot.Adults.FirstOrDefault(a => a.MayLead)?.Key;
        var plan = CardPlans.Decide(snapshot, lead is null);
        if (snapshot.Children.Count == 0)
            return new EndCard(snapshot.End, true, plan, [], [], [], [], null, [], [], [], [], [new NobodyAtThisEnd(snapshot.End)], settings);

        var reasons = new List<Reason>();
        if (CardPlans.Because(snapshot, plan, lead is null) is { } missing) reasons.Add(missing);
        var ordered = WeighItems.Order(snapshot, plan);
        var chosen = FillSlots.Fill(snapshot, ordered, reasons);
        reasons.AddRange(ordered.Select(i => i.Because));
        var byKey = snapshot.Items.ToDictionary(i => i.Key, StringComparer.Ordinal);
        reasons.AddRange(chosen.OfType<string>().Distinct().Select(k => byKey[k])
            .Where(i => plan == CardPlan.AsPlanned && i.IsThrown && !CardRoles.AnybodyMayBeThrown(snapshot, i)).Select(i => new NobodyToThrow(i.Name)));
        var look = LookAt.Choose(new LookAtSnapshot([.. snapshot.Children.Select(c => new LookChild(c.Key, c.Name, c.EveningsUnseen, c.LessonsToTest))], snapshot.LookAt));
        var words = WordsDue.Choose(new WordsDueSnapshot(snapshot.Words, [.. snapshot.Children.Select(c => new WordChild(c.Key, c.Asked ?? []))], snapshot.WordsDue));
        reasons.AddRange(look.Reasons);
        reasons.AddRange(words.Words.Select(w => w.Because));
        return new EndCard(
            snapshot.End, false, plan, Slots(snapshot, plan, chosen, byKey), ordered,
            [.. snapshot.Children.Select(c => new CardLine(c.Key, CardRoles.Tonight(c), c.IsNewcomer, c.IsReturning))],
            CardFalls.Of(snapshot.Children), lead, [.. snapshot.Adults.Where(a => a.Key != lead).Select(a => a.Key)],
            look.InRegisterOrder, [.. words.Words.Select(w => w.Key)], CardPlans.Lines(plan), reasons, settings);
    }

    private static List<CardSlot> Slots(CardSnapshot snapshot, CardPlan plan, IReadOnlyList<string?> chosen, Dictionary<string, CardItem> byKey)
    {
        var slots = new List<CardSlot>();
        var (from, slot) = (snapshot.Start, 0);
        foreach (var part in snapshot.Parts)
        {
            int? number = part.Kind == CardPartKind.Slot ? ++slot : null;
            var item = number is { } n ? chosen[n - 1] : null;
            IReadOnlyList<SlotRole> roles = item is null ? [] : [.. snapshot.Children.Select(c => new SlotRole(c.Key, CardRoles.InSlot(snapshot, plan, byKey[item], c)))];
            var games = part.Kind switch
            {
                CardPartKind.WarmUp => GamesThatFit.Of(snapshot.Games, snapshot.Together),
                CardPartKind.Game => GamesThatFit.Of(snapshot.Games, plan == CardPlan.EndsJoined ? snapshot.Together : snapshot.Here),
                _ => [],
            };
            slots.Add(new CardSlot(slots.Count + 1, part.Kind, part.Name, from, part.Minutes, part.Does, number, item, roles, games));
            from = from.AddMinutes(part.Minutes);
        }

        return slots;
    }
}
