using Keikocho.Core.Safety;
using Keikocho.Store.Engines;
using Keikocho.Store.Kernel;

namespace Keikocho.Store.Safety;

/// <summary>Whether a stand-down that a knock brought can be lifted, as known inside a write transaction.</summary>
internal static class KnockGate
{
    /// <summary>
    /// Whether lifting is refused: the stand-down belongs to a knock, and on that day something was missing. A stand-down of anything else
    /// is never refused here.
    /// </summary>
    public static bool Refuses(WriteSession session, StandDownRow row, DateOnly on, DateOnly today)
    {
        var knocks = KnockReader.OfPerson(session, row.PersonId);
        if (knocks.Count == 0 || !KnockQuestion.Belongs(knocks, Held(row))) return false;
        var rows = session.Db.StandDowns.Where(s => s.PersonId == row.PersonId).ToList();
        // What is known today decides; the day of the lifting is not before the earliest day either, and not to come.
        return on > today || Answer(session, knocks, rows, today) is not { Missing.Count: 0 } answer || !(on >= answer.FallsAndContact);
    }

    /// <summary>The dates, from the rows inside the transaction; null where there is no knock.</summary>
    public static HeadKnockAnswer? Answer(WriteSession session, IReadOnlyList<HeldKnock> knocks, IReadOnlyList<StandDownRow> standDowns, DateOnly today)
    {
        var settings = session.Db.Settings.Where(s => s.Key.StartsWith("knock.") && s.From <= today).ToList();
        var rule = KnockRuleOf.Settings(key => settings.Where(s => s.Key == key).OrderBy(s => s.From).ThenBy(s => s.MadeAt).ThenBy(s => s.Id).LastOrDefault()?.Value);
        return KnockQuestion.Of(knocks, standDowns.Select(Held), today, rule, [], [], _ => null) is { } question ? HeadKnock.Reckon(question) : null;
    }

    /// <summary>A row as it is held.</summary>
    public static HeldStandDown Held(StandDownRow row) => new(
        row.Id, row.PersonId, (StandDownScope)row.Scope, row.From, row.ReviewOn, Seal.Open(row.WhoseWord), row.ById, row.MadeAt, row.LiftedOn, row.LiftedById,
        Seal.Open(row.LiftedWhy), row.LiftEnteredOn);
}
