using System.Globalization;
using Keikocho.Core.Syllabus;

namespace Keikocho.Store.Starter;

/// <summary>Makes an edition of the fields of a syllabus file.</summary>
internal static class SyllabusReader
{
    /// <summary>The edition; worth something only when the trace has no fault.</summary>
    public static Edition Read(Fields file)
    {
        var edition = new Edition(
            file.Needed("ladder"),
            file.Needed("edition", "name"),
            file.Day("from"),
            [.. (file.Blocks("rank", "ranks") ?? []).Select(Rank)],
            [.. (file.Blocks("unit", "units") ?? []).Select(Unit)],
            file.Texts("first-course", "firstCourse") ?? [],
            [.. (file.Blocks("item", "items") ?? []).Select(SyllabusItems.Item)],
            file.Blocks("technique", "techniques")?.Select(Technique).ToList(),
            file.Text("source"),
            file.Texts("cautions"),
            file.Texts("gone-at-once", "goneAtOnce"));
        file.NothingElse();
        return edition;
    }

    /// <summary>The key as written, or made from the name.</summary>
    public static string Key(Fields block, string name)
    {
        if (block.Has("key")) return block.Needed("key");
        block.Text("key");
        var key = MadeKey(name);
        if (key.Length == 0 && name.Length > 0) block.Fault("key", "No key can be made from the name; write one of lower-case letters, figures and hyphens.");
        return key;
    }

    /// <summary>"O-goshi, moving" gives "o-goshi-moving".</summary>
    public static string MadeKey(string name)
    {
        var letters = Core.Intake.NameFold.Fold(name).Select(c => char.IsAsciiLetterOrDigit(c) ? c : ' ');
        return string.Join('-', string.Concat(letters).Split(' ', StringSplitOptions.RemoveEmptyEntries));
    }

    private static LadderRank Rank(Fields block)
    {
        var name = block.Needed("name");
        var rank = new LadderRank(
            Key(block, name),
            name,
            block.Text("short", "shortName"),
            block.Text("belt", "cloth"),
            block.Number("tips", most: 4) ?? 0,
            Minima(block),
            [.. (block.Blocks("asks", "requirements") ?? []).Select(SyllabusAsks.Requirement)],
            block.Truth("first-course", "firstCourse"),
            block.Text("given"));
        block.NothingElse();
        return rank;
    }

    private static Minima Minima(Fields block) => new(
        block.Number("lessons", "minima.lessons") ?? 0,
        block.Number("weeks", "minima.weeks") ?? 0,
        block.Number("months", "minima.months") ?? 0,
        block.Number("age", "minima.age"),
        block.Word("age-by", SyllabusWords.Ages, "minima.ageBy") ?? AgeBasis.Birthday,
        block.Truth("counted-over-two-ranks", "minima.countedOverTwoRanks"),
        block.Number("lessons-a-day", "minima.lessonsADay") ?? 0,
        block.Number("shortest-lesson-minutes", "minima.shortestLessonMinutes") ?? 0,
        block.Blocks("for-ages", "minima.forAges")?.Select(ForAges).ToList(),
        block.Number("most-reduction-percent", "minima.mostReductionPercent", 0, 100) ?? 0,
        FastTrack(block.Block("fast-track", "minima.fastTrack")),
        block.Truth("examiner-is-not-the-coach", "minima.examinerIsNotTheCoach"));

    private static MinimaForAges ForAges(Fields block)
    {
        var made = new MinimaForAges(
            new AgeBand(block.Number("from", "ages.from"), block.Number("to", "ages.to")),
            block.Number("lessons"), block.Number("weeks"), block.Number("months"));
        block.NothingElse();
        return made;
    }

    private static FastTrack? FastTrack(Fields? block)
    {
        if (block is null) return null;
        var made = new FastTrack(NeededNumber(block, "from-age"), NeededNumber(block, "most-ranks"), NeededNumber(block, "first-tests"));
        block.NothingElse();
        return made;
    }

    /// <summary>A number that must be there.</summary>
    public static int NeededNumber(Fields block, string name, string? to = null, int least = 0, int most = 1_000_000)
    {
        if (!block.Has(name))
            block.Fault(name, string.Create(CultureInfo.InvariantCulture, $"This is missing; write a whole number from {least} to {most}."));
        return block.Number(name, to, least, most) ?? 0;
    }

    private static Unit Unit(Fields block)
    {
        var name = block.Needed("name");
        var unit = new Unit(Key(block, name), name, block.Texts("items") ?? []);
        block.NothingElse();
        return unit;
    }

    private static OwnTechnique Technique(Fields block)
    {
        var technique = new OwnTechnique(
            block.Needed("name"), block.Text("counted-as"), block.Text("kana"), block.Text("kanji"), block.Text("meaning"));
        block.NothingElse();
        return technique;
    }
}
