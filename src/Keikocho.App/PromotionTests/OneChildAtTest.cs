using Keikocho.App.Club;
using Keikocho.App.Knocks;
using Keikocho.App.Syllabus;
using Keikocho.Core.Evening;
using Keikocho.Core.Readiness;
using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Book;
using Keikocho.Store.Calendar;
using Keikocho.Store.Marks;
using Keikocho.Store.Promotion;

namespace Keikocho.App.PromotionTests;

/// <summary>Puts one child's question together: by which edition, for which rank, and by the fast track for which ranks beyond it.</summary>
internal sealed class OneChildAtTest(InCommon common, EnrolmentRow enrolment, BookPerson person, ChildEvidence evidence)
{
    private readonly ClubBook book = common.Club.Book;
    private readonly ChildReckoning reckoned = common.Reckoning.Children[person.Id];
    private readonly List<StandDown> standDowns = [.. evidence.StandDowns.Select(s => s.ToStandDown(id => NameOf(common.Club.Book, id)))];
    private readonly HeldOverrule? overrule = common.Papers.Overrules.GetValueOrDefault(person.Id);
    // A birth date that is still to come was typed wrong: judged as if none were held, as the youngest.
    private readonly DateOnly? born = person.Born > common.Reckoning.AsOf ? null : person.Born;

    /// <summary>The child for a rank; null is reckoned without items.</summary>
    public TestChild For(LadderRank? target)
    {
        var worn = book.RankOf(person.Id, common.Programme.LadderId);
        if (target is null || common.Edition is not { } edition)
        {
            var bare = PartsOf(Nothing(common.TestOn), null, common.Edition?.HarderForms, common.Edition, isOlder: false, overrule);
            return new TestChild(person, worn, null, null, bare, ReckonReadiness.Reckon(bare), evidence, reckoned, overrule);
        }

        var newest = SheetBy(edition, target);
        var (sheet, rank, inUse, nearest) = (newest.Sheet, target, edition, (NearestEditionAnswer?)null);
        var isOlder = false;
        if (common.Beside is { } beside && OtherSheet(beside.Edition, target.Key) is { } other)
        {
            // The edition that holds is the newer one of the two, or the older where the other holds only from after the test.
            var (older, newer) = beside.IsToCome ? (newest, other) : (other, newest);
            nearest = Nearest(older, newer, beside, edition);
            isOlder = !nearest.IsNewer && !beside.IsToCome;
            if (isOlder) (rank, inUse) = (beside.Edition.Edition.Ranks[beside.Edition.PlaceOf(target.Key)], beside.Edition);
            sheet = nearest.Sheet;
        }

        var harder = nearest is null ? inUse.HarderForms : [.. edition.HarderForms, .. common.Beside!.Edition.HarderForms];
        var parts = PartsOf(sheet, rank, harder, inUse, isOlder, overrule);
        var answer = ReckonReadiness.Reckon(parts);
        return new TestChild(person, worn, rank, sheet, parts, answer, evidence, reckoned, overrule)
        {
            Edition = inUse.Published,
            IsByOlder = isOlder,
            WhichList = nearest is null ? [] : Said(nearest),
            Further = Further(answer, inUse, rank, isOlder),
        };
    }

    private (SheetSnapshot Question, RequirementSheet Sheet)? OtherSheet(EditionInHand other, string rank) =>
        other.PlaceOf(rank) is >= 0 and var place ? SheetBy(other, other.Edition.Ranks[place]) : null;

    private (SheetSnapshot Question, RequirementSheet Sheet) SheetBy(EditionInHand edition, LadderRank rank)
    {
        var at = common with { Edition = edition };
        var unit = common.TermUnit is { } key && edition.Edition.Units.Any(u => u.Key == key) ? key : null;
        var question = new SheetSnapshot(
            edition.Edition, rank.Key, common.TestOn, unit, common.AgeRules, SheetChildFacts.Of(book, at, person.Id, born, evidence, SparesTheNeck()));
        return (question, MakeSheet.Make(question, edition.Prepared));
    }

    private NearestEditionAnswer Nearest(
        (SheetSnapshot Question, RequirementSheet Sheet) older, (SheetSnapshot Question, RequirementSheet Sheet) newer, EditionBeside beside, EditionInHand holding)
    {
        // Secured is what either list would show as good on the page.
        var (holds, other) = beside.IsToCome ? (older, newer) : (newer, older);
        HashSet<string> secured =
        [
            .. Good(ReckonReadiness.Reckon(PartsOf(holds.Sheet, null, holding.HarderForms, holding, isOlder: false))),
            .. Good(ReckonReadiness.Reckon(PartsOf(other.Sheet, null, beside.Edition.HarderForms, beside.Edition, isOlder: !beside.IsToCome))),
        ];
        var question = NearestEdition.Question(older.Question, newer.Question, older.Sheet, newer.Sheet, [.. secured.Order(StringComparer.Ordinal)], beside.Changeover);
        return NearestEdition.Choose(beside.IsToCome ? question with { NewerFrom = beside.Edition.Published.From } : question);
    }

