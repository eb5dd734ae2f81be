using System.Collections.Immutable;
using Keikocho.Core.Kernel;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Book;
using Keikocho.Store.Calendar;
using Keikocho.Store.Promotion;
using Keikocho.Store.Syllabus;

namespace Keikocho.App.Students;

/// <summary>What was taken off one child's least time for the next rank, and what may be.</summary>
/// <param name="Rank">The rank, as the edition has it.</param>
/// <param name="Row">The rank in the rank history.</param>
/// <param name="Most">The most that the rank allows, in percent; 0 for nothing.</param>
/// <param name="Held">The decision that holds; null for none.</param>
/// <param name="History">Every decision about this rank in words, oldest first.</param>
public sealed record TimeOffView(LadderRank Rank, RankRow Row, int Most, HeldTimeOff? Held, ImmutableArray<string> History)
{
    /// <summary>Whether there is anything to show or to decide.</summary>
    public bool IsShown => Most > 0 || History.Length > 0;

    /// <summary>Reads it; null where the club has no such rank.</summary>
    public static TimeOffView? Of(ClubBook book, ProgrammeRow programme, Guid person, LadderRank rank)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(programme);
        ArgumentNullException.ThrowIfNull(rank);
        if (book.Ranks.FirstOrDefault(r => r.LadderId == programme.LadderId && r.Key == rank.Key) is not { } row) return null;
        var asksTime = rank.Minima is not { Lessons: 0, Weeks: 0, Months: 0, ForAges: null or { Count: 0 } };
        return new TimeOffView(
            rank,
            row,
            asksTime ? rank.Minima.MostReductionPercent : 0,
            book.TimeOffOf(person, programme.LadderId, rank.Key),
            [.. book.TimeOffsOf(person).Where(t => t.RankId == row.Id).Select(t => Words(book, t))]);
    }

    private static string Words(ClubBook book, HeldTimeOff decision)
    {
        var by = book.Person(decision.ById) is { IsErased: false } adult ? adult.FullName : "an adult whose name was erased";
        return decision.Percent == 0
            ? $"{decision.On.Full()}: nothing is taken off any more, decided by {by}."
            : $"{decision.On.Full()}: {decision.Percent} % less, because {decision.Why.TrimEnd('.')}, decided by {by}.";
    }
}
