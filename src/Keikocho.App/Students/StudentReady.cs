using Keikocho.App.Club;
using Keikocho.App.PromotionTests;
using Keikocho.App.Syllabus;
using Keikocho.Core.Evening;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Calendar;
using Keikocho.Store.Marks;
using Keikocho.Store.Promotion;

namespace Keikocho.App.Students;

/// <summary>One child at the next test of a programme.</summary>
/// <param name="List">The list with this child alone.</param>
/// <param name="Child">The child; null at the top of the ladder.</param>
/// <param name="HasTest">Whether a test is set.</param>
/// <param name="Transfer">Where teaching starts, for a child whose last rank was brought from another club; null otherwise.</param>
public sealed record StudentReady(TestList List, TestChild? Child, bool HasTest, TransferAnswer? Transfer)
{
    /// <summary>Reads it: one statement beyond what was seen.</summary>
    public static StudentReady Of(OpenClub club, TestReckoning tests, EditionsInHand editions, ProgrammeRow programme, ChildEvidence evidence)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(tests);
        ArgumentNullException.ThrowIfNull(editions);
        ArgumentNullException.ThrowIfNull(evidence);
        var list = tests.OfChild(club, programme, evidence.PersonId, evidence);
        return new StudentReady(list, list.Children.FirstOrDefault(), list.TestId != Guid.Empty, TransferOf(club, editions, programme, list, evidence));
    }

    private static TransferAnswer? TransferOf(OpenClub club, EditionsInHand editions, ProgrammeRow programme, TestList list, ChildEvidence evidence)
    {
        var book = club.Book;
        if (list.Edition is not { } published || book.NewestAwardOf(evidence.PersonId, programme.LadderId) is not { Source: AwardSource.Transferred } award) return null;
        var edition = editions.Of(published);
        if (book.Rank(award.RankId)?.Key is not { } worn || edition.PlaceOf(worn) < 0) return null;
        var seen = evidence.Items.Where(i => i.Value.Any(e => e is { Word: SeenWord.Good, Confirmed: true })).Select(i => book.ItemKey(i.Key)).OfType<string>();
        var born = book.Person(evidence.PersonId)?.Born;
        // A fall counts only where its gate is open today by what was seen here; never from a certificate.
        var gates = Sightings.ChildGates.Of(book, evidence, club.Today);
        var falls = edition.Edition.Items.Where(i => i.Fall is { } fall && IsOpen(gates, fall)).Select(i => i.Key);
        return TransferCredit.Reckon(new TransferSnapshot(
            edition.Edition, worn, club.Today, SheetChild.Plain(born > club.Today ? null : born), editions.AgeRulesOf(book), [.. seen.Concat(falls)], ClubRules.Transfer(book, club.Today)));
    }

    private static bool IsOpen(Core.Safety.FallGateAnswer gates, FallForm fall)
    {
        var ways = gates.Ways.Where(w => w.Way.Direction == fall.Direction).ToList();
        bool Open(Core.Safety.WayGate way) => way.Stages.Any(s => s.Stage >= fall.Stage && s.State == Core.Safety.GateState.Open);
        return ways.Count > 0 && (fall.BothSides ? ways.All(Open) : ways.Any(Open));
    }
}