    private static IEnumerable<string> Good(ReadinessAnswer answer) => answer.Lines.SelectMany(l => l.Items).Where(i => i.IsMet).Select(i => i.Item);

    // A list that only holds later is worth a word where it asks something now.
    private static List<string> Said(NearestEditionAnswer answer) =>
        answer.Reasons is [NearerEdition { NewerFrom: not null }] ? [] : [.. answer.Reasons.Select(r => r.Sentence)];

    // Up to so many ranks at one test, each with its own sheet and its own least time; none is better than the one below it.
    private List<FurtherRank> Further(ReadinessAnswer first, EditionInHand edition, LadderRank target, bool isOlder)
    {
        if (target.Minima.FastTrack is not { } track || !first.Reasons.OfType<FastTrackHolds>().Any(t => t.Holds)) return [];
        List<FurtherRank> further = [];
        var verdict = first.Verdict;
        var place = edition.PlaceOf(target.Key);
        for (var i = place + 1; i < edition.Edition.Ranks.Count && i < place + track.MostRanks; i++)
        {
            var rank = edition.Edition.Ranks[i];
            var answer = ReckonReadiness.Reckon(PartsOf(SheetBy(edition, rank).Sheet, rank, edition.HarderForms, edition, isOlder));
            verdict = (ReadyWord)Math.Max((int)verdict, (int)answer.Verdict);
            further.Add(new FurtherRank(rank, verdict, answer.TimeSaid, answer.ItemsSaid));
        }

        return further;
    }

    private ReadinessParts PartsOf(
        RequirementSheet sheet, LadderRank? rank, IReadOnlyList<Item>? harder, EditionInHand? edition, bool isOlder, HeldOverrule? set = null)
    {
        var at = common with { Edition = edition };
        var (time, clock) = isOlder && reckoned.ByOlder is { } older ? (older.Time, older.Clock) : (reckoned.Time, reckoned.Clock);
        var seen = evidence.Items.Select(i => (Key: book.ItemKey(i.Key), i.Value)).Where(i => i.Key is not null).Select(i => new ItemSeen(i.Key!, i.Value)).ToList();
        var ladder = common.Programme.LadderId;
        var off = rank is null ? null : ChildTime.OffOf(book, common.Programme, person.Id, rank);
        return new ReadinessParts(
            common.Reckoning.AsOf,
            common.TestOn,
            common.Reckoning.NextTestOn,
            clock,
            sheet,
            new Evidence(seen, evidence.Falls, evidence.OnTheMat, SheetChildFacts.Credited(book, at, person.Id), SheetChildFacts.PromotedOn(book, at, person.Id)),
            standDowns,
            new TestPapers(
                born,
                common.Papers.AnyRegistration,
                common.Papers.RegisteredUntil.TryGetValue(person.Id, out var until) ? until : null,
                book.EnrolmentsOfPerson(person.Id).Where(e => book.Programme(e.ProgrammeId)?.LadderId == ladder).Select(e => e.From).Append(enrolment.From).Min(),
                off?.Decided ?? 0,
                off?.Why,
                off?.By,
                off?.On,
                TestsTaken()),
            common.Reckoning.Attendance.Prior,
            [.. common.LessonsLeft.Where(d => d >= time.First)],
            set is null ? null : new Overrule((ReadyWord)set.Verdict, NameOf(book, set.ById) ?? "an adult whose name was erased", common.Club.Clock.DayOf(set.MadeAt), set.Why),
            common.GateRule,
            common.Rule,
            common.LikelyPercent,
            harder,
            AfterKnock());
    }

    // Words only, or another day: as of today, since a knock of tonight counts tonight.
    private WordsOnlyOrMoved? AfterKnock() =>
        common.Knocks is { } knocks && knocks[person.Id].ToList() is { Count: > 0 } own && KnockSum.Of(common.Club, person.Id, own, evidence.StandDowns) is { } dates && dates.DayZero <= common.TestOn
            ? TestAfterKnock.Of(dates, common.TestOn, common.Reckoning.NextTestOn > common.TestOn ? common.Reckoning.NextTestOn : null)
            : null;

    // Days on which a rank was given here, before this test.
    private int TestsTaken() => book.AwardsOf(person.Id)
        .Where(a => a.LadderId == common.Programme.LadderId && a.Source == AwardSource.Promoted && a.On < common.TestOn && book.Rank(a.RankId) is { Position: not 1 })
        .Select(a => a.On).Distinct().Count();

    // As the sum reads it: one that begins before the test is treated as standing, and none ends by itself.
    private bool SparesTheNeck() => standDowns.Any(s =>
        s.Scope == StandDownScope.SpareTheNeck && s.From <= common.TestOn && (s.LiftedOn is not { } lifted || lifted > common.Reckoning.AsOf));

    private static RequirementSheet Nothing(DateOnly testOn) => new("", "", null, "", null, null, null, testOn, [], new Minima(), null, [], [], []);

    private static string? NameOf(ClubBook book, Guid adult) => book.Person(adult) is { IsErased: false } known ? known.FullName : null;
}
