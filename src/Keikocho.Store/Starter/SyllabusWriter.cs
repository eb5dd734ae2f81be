using System.Globalization;
using Keikocho.Core.Syllabus;

namespace Keikocho.Store.Starter;

/// <summary>Writes an edition as a syllabus file.</summary>
internal static class SyllabusWriter
{
    /// <summary>The whole text.</summary>
    public static string Write(Edition edition)
    {
        ArgumentNullException.ThrowIfNull(edition);
        var lines = new TomlLines()
            .Text("ladder", edition.Ladder)
            .Text("edition", edition.Name);
        if (edition.From is { } from) lines.Line(string.Create(CultureInfo.InvariantCulture, $"from = {from:yyyy-MM-dd}"));
        lines.Text("source", edition.Source).Texts("cautions", edition.Cautions).Texts("gone-at-once", edition.GoneAtOnce);
        lines.Line().Texts("first-course", edition.FirstCourse);
        // Nothing written means null; an empty list is said.
        if (edition.Techniques is { Count: 0 }) lines.Line("technique = []");
        foreach (var rank in edition.Ranks) Rank(lines, rank);
        foreach (var unit in edition.Units)
            lines.Line().Line("[[unit]]").Text("key", unit.Key).Text("name", unit.Name).Texts("items", unit.Items);
        foreach (var item in edition.Items) Item(lines, item);
        foreach (var own in edition.Techniques ?? [])
        {
            lines.Line().Line("[[technique]]").Text("name", own.Name).Text("counted-as", own.CountedAs)
                .Text("kana", own.Kana).Text("kanji", own.Kanji).Text("meaning", own.Meaning);
        }

        return lines.ToString();
    }

    private static void Rank(TomlLines lines, LadderRank rank)
    {
        var minima = rank.Minima;
        lines.Line().Line("[[rank]]").Text("key", rank.Key).Text("name", rank.Name).Text("short", rank.ShortName).Text("belt", rank.Cloth)
            .Count("tips", rank.Tips).Truth("first-course", rank.FirstCourse).Text("given", rank.Given)
            .Count("lessons", minima.Lessons).Count("weeks", minima.Weeks).Count("months", minima.Months).Number("age", minima.Age);
        if (minima.AgeBy != AgeBasis.Birthday) lines.Text("age-by", SyllabusWords.Ages.Of(minima.AgeBy));
        lines.Truth("counted-over-two-ranks", minima.CountedOverTwoRanks).Count("lessons-a-day", minima.LessonsADay)
            .Count("shortest-lesson-minutes", minima.ShortestLessonMinutes).Count("most-reduction-percent", minima.MostReductionPercent)
            .Truth("examiner-is-not-the-coach", minima.ExaminerIsNotTheCoach);
        if (minima.FastTrack is { } track)
            lines.Line($"fast-track = {Braces(("from-age", track.FromAge), ("most-ranks", track.MostRanks), ("first-tests", track.FirstTests))}");
        if (minima.ForAges is { } ages)
        {
            var bands = ages.Select(band => Braces(
                ("from", band.Ages.From), ("to", band.Ages.To), ("lessons", band.Lessons), ("weeks", band.Weeks), ("months", band.Months)));
            lines.Line($"for-ages = [{string.Join(", ", bands)}]");
        }

        foreach (var requirement in rank.Requirements) Requirement(lines, requirement);
    }

    private static void Requirement(TomlLines lines, Requirement asked)
    {
        lines.Line().Line("[[rank.asks]]").Text("key", asked.Key);
        Shape(lines, asked.Ask);
        lines.Text("title", asked.Title).Text("condition", asked.Condition);
        if (asked.Ages is { } band) lines.Line($"ages = {Braces(("from", band.From), ("to", band.To))}");
        lines.Truth("critical", asked.Critical);
        if (asked.Carry != Carry.ThisRank) lines.Text("carry", SyllabusWords.Carries.Of(asked.Carry));
        lines.Text("unit", asked.Unit).Truth("at-once", asked.AtOnce);
    }

