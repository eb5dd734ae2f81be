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
    HeldOverrule? Overrule);

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
