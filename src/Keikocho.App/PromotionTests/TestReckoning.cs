using System.Collections.Concurrent;
using System.Collections.Immutable;
using Keikocho.App.Club;
using Keikocho.App.Syllabus;
using Keikocho.Core.Readiness;
using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Book;
using Keikocho.Store.Calendar;
using Keikocho.Store.Marks;
using Keikocho.Store.Promotion;
using Keikocho.Store.Safety;
using Keikocho.Store.Syllabus;

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
    /// Everybody on the register at the next test of a programme; where none is set, as if it were the day after the evening just closed.
    /// </summary>
    public TestList OfRegister(OpenClub club, ProgrammeRow programme)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(programme);
        var reckoning = reckonings.Of(club, programme);
        return club.Book.Tests.FirstOrDefault(t => t.ProgrammeId == programme.Id && t.Date == reckoning.TestOn) is { } test
            ? Of(club, test)
            : Gather(club, programme, Guid.Empty, reckoning.AsOf.AddDays(1), reckoning, null, null);
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
        var knocks = KnockReader.OfPeople(club.Reading, people);
        var inHand = edition is null ? null : editions.Of(edition);
        var common = new InCommon(
            club, programme, testId, testOn, reckoning, inHand,
            book.TermOn(testOn) is { } term ? book.UnitOf(programme.Id, term.Id) : null,
            editions.AgeRulesOf(book), left, papers, ClubRules.FallGate(book, asOf), ClubRules.Readiness(book, asOf), ClubRules.Prior(book, asOf).LikelyPercent,
            edition is null ? null : BesideOf(book, edition, testOn))
        { Knocks = testId == Guid.Empty ? null : knocks };
        var children = ImmutableArray.CreateBuilder<TestChild>(register.Count);
        var top = ImmutableArray.CreateBuilder<BookPerson>();
        foreach (var enrolment in register)
        {
            if (book.Person(enrolment.PersonId) is not { IsErased: false } person) continue;
            var target = ClubRules.NextRank(book, programme, person.Id, testOn);
            if (inHand is not null && target is null) top.Add(person);
            else children.Add(new OneChildAtTest(common, enrolment, person, evidence[person.Id]).For(target));
        }

        return new TestList(programme, testId, testOn, asOf, reckoning.NextTestOn, edition, left, children.ToImmutable(), top.ToImmutable());
    }

    // The edition before, while it may still be asked; else the next one, where it asks or takes out something at once.
    private EditionBeside? BesideOf(ClubBook book, PublishedEdition holds, DateOnly testOn)
    {
        if (book.OlderBeside(holds.LadderId, testOn) is { } older) return new EditionBeside(editions.Of(older), holds.Changeover!.Value, IsToCome: false);
        if (book.ComingAfter(holds.LadderId, testOn) is not { } next) return null;
        return next.Edition.GoneAtOnce is { Count: > 0 } || next.Edition.Ranks.Any(r => r.Requirements.Any(q => q.AtOnce))
            ? new EditionBeside(editions.Of(next), next.Changeover ?? next.From, IsToCome: true)
            : null;
    }

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
    string? TermUnit,
    IReadOnlyList<AgeRule> AgeRules,
    ImmutableArray<DateOnly> LessonsLeft,
    TestPapersHeld Papers,
    FallGateRule GateRule,
    ReadinessRule Rule,
    int LikelyPercent,
    EditionBeside? Beside = null)
{
    /// <summary>Knocks of the children; null where no test is set.</summary>
    public ILookup<Guid, HeldKnock>? Knocks { get; init; }
}

/// <summary>Another edition than the one that holds, which bears on a test all the same.</summary>
/// <param name="Edition">The edition, ready.</param>
/// <param name="Changeover">From this day on the newer of the two holds for everybody.</param>
/// <param name="IsToCome">It is the newer one and holds only from after the test; else it is the older one.</param>
internal sealed record EditionBeside(EditionInHand Edition, DateOnly Changeover, bool IsToCome);
