using Keikocho.Core.Evening;

namespace Keikocho.App.Cards;

/// <summary>Addresses of tonight's cards.</summary>
public static class CardsAddress
{
    /// <summary>The page.</summary>
    public const string Page = "/cards";

    /// <summary>Goes to a slot, or takes that back.</summary>
    public const string Slot = "/cards/slot";

    /// <summary>Both cards on paper.</summary>
    public const string Paper = "/cards/cards.pdf";

    /// <summary>The cards of one lesson.</summary>
    public static string Of(Guid lesson, CardPlan? plan = null) => $"{Page}?lesson={lesson:D}{PlanOf(plan)}";

    /// <summary>The same on paper, one page an end.</summary>
    public static string PaperOf(Guid lesson, CardPlan? plan = null) => $"{Paper}?lesson={lesson:D}{PlanOf(plan)}";

    /// <summary>A plan as an address writes it.</summary>
    public static string Value(CardPlan plan) => plan switch { CardPlan.NoThrowing => "no-throwing", CardPlan.EndsJoined => "joined", _ => "as-planned" };

    /// <summary>The plan of a value; null lets the numbers decide.</summary>
    public static CardPlan? ReadPlan(string? value) => Enum.GetValues<CardPlan>().Select(p => (CardPlan?)p).FirstOrDefault(p => Value(p!.Value) == value);

    private static string PlanOf(CardPlan? plan) => plan is { } some ? $"&plan={Value(some)}" : "";
}
