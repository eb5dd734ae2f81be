namespace Keikocho.Core.Evening;

/// <summary>Which card is made when adults are missing. It states and allows nothing.</summary>
internal static class CardPlans
{
    /// <summary>The plan that somebody chose, else by the numbers; where nobody may lead nothing is thrown, whatever was chosen.</summary>
    public static CardPlan Decide(CardSnapshot snapshot, bool nobodyLeads)
    {
        if (snapshot.Plan is { } chosen) return chosen == CardPlan.AsPlanned && nobodyLeads ? CardPlan.NoThrowing : chosen;
        if (nobodyLeads) return CardPlan.EndsJoined;
        return snapshot.ShortBy > 0 && snapshot.End == Kernel.MatEnd.Beginners ? CardPlan.NoThrowing : CardPlan.AsPlanned;
    }

    public static AdultMissing? Because(CardSnapshot snapshot, CardPlan plan, bool nobodyLeads) =>
        plan == CardPlan.AsPlanned && snapshot.ShortBy == 0 ? null : new AdultMissing(plan, snapshot.ShortBy, nobodyLeads, snapshot.Plan is not null);

    public static IReadOnlyList<string> Lines(CardPlan plan) => plan switch
    {
        CardPlan.NoThrowing => ["Nothing is thrown at this end: holds, ways out, turning over, turning in.", "Ring the stand-by list; in doubt, join the ends."],
        CardPlan.EndsJoined => ["Both ends work together on this card; nothing is thrown.", "One adult teaches, one watches; ring the stand-by list."],
        _ => ["An adult is missing: nothing is thrown at the beginners' end, or the ends are joined and nothing is thrown.", "Ring the stand-by list; in doubt, sit them out."],
    };
}
