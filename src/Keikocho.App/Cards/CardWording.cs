using System.Collections.Immutable;
using Keikocho.App.Sightings;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Store.Book;
using Keikocho.Store.Calendar;
using Keikocho.Store.Evening;

namespace Keikocho.App.Cards;

/// <summary>A card in the words of a coach.</summary>
internal sealed class CardWording(
    ClubBook book, ProgrammeRow programme, LessonRow lesson, IReadOnlyList<GridChild> children, IReadOnlyList<CardAdult> adults,
    IReadOnlyList<GridItem> items, IReadOnlyList<GridItem> words, Func<Guid, string> showing, ImmutableArray<HeldShowing> tonight)
{
    private readonly Dictionary<string, GridChild> byKey = children.ToDictionary(c => c.PersonId.ToString("D"), StringComparer.Ordinal);

    public CardView Of(EndCard card, string heading, string? unit)
    {
        if (card.IsEmpty)
            return new CardView(card.End, heading, card.Reasons[0].Sentence, null, "", "", card.Plan, [], [], [], [], [], [], []);
        return new CardView(
            card.End, heading, null, card.End == MatEnd.Main ? unit : null,
            card.Lead is { } lead ? Adult(lead) : "nobody of 18 or over",
            string.Join(", ", card.Drills.Select(Adult)),
            card.Plan,
            [.. card.Slots.Select(Part)],
            [.. card.Children.Select(c => new CardChildView(
                byKey[c.Key].PersonId, byKey[c.Key].Name, book.RankOf(byKey[c.Key].PersonId, programme.LadderId), c.IsNew ? "new" : c.IsBack ? "back" : "", c.Role))],
            [.. card.Falls.GroupBy(f => (f.Stage, Names: Everybody(f.Children))).Select(g => $"{Capital(FallWords.Together([.. g.Select(f => f.Way)]))}, {FallWords.Stage(g.Key.Stage)}: {g.Key.Names}")],
            [.. card.LookAt.Select(Name)],
            [.. card.Words.Select(k => words.First(w => w.Item.Key == k)).Select(w => new CardWordView(w.Id, w.Item.Key, w.Item.Name, w.Item.Answers is { Count: > 0 } answers ? answers[0] : w.Item.Meaning))],
            [.. card.PlanB],
            [.. card.Reasons.Select(r => r.Sentence)]);
    }

    private CardPartView Part(CardSlot slot)
    {
        var item = slot.Item is { } key ? items.First(i => i.Item.Key == key) : null;
        return new CardPartView(
            slot.Number, slot.Kind, slot.Name, slot.From, (int)(slot.From - lesson.Start).TotalMinutes, slot.Minutes, slot.Does, slot.Slot,
            item is null ? null : ItemOf(item),
            [.. slot.Roles.Where(r => r.Role is not null).GroupBy(r => r.Role!).OrderBy(g => Array.IndexOf(NotThrownFirst, g.Key)).Select(g => new CardRoleView(g.Key, g.Count() == children.Count && g.Count() > 1 ? ["everybody"] : [.. g.Select(r => Name(r.Child))]))],
            [.. slot.Games.Take(4)],
            slot.Slot is { } number && tonight.Any(t => t.Slot == number));
    }

    private CardItemView ItemOf(GridItem item)
    {
        var note = CardNotes.Of(item.Item);
        return new CardItemView(
            item.Id, item.Item.Key, item.Item.Name, showing(item.Id), (item.Item.LookFor ?? (note is { LookFor.Count: > 0 } ? note.LookFor[0] : null)) is { Length: > 0 } cue ? Capital(cue) : null,
            note is { Faults.Count: > 0 } ? note.Faults[0] : null, note?.Easier, note?.Harder);
    }

    // Who does not fall stands first; an alternative is named before all.
    private static readonly string[] NotThrownFirst =
        [RoleWords.Watches, RoleWords.MovementAlone, RoleWords.FitInOnly, RoleWords.ToriOnly, RoleWords.LowAndSlowOnly, RoleWords.ThrowsAndIsThrown];

    private string Everybody(IReadOnlyList<string> keys) => keys.Count == children.Count && keys.Count > 1 ? "everybody" : string.Join(", ", keys.Select(Name));

    private string Name(string key) => byKey[key].Name;

    private string Adult(string key) => adults.First(a => a.Key == key).Name;

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
