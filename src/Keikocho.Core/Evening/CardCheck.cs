using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;

namespace Keikocho.Core.Evening;

/// <summary>Judges a card on its own reckoning: quarter points in whole numbers, two items at a time, and what may never stand on a card.</summary>
public static class CardCheck
{
    /// <summary>What is wrong with <paramref name="card"/>, a sentence each; empty when it is right.</summary>
    public static IReadOnlyList<string> Objections(CardSnapshot question, EndCard card)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(card);
        if (question.Children.Count == 0)
            return card is { IsEmpty: true, Slots.Count: 0, Items.Count: 0, Words.Count: 0, LookAt.Count: 0 } ? [] : ["Nobody is at this end, and there is a card."];
        var objections = new List<string>();
        if (card.IsEmpty)
            objections.Add("Somebody is at this end, and the card is empty.");
        Clock(question, card, objections);
        Order(question, card, objections);
        Chosen(question, card, objections);
        Roles(question, card, objections);
        Adults(question, card, objections);
        Games(question, card, objections);
        var words = question.Children.Select(c => new WordChild(c.Key, c.Asked ?? [])).ToArray();
        var asked = WordsDue.Choose(new WordsDueSnapshot(question.Words, words, question.WordsDue));
        if (!asked.Words.Select(w => w.Key).SequenceEqual(card.Words) || WordsDueCheck.Objections(new WordsDueSnapshot(question.Words, words, question.WordsDue), asked).Count > 0)
            objections.Add("Other words are due.");
        var unseen = question.Children.Where(c => c.EveningsUnseen > question.LookAt.MoreThan).ToArray();
        if (card.LookAt.Count != Math.Min(unseen.Length, question.LookAt.Names) || card.LookAt.Any(k => unseen.All(c => c.Key != k))
            || unseen.Where(c => !card.LookAt.Contains(c.Key)).Any(left => unseen.Any(c => card.LookAt.Contains(c.Key) && c.EveningsUnseen < left.EveningsUnseen)))
            objections.Add("Others are to be looked at.");
        return objections;
    }

    private static void Clock(CardSnapshot question, EndCard card, List<string> objections)
    {
        if (!card.Slots.Select(s => (s.Kind, s.Name, s.Minutes)).SequenceEqual(question.Parts.Select(p => (p.Kind, p.Name, p.Minutes))))
            objections.Add("The parts of the lesson are others.");
        for (var i = 0; i < card.Slots.Count; i++)
        {
            if (card.Slots[i].From != question.Start.AddMinutes(card.Slots.Take(i).Sum(s => s.Minutes)))
                objections.Add($"{card.Slots[i].Name} begins at another minute.");
        }

        var slot = card.Slots.ToList().FindIndex(s => s.Kind == CardPartKind.Slot);
        if (slot >= 0 && !card.Slots.Take(slot).Any(s => s.Kind == CardPartKind.Falls))
            objections.Add("Falls do not come first.");
    }

    // In quarters: never shown 8, not signed 4, stale 2; twice that near the test.
    private static int Quarters(CardSnapshot question, CardItem item)
    {
        var sum = 0;
        foreach (var child in question.Children)
        {
            var need = Needs(child, item);
            sum += child.LessonsToTest is { } left && left <= question.Rule.UrgentLessons ? 2 * need : need;
        }

        return sum;
    }

    private static int Needs(CardChild child, CardItem item) =>
        !child.MayBeOnTheMat || (child.SparesTheNeck && item.LoadsTheNeck) ? 0
        : !item.Standing.ContainsKey(child.Key) ? 8
        : item.Standing[child.Key] switch { CardStanding.NeverShown => 8, CardStanding.NotSigned => 4, CardStanding.Stale => 2, _ => 0 };

    private static bool Held(CardSnapshot question, EndCard card, CardItem item)
    {
        bool Runs(CardItem i) => i.ShownAgo.Distinct().Count(a => a <= 2) == 2;
        var others = question.Items.Where(i => !Runs(i) && May(card, i)).ToArray();
        return Runs(item) && others.Length > 0 && others.Any(o => Quarters(question, item) < 2 * Quarters(question, o));
    }

    private static bool May(EndCard card, CardItem item) => card.Plan == CardPlan.AsPlanned || !item.IsThrown;

    private static void Order(CardSnapshot question, EndCard card, List<string> objections)
    {
        if (!card.Items.Select(i => i.Key).Order(StringComparer.Ordinal).SequenceEqual(question.Items.Where(i => May(card, i)).Select(i => i.Key).Order(StringComparer.Ordinal)))
        {
            objections.Add("Other items may be on this card.");
            return;
        }

        var places = question.Items.Select((item, place) => (item, place)).ToDictionary(i => i.item.Key, StringComparer.Ordinal);
        foreach (var item in card.Items)
        {
            if (4 * item.Score != Quarters(question, places[item.Key].item))
                objections.Add($"{item.Name} adds up to another score.");
            if (item.HeldBack != Held(question, card, places[item.Key].item))
                objections.Add($"{item.Name}: whether it is held back is otherwise.");
        }

        for (var i = 1; i < card.Items.Count; i++)
        {
            if (Compare(question, card, places[card.Items[i - 1].Key], places[card.Items[i].Key]) >= 0)
                objections.Add($"{card.Items[i].Name} comes before {card.Items[i - 1].Name}.");
        }
    }

    private static int Compare(CardSnapshot question, EndCard card, (CardItem Item, int Place) a, (CardItem Item, int Place) b)
    {
        var held = Held(question, card, a.Item).CompareTo(Held(question, card, b.Item));
        if (held != 0) return held;
        var plan = (a.Item.Planned ?? int.MaxValue).CompareTo(b.Item.Planned ?? int.MaxValue);
        var score = Quarters(question, b.Item).CompareTo(Quarters(question, a.Item));
        var (first, second) = question.End == MatEnd.Main ? (plan, score) : (score, plan);
        if (first != 0) return first;
        if (second != 0) return second;
        static int Ago(CardItem i) => i.ShownAgo.DefaultIfEmpty(int.MaxValue).Min();
        var longer = Ago(b.Item).CompareTo(Ago(a.Item));
        return longer != 0 ? longer : a.Place.CompareTo(b.Place);
    }

    private static void Chosen(CardSnapshot question, EndCard card, List<string> objections)
    {
        var slots = card.Slots.Where(s => s.Kind == CardPartKind.Slot).ToArray();
        var items = slots.Select(s => s.Item).OfType<string>().ToArray();
        foreach (var taken in question.Taken.Where(t => slots.Any(s => s.Slot == t.Slot) && slots.First(s => s.Slot == t.Slot).Item != t.Item))
            objections.Add($"What was done in slot {taken.Slot} is not there.");
        var free = slots.Where(s => question.Taken.All(t => t.Slot != s.Slot)).ToArray();
        var expected = card.Items.Select(i => i.Key).Where(k => question.Taken.All(t => t.Item != k || slots.All(s => s.Slot != t.Slot))).Take(free.Length).ToArray();
        var got = free.Select(s => s.Item).OfType<string>().ToArray();
        if (got.Length != expected.Length || !got.Take(got.Length - 1).SequenceEqual(expected.Take(got.Length - 1)))
        {
            objections.Add("The slots hold other items than the best.");
            return;
        }

        if (got.Length == 0 || free[^1] != slots[^1]) return;
        var swapped = got[^1] != expected[^1];
        var wanting = question.Children.Where(c => c.IsNewcomer || (c.LessonsToTest is { } left && left <= question.Rule.UrgentLessons)).ToArray();
        var byKey = question.Items.ToDictionary(i => i.Key, StringComparer.Ordinal);
        int Serves(string last) => wanting.Count(c => items.Take(items.Length - 1).Append(last).Any(k => Needs(c, byKey[k]) > 0));
        var candidates = card.Items.Where(i => !i.HeldBack && !items.Take(items.Length - 1).Contains(i.Key)).Select(i => i.Key).ToArray();
        if (swapped && (!question.Rule.ServeBoth || slots.Length < 2 || Serves(got[^1]) <= Serves(expected[^1])))
            objections.Add("The last slot serves nobody whom the best item would not.");
        if (question.Rule.ServeBoth && slots.Length > 1 && slots[^1].Item is not null && candidates.Any(k => Serves(k) > Serves(got[^1])))
            objections.Add("A newcomer or a child near its test has nothing, and another item would serve it.");
    }

    private static void Roles(CardSnapshot question, EndCard card, List<string> objections)
    {
        if (!card.Children.Select(c => c.Key).SequenceEqual(question.Children.Select(c => c.Key)))
            objections.Add("The children are not in register order.");
        foreach (var (line, child) in card.Children.Zip(question.Children))
        {
            if (Thrown(line.Role) && !(Able(child) && child.Gates?.Any(g => g.OpenStages.Any(s => s >= 4)) == true))
                objections.Add($"{child.Name} is thrown, and every gate is shut.");
            if (!child.MayFall && child is { MayHaveContact: true, MayBeOnTheMat: true } && line.Role != RoleWords.ToriOnly)
                objections.Add($"{child.Name} is tori only.");
        }

        foreach (var slot in card.Slots.Where(s => s.Item is not null))
        {
            var item = question.Items.First(i => i.Key == slot.Item);
            foreach (var (role, child) in slot.Roles.Zip(question.Children))
            {
                var open = new[] { item.FirstDrill, item.FreeDrill }.OfType<PlannedThrow>()
                    .Any(p => p.Ways.Count > 0 && p.Ways.All(w => child.Gates?.FirstOrDefault(g => g.Way == w && g.OpenStages.Contains(p.Stage)) is not null));
                if (role.Child != child.Key)
                    objections.Add("The roles are not in register order.");
                if (item.IsThrown && role.Role is null)
                    objections.Add($"{child.Name} has no role in {item.Name}, which is thrown.");
                if (Thrown(role.Role) && (!Able(child) || !open || card.Plan != CardPlan.AsPlanned))
                    objections.Add($"{child.Name} is thrown in {item.Name}, and that gate is shut.");
                if (item.LoadsTheNeck && child.SparesTheNeck && role.Role is (null or RoleWords.ToriOnly or RoleWords.FitInOnly or RoleWords.MovementAlone))
                    objections.Add($"{child.Name} does {item.Name}, which loads the neck.");
                if (!child.MayBeOnTheMat && role.Role != RoleWords.Watches)
                    objections.Add($"{child.Name} is off the mat and has work on it.");
            }
        }
    }

    private static bool Able(CardChild child) => child is { MayFall: true, MayHaveContact: true, MayBeOnTheMat: true };

    private static bool Thrown(string? role) => role is not null && role.Contains("is thrown", StringComparison.Ordinal);

    private static void Adults(CardSnapshot question, EndCard card, List<string> objections)
    {
        var may = question.Adults.Where(a => a.MayLead).Select(a => a.Key).ToArray();
        if (card.Lead is null ? may.Length > 0 : may.Length == 0 || card.Lead != may[0])
            objections.Add("Another leads.");
        if (may.Length == 0 && card.Plan == CardPlan.AsPlanned)
            objections.Add("Nobody leads, and the card is as planned.");
        if (card.Lead is { } lead && card.Drills.Contains(lead))
            objections.Add("Whoever leads holds no drill.");
    }

    private static void Games(CardSnapshot question, EndCard card, List<string> objections)
    {
        foreach (var slot in card.Slots)
        {
            var players = slot.Kind == CardPartKind.WarmUp || card.Plan == CardPlan.EndsJoined ? question.Together : question.Here;
            foreach (var game in slot.Games.Select(n => question.Games.First(g => g.Name == n)))
            {
                if (players.AnybodyStoodDown && (game.Contact != GameContact.None || game.Falls))
                    objections.Add($"{game.Name} has contact or falls, and somebody stands down.");
                if (players.Children < game.LeastChildren || players.Children > game.MostChildren || players.Children * game.SquareMetresAChild > players.SquareMetres)
                    objections.Add($"{game.Name} does not fit.");
            }
        }
    }
}
