using System.Collections.Concurrent;
using System.Collections.Immutable;
using Keikocho.App.Club;
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

/// <summary>
/// Puts the question "is this child put forward?" together from what the club holds, for everybody on a register or for one child. It
/// only gathers: clock, sheet and verdict are the sums' own. A list is kept until something that it rests on changes.
/// </summary>
public sealed class TestReckoning(Reckonings reckonings, EditionsInHand editions)
{
    private readonly ConcurrentDictionary<Guid, Kept> kept = new();

    /// <summary>Everybody on the register at a test that is not over.</summary>
    public TestList Of(OpenClub club, PromotionTestRow test)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(test);
        var programme = club.Book.Programme(test.ProgrammeId) ?? throw new InvalidOperationException("A test has no programme.");
        var reckoning = reckonings.Of(club, programme, test.Date);
        // What is seen on an evening that is over raises a revision; what is seen tonight counts once tonight is over, and is counted then.
        var marks = reckoning.AsOf == club.Today ? PastStates.MarksAt(club.Reading, [.. club.Book.LessonsOn(club.Today).Select(l => l.Id)]) : 0;
        var at = (club.Revisions.People, club.Revisions.Calendar, club.Revisions.Past, marks);
        if (kept.TryGetValue(test.Id, out var known) && known.At == at && ReferenceEquals(known.Reckoning, reckoning)) return known.List;
        var list = Gather(club, programme, test.Id, test.Date, reckoning, null, null);
        kept[test.Id] = new Kept(at, reckoning, list);
        return list;
    }

    /// <summary>
    /// One child at the next test of a programme; where none is set, as if it were the day after the evening just closed, so that what is
    /// good and what is missing can be read all the same. Null when the child is not on the register.
    /// </summary>
    /// <param name="club">The club.</param>
    /// <param name="programme">The programme.</param>
    /// <param name="person">The child.</param>
    /// <param name="evidence">What was seen, where the caller has read it.</param>
    public TestList OfChild(OpenClub club, ProgrammeRow programme, Guid person, ChildEvidence? evidence = null)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(programme);
        var reckoning = reckonings.Of(club, programme);
        var test = club.Book.Tests.FirstOrDefault(t => t.ProgrammeId == programme.Id && t.Date == reckoning.TestOn);
        return Gather(club, programme, test?.Id ?? Guid.Empty, test?.Date ?? reckoning.AsOf.AddDays(1), reckoning, person, evidence);
    }

    private TestList Gather(
        OpenClub club, ProgrammeRow programme, Guid testId, DateOnly testOn, ProgrammeReckoning reckoning, Guid? only, ChildEvidence? read)
    {
        var (book, asOf) = (club.Book, reckoning.AsOf);
        var edition = book.EditionOn(programme.LadderId, testOn);
        var left = book.LessonsOf(programme.Id).Where(l => l.Date > asOf && l.Date < testOn && l.ClosureId is null).Select(l => l.Date).ToImmutableArray();
        // Who leaves before the test, or starts after it, is not at it.
        var register = book.RegisterOf(programme.Id, asOf.AddDays(1)).DistinctBy(e => e.PersonId)
            .Where(e => (only is null || e.PersonId == only) && (e.To is null || e.To >= testOn) && e.CountsFrom <= testOn && reckoning.Children.ContainsKey(e.PersonId)).ToList();
        List<Guid> people = [.. register.Select(e => e.PersonId)];
        var evidence = read is null ? EvidenceReader.Of(club.Reading, people, null, asOf) : new Dictionary<Guid, ChildEvidence> { [read.PersonId] = read };
        var papers = TestReader.Of(club.Reading, people, testId);
        var inHand = edition is null ? null : editions.Of(edition);
        var common = new InCommon(
            club, programme, testId, testOn, reckoning, inHand,
            book.TermOn(testOn) is { } term && book.UnitOf(programme.Id, term.Id) is { } unit && inHand?.Edition.Units.Any(u => u.Key == unit) == true ? unit : null,
            editions.AgeRulesOf(book), left, papers, ClubRules.FallGate(book, asOf), ClubRules.Readiness(book, asOf), ClubRules.Prior(book, asOf).LikelyPercent);
        var children = ImmutableArray.CreateBuilder<TestChild>(register.Count);
        var top = ImmutableArray.CreateBuilder<BookPerson>();
        foreach (var enrolment in register)
        {
            if (book.Person(enrolment.PersonId) is not { IsErased: false } person) continue;
            var target = ClubRules.NextRank(book, programme, person.Id, testOn);
            if (inHand is not null && target is null) top.Add(person);
            else children.Add(OneChild(common, enrolment, person, target, evidence[person.Id]));
        }

        return new TestList(programme, testId, testOn, asOf, reckoning.NextTestOn, edition, left, children.ToImmutable(), top.ToImmutable());
    }

    private static TestChild OneChild(InCommon common, EnrolmentRow enrolment, BookPerson person, LadderRank? target, ChildEvidence evidence)
    {
        var (book, ladder) = (common.Club.Book, common.Programme.LadderId);
        var reckoned = common.Reckoning.Children[person.Id];
        var standDowns = evidence.StandDowns.Select(s => s.ToStandDown(id => NameOf(book, id))).ToList();
        // A birth date that is still to come was typed wrong: judged as if none were held, as the youngest.
        var born = person.Born > common.Reckoning.AsOf ? null : person.Born;
        var seen = evidence.Items.Select(i => (Key: book.ItemKey(i.Key), i.Value)).Where(i => i.Key is not null).Select(i => new ItemSeen(i.Key!, i.Value)).ToList();
        var sheet = target is null ? null : MakeSheet.Make(
            new SheetSnapshot(
                common.Edition!.Edition, target.Key, common.TestOn, common.Unit, common.AgeRules,
                SheetChildFacts.Of(book, common, person.Id, born, evidence, SparesTheNeck(standDowns, common))),
            common.Edition.Prepared);
        var overrule = common.Papers.Overrules.GetValueOrDefault(person.Id);
        var worn = book.RankOf(person.Id, ladder);
        var first = reckoned.FromPromotion ? reckoned.Started.AddDays(1) : reckoned.Started;
        var parts = new ReadinessParts(
            common.Reckoning.AsOf,
            common.TestOn,
            common.Reckoning.NextTestOn,
            reckoned.Clock,
            sheet ?? Nothing(common.TestOn),
            new Evidence(seen, evidence.Falls, evidence.OnTheMat, SheetChildFacts.Credited(book, common, person.Id), SheetChildFacts.PromotedOn(book, common, person.Id)),
            standDowns,
            new TestPapers(
                born,
                common.Papers.AnyRegistration,
                common.Papers.RegisteredUntil.TryGetValue(person.Id, out var until) ? until : null,
                book.EnrolmentsOfPerson(person.Id).Where(e => book.Programme(e.ProgrammeId)?.LadderId == ladder).Select(e => e.From).Append(enrolment.From).Min()),
            common.Reckoning.Attendance.Prior,
            [.. common.LessonsLeft.Where(d => d >= first)],
            overrule is null ? null : new Overrule((ReadyWord)overrule.Verdict, NameOf(book, overrule.ById) ?? "an adult whose name was erased", common.Club.Clock.DayOf(overrule.MadeAt), overrule.Why),
            common.GateRule,
            common.Rule,
            common.LikelyPercent,
            common.Edition?.HarderForms);
        return new TestChild(person, worn, target, sheet, parts, ReckonReadiness.Reckon(parts), evidence, reckoned, overrule);
    }

    // As the sum reads it: one that begins before the test is treated as standing, and none ends by itself.
    private static bool SparesTheNeck(List<StandDown> standDowns, InCommon common) => standDowns.Any(s =>
        s.Scope == StandDownScope.SpareTheNeck && s.From <= common.TestOn && (s.LiftedOn is not { } lifted || lifted > common.Reckoning.AsOf));

    private static RequirementSheet Nothing(DateOnly testOn) => new("", "", null, "", null, null, null, testOn, [], new Minima(), null, [], [], []);

    private static string? NameOf(ClubBook book, Guid adult) => book.Person(adult) is { IsErased: false } person ? person.FullName : null;

    private sealed record Kept((long People, long Calendar, long Past, int Marks) At, ProgrammeReckoning Reckoning, TestList List);
}

/// <summary>What all children of one list have in common.</summary>
internal sealed record InCommon(
    OpenClub Club,
    ProgrammeRow Programme,
    Guid TestId,
    DateOnly TestOn,
    ProgrammeReckoning Reckoning,
    EditionInHand? Edition,
    string? Unit,
    IReadOnlyList<AgeRule> AgeRules,
    ImmutableArray<DateOnly> LessonsLeft,
    TestPapersHeld Papers,
    FallGateRule GateRule,
    ReadinessRule Rule,
    int LikelyPercent);