    private static void Shape(TomlLines lines, Ask ask)
    {
        switch (ask)
        {
            case Ask.AllOf all:
                lines.Texts("all", all.Items);
                break;
            case Ask.AnyOf any:
                lines.Number("any", any.Count).Texts("of", any.Items);
                break;
            case Ask.FromPool pool:
                lines.Number("pool", pool.Count).Text("chosen-by", SyllabusWords.Choosers.Of(pool.ChosenBy));
                if (pool.Pool.Count > 0) lines.Texts("of", pool.Pool);
                Kinds(lines, pool.Kinds);
                break;
            case Ask.ShareOfRank share:
                lines.Number("share", share.Percent).Text("of-rank", share.Rank);
                Kinds(lines, share.Kinds);
                break;
            case Ask.DrawnFromEarlier drawn:
                lines.Number("draw", drawn.Count);
                if (drawn.Ranks.Count > 0) lines.Texts("ranks", drawn.Ranks);
                Kinds(lines, drawn.Kinds);
                break;
            case Ask.TheOther other:
                lines.Line($"the-other = {{ rank = {TomlLines.Quoted(other.Rank)}, asks = {TomlLines.Quoted(other.Requirement)} }}");
                break;
            default:
                throw new ArgumentException($"A requirement of the shape {ask.GetType().Name} cannot be written.", nameof(ask));
        }
    }

    private static void Kinds(TomlLines lines, IReadOnlyList<ItemKind>? kinds) => lines.Texts("kinds", kinds?.Select(SyllabusWords.Kinds.Of).ToList());

    private static void Item(TomlLines lines, Item item)
    {
        lines.Line().Line("[[item]]").Text("key", item.Key).Text("kind", SyllabusWords.Kinds.Of(item.Kind)).Text("name", item.Name)
            .Text("technique", item.Technique);
        Order(lines, item.Order);
        if (item.Fall is { } fall)
        {
            var sides = fall.BothSides ? ", both-sides = true" : "";
            lines.Line($"fall = {{ direction = {TomlLines.Quoted(SyllabusWords.Falls.Of(fall.Direction))}{sides}, stage = {TomlLines.Plain(fall.Stage)} }}");
        }

        lines.Text("kana", item.Kana).Text("kanji", item.Kanji).Text("meaning", item.Meaning).Text("look-for", item.LookFor)
            .Number("seconds", item.Seconds).Number("times", item.Times).Texts("answers", item.Answers).Truth("safety", item.Safety)
            .Truth("loads-the-neck", item.LoadsTheNeck).Text("alternative", item.Alternative).Texts("covers", item.Covers);
    }

    private static void Order(TomlLines lines, Order? order)
    {
        switch (order)
        {
            case Core.Syllabus.Order.Into into:
                lines.Texts("into", [into.First, into.Second]);
                break;
            case Core.Syllabus.Order.CounteredBy counter:
                lines.Texts("countered-by", [counter.Attack, counter.Counter]);
                break;
            case Core.Syllabus.Order.EscapeFrom escape:
                lines.Line($"escape = {{ hold = {TomlLines.Quoted(escape.Hold)}, by = {TomlLines.Quoted(escape.By)} }}");
                break;
            case Core.Syllabus.Order.TurnoverInto turnover:
                var end = turnover.Hold is { } hold ? $"into = {TomlLines.Quoted(hold)}, " : "";
                lines.Line($"turnover = {{ {end}position = {TomlLines.Quoted(turnover.Position)} }}");
                break;
            case null:
                break;
            default:
                throw new ArgumentException($"An order of the shape {order.GetType().Name} cannot be written.", nameof(order));
        }
    }

    private static string Braces(params (string Name, int? Value)[] fields)
    {
        var written = fields.Where(field => field.Value is not null).Select(field => $"{field.Name} = {TomlLines.Plain(field.Value!.Value)}");
        return $"{{ {string.Join(", ", written)} }}".Replace("{  }", "{}", StringComparison.Ordinal);
    }
}
