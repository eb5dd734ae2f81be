using System.Collections.Immutable;
using Keikocho.App.Club;
using Keikocho.Core.Readiness;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Book;
using Keikocho.Store.Calendar;
using Keikocho.Store.Marks;
using Keikocho.Store.Promotion;
using Keikocho.Store.Syllabus;

namespace Keikocho.App.PromotionTests;

/// <summary>One child at one promotion test: the question, its sheet, and the answer.</summary>
/// <param name="Person">The child.</param>
/// <param name="Worn">The rank that is worn; null where none is recorded.</param>
/// <param name="Target">The rank that is tested for; null while no edition holds on the day of the test, and at the top of the ladder.</param>
/// <param name="Sheet">What must be shown; null as above.</param>
/// <param name="Parts">The whole question. Without an edition its sheet asks nothing, so that only time and papers are reckoned.</param>
/// <param name="Answer">The answer, with every reason.</param>
/// <param name="Evidence">What was seen.</param>
/// <param name="Reckoned">The child's clock for this test.</param>
/// <param name="Overrule">The overrule on record; the answer says whether it holds.</param>
public sealed record TestChild(
    BookPerson Person,
    RankRow? Worn,
    LadderRank? Target,
    RequirementSheet? Sheet,
    ReadinessParts Parts,
    ReadinessAnswer Answer,
    ChildEvidence Evidence,
    ChildReckoning Reckoned,
    HeldOverrule? Overrule)
{
    /// <summary>The edition that the child is tested by; null where none holds.</summary>
    public PublishedEdition? Edition { get; init; }

    /// <summary>Whether that is the edition before the one that holds.</summary>
    public bool IsByOlder { get; init; }

    /// <summary>While the syllabus changes: by which list the child is tested, and why, in sentences; else empty.</summary>
    public IReadOnlyList<string> WhichList { get; init; } = [];

    /// <summary>Ranks beyond the target that an older starter may be tested for at the same test, lowest first.</summary>
    public IReadOnlyList<FurtherRank> Further { get; init; } = [];
}

/// <summary>A rank beyond the next one, by the fast track for older starters.</summary>
/// <param name="Rank">The rank.</param>
/// <param name="Verdict">The verdict, never better than that of the rank below it.</param>
/// <param name="Time">Time and papers in one phrase.</param>
/// <param name="Items">The items in one phrase.</param>
public sealed record FurtherRank(LadderRank Rank, ReadyWord Verdict, string Time, string Items);

/// <summary>Everybody on the register at one promotion test, in register order.</summary>
/// <param name="Programme">The programme.</param>
/// <param name="TestId">The test.</param>
/// <param name="TestOn">Its day.</param>
/// <param name="AsOf">The evening just closed.</param>
/// <param name="NextTestOn">The test after it; null when none is set.</param>
/// <param name="Edition">The edition that holds on the day of the test; null while there is none.</param>
/// <param name="LessonsLeft">Days of the lessons left before the test.</param>
/// <param name="Children">Who can be tested.</param>
/// <param name="AtTheTop">Who wears the highest rank: there is nothing to be tested for.</param>
public sealed record TestList(
    ProgrammeRow Programme,
    Guid TestId,
    DateOnly TestOn,
    DateOnly AsOf,
    DateOnly? NextTestOn,
    PublishedEdition? Edition,
    ImmutableArray<DateOnly> LessonsLeft,
    ImmutableArray<TestChild> Children,
    ImmutableArray<BookPerson> AtTheTop);
