using System.Collections.Immutable;
using Keikocho.App.Cards;
using Keikocho.App.Shared;
using Keikocho.Core.Evening;

namespace Keikocho.App.Mat;

/// <summary>Tonight's cards as a tablet shows them, with and without a network.</summary>
public static class MatCards
{
    /// <summary>The cards for whoever holds the tablet.</summary>
    public static ImmutableArray<MatCard> Of(EveningCards cards, SeenAs seen)
    {
        ArgumentNullException.ThrowIfNull(cards);
        ArgumentNullException.ThrowIfNull(seen);
        return [.. cards.Cards.Select(card => new MatCard(
            (int)card.End, cards.IsJoined, card.Heading, card.Empty ?? "",
            card.Empty is not null ? "" : card.Lead + (card.Drills.Length > 0 ? $"; drills: {card.Drills}" : ""),
            card.Plan == CardPlan.AsPlanned ? "" : card.PlanB.FirstOrDefault() ?? "",
            seen.Teaches ? string.Join(", ", card.LookAt) : "",
            [.. card.Words.Select(w => w.Name)],
            [.. card.Parts.Select(p => Part(card, p))]))];
    }

    /// <summary>Cards for when one more adult is missing: who that is, is not known yet, so nobody is named to lead.</summary>
    public static ImmutableArray<MatCard> WithoutLead(EveningCards cards, SeenAs seen) => [.. Of(cards, seen).Select(card => card with { Lead = "" })];

    private static MatCardPart Part(CardView card, CardPartView part) => new(
        part.Number, part.From.Hour * 60 + part.From.Minute, part.Minutes, part.Title, [.. Lines(card, part)], part.Slot ?? 0, part.Item?.Id, part.Kind == CardPartKind.Falls);

    private static IEnumerable<string> Lines(CardView card, CardPartView part)
    {
        if ((part.Item is { } item ? item.Cue : part.Does) is { } does) yield return does;
        if (part.Item?.Fault is { } fault) yield return $"Common fault: {fault}";
        if (part.Games.Length > 0) yield return $"Games: {string.Join(", ", part.Games)}";
        if (part.Kind == CardPartKind.Words && card.Words.Length > 0) yield return $"Words: {string.Join(", ", card.Words.Select(w => w.Name))}";
        foreach (var role in part.Roles) yield return $"{char.ToUpperInvariant(role.Role[0])}{role.Role[1..]}: {string.Join(", ", role.Names)}";
    }
}
