using System.Text.Json.Serialization;

namespace Keikocho.Core.Syllabus;

/// <summary>What an age is reckoned by.</summary>
public enum AgeBasis
{
    /// <summary>The birthday.</summary>
    Birthday = 0,
    /// <summary>The age reached in the calendar year.</summary>
    CalendarYear = 1,
}

/// <summary>Another least time for some ages.</summary>
/// <param name="Ages">Which ages.</param>
/// <param name="Lessons">Lessons, where they differ.</param>
/// <param name="Weeks">Weeks, where they differ.</param>
/// <param name="Months">Calendar months, where they differ.</param>
public sealed record MinimaForAges(AgeBand Ages, int? Lessons = null, int? Weeks = null, int? Months = null);

/// <summary>Older starters may move up by more than one rank.</summary>
/// <param name="FromAge">From this age at the first lesson.</param>
/// <param name="MostRanks">At most so many ranks at one test.</param>
/// <param name="FirstTests">At so many first tests.</param>
public sealed record FastTrack(int FromAge, int MostRanks, int FirstTests);

/// <summary>Least time and age for one rank. Zero and null ask nothing.</summary>
/// <param name="Lessons">Lessons attended since the last rank; since the first lesson for the first course.</param>
/// <param name="Weeks">Full weeks on the test day.</param>
/// <param name="Months">Full calendar months on the test day.</param>
/// <param name="Age">Years.</param>
/// <param name="AgeBy">What the age is reckoned by.</param>
/// <param name="CountedOverTwoRanks">Lessons count since the rank before the last one.</param>
/// <param name="LessonsADay">At most so many of one day count; 0 for all.</param>
/// <param name="ShortestLessonMinutes">A shorter lesson does not count; 0 for all.</param>
/// <param name="ForAges">Other figures for some ages; the first that holds counts.</param>
/// <param name="MostReductionPercent">The club may take off at most this share of the time for a child, with a reason.</param>
/// <param name="FastTrack">For older starters; null for nobody.</param>
/// <param name="ExaminerIsNotTheCoach">Whoever teaches the child does not examine it.</param>
public sealed record Minima(
    int Lessons = 0,
    int Weeks = 0,
    int Months = 0,
    int? Age = null,
    AgeBasis AgeBy = AgeBasis.Birthday,
    bool CountedOverTwoRanks = false,
    int LessonsADay = 0,
    int ShortestLessonMinutes = 0,
    IReadOnlyList<MinimaForAges>? ForAges = null,
    int MostReductionPercent = 0,
    FastTrack? FastTrack = null,
    bool ExaminerIsNotTheCoach = false);

/// <summary>A rank of the ladder with what it asks.</summary>
/// <param name="Key">Stable key: "yellow-one-red-tip".</param>
/// <param name="Name">The club's words: "Yellow, one red tip".</param>
/// <param name="ShortName">A short form for narrow columns; null to use the name.</param>
/// <param name="Cloth">Colour of the cloth as a word (white, yellow ...); null where it is none of them.</param>
/// <param name="Tips">Tips sewn to the belt, 0 to 4.</param>
/// <param name="Minima">Least time and age.</param>
/// <param name="Requirements">In the order of the sheet; empty for the rank given on joining.</param>
/// <param name="FirstCourse">It is given at the end of the first course, on the child's own clock.</param>
/// <param name="Given">When it is given, in the club's words: "any test", "Summer test"; null for any test.</param>
public sealed record LadderRank(
    string Key,
    string Name,
    string? ShortName,
    string? Cloth,
    int Tips,
    Minima Minima,
    IReadOnlyList<Requirement> Requirements,
    bool FirstCourse = false,
    string? Given = null);

/// <summary>The material of one term.</summary>
/// <param name="Key">Stable key: "hips".</param>
/// <param name="Name">"Hip throws".</param>
/// <param name="Items">Keys of what is taught in it, in order.</param>
public sealed record Unit(string Key, string Name, IReadOnlyList<string> Items);

/// <summary>A technique of the club's own, or a spelling that the name library does not have.</summary>
/// <param name="Name">The club's spelling.</param>
/// <param name="CountedAs">The listed technique that it is counted as; null where it stands for itself.</param>
/// <param name="Kana">Kana.</param>
/// <param name="Kanji">Kanji.</param>
/// <param name="Meaning">Plain meaning.</param>
public sealed record OwnTechnique(string Name, string? CountedAs = null, string? Kana = null, string? Kanji = null, string? Meaning = null);

/// <summary>A dated version of a syllabus: ladder, requirements, first course, units and their order. Once published it never changes.</summary>
/// <param name="Ladder">The ladder's name.</param>
/// <param name="Name">The edition's name as sheets print it: "edition 3".</param>
/// <param name="From">First day on which it holds; null while it is a draft.</param>
/// <param name="Ranks">Lowest first; the first is worn on joining.</param>
/// <param name="Units">In the order of the rotation; may be empty.</param>
/// <param name="FirstCourse">Keys of what is taught at the beginners' end, in order.</param>
/// <param name="Items">Everything that ranks, units and the first course name.</param>
/// <param name="Techniques">The club's own techniques.</param>
/// <param name="Source">Where the ladder comes from, for a published one; null for the club's own.</param>
/// <param name="Cautions">Lines that a page about it shows: what was not read, what nobody reviewed.</param>
/// <param name="GoneAtOnce">Keys of items that this edition took out for safety: asked by no sheet from the day of publication on; null for none.</param>
public sealed record Edition(
    string Ladder,
    string Name,
    DateOnly? From,
    IReadOnlyList<LadderRank> Ranks,
    IReadOnlyList<Unit> Units,
    IReadOnlyList<string> FirstCourse,
    IReadOnlyList<Item> Items,
    IReadOnlyList<OwnTechnique>? Techniques = null,
    string? Source = null,
    IReadOnlyList<string>? Cautions = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<string>? GoneAtOnce = null);
