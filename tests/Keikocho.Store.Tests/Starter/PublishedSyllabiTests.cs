using System.Globalization;
using System.Text;
using Keikocho.Core.Kernel;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Starter;
using Keikocho.Testing;

namespace Keikocho.Store.Tests.Starter;

/// <summary>Published syllabi, each in full as far as it was read, with its sources in the file.</summary>
public class PublishedSyllabiTests
{
    private const string Folder = "tests/Keikocho.Store.Tests/Data";

    public static TheoryData<string> Files =>
        [.. Directory.EnumerateFiles(Repository.PathOf($"{Folder}/Syllabi"), "*.toml").Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Files))]
    public void A_published_syllabus_is_read_whole_says_its_source_and_what_was_not_read(string file)
    {
        var edition = Published(file);

        Assert.NotNull(edition.Source);
        Assert.Contains(edition.Cautions!, caution => caution.Contains("not read", StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void A_published_syllabus_is_the_same_after_it_was_written_again(string file)
    {
        var edition = Published(file);

        var again = Starters.Edition(SyllabusText.Read(SyllabusText.Write(edition), "again.toml"));

        Assert.Equal(SumJson.Write(edition), SumJson.Write(again));
    }

    [Fact]
    public void The_mon_scheme_has_eighteen_mon_on_six_belts()
    {
        var mon = Published("national-mon-scheme.toml").Ranks.Skip(1).ToList();

        Assert.Equal(18, mon.Count);
        Assert.All(mon.Chunk(3), belt =>
        {
            Assert.Single(belt.Select(rank => rank.Cloth).Distinct());
            Assert.Equal([1, 2, 3], belt.Select(rank => rank.Tips));
        });
    }

    [Fact]
    public void The_junior_kyu_have_the_printed_ages_and_classes() =>
        Assert.Equal(
            [(5, 7), (5, 7), (6, 14), (6, 20), (7, 20), (7, 20), (8, 32), (9, 40), (10, 40), (11, 52), (12, 52)],
            Published("united-states-junior-kyu.toml").Ranks.Skip(1).Select(rank => (rank.Minima.Age!.Value, rank.Minima.Lessons)));

    [Fact]
    public void The_junior_degrees_count_two_classes_a_day_of_an_hour_or_more() =>
        Assert.All(
            Published("united-states-junior-degrees.toml").Ranks.Skip(1),
            rank => Assert.Equal((2, 60), (rank.Minima.LessonsADay, rank.Minima.ShortestLessonMinutes)));

    [Fact]
    public void The_cumulative_ranks_ask_everything_of_the_ranks_below()
    {
        var edition = Published("united-states-cumulative.toml");

        var sheet = MakeSheet.Make(new SheetSnapshot(edition, "gokyu", new DateOnly(2026, 5, 2), null, [], SheetChild.Plain(new DateOnly(2018, 3, 1))));

        var asked = sheet.Lines.SelectMany(line => line.Items).Select(item => item.Item.Key).ToHashSet();
        Assert.All(edition.Items, item => Assert.Contains(item.Key, asked));
    }

    [Theory]
    [InlineData("mon-1", "national-mon-scheme.toml", "mon-1", null, "2020-02-01")]
    [InlineData("mon-1-older", "national-mon-scheme.toml", "mon-1", null, "2013-02-01")]
    [InlineData("mon-3", "national-mon-scheme.toml", "mon-3", null, "2017-02-01")]
    [InlineData("mon-6", "national-mon-scheme.toml", "mon-6", null, "2017-02-01")]
    [InlineData("mon-7", "national-mon-scheme.toml", "mon-7", null, "2016-02-01")]
    [InlineData("mon-8", "national-mon-scheme.toml", "mon-8", null, null)]
    [InlineData("kyu-11", "united-states-junior-kyu.toml", "kyu-11", null, "2020-02-01")]
    [InlineData("gokyu", "united-states-cumulative.toml", "gokyu", null, "2018-03-01")]
    [InlineData("willow-white-1", "ladder-willow.toml", "white-one-red-tip", null, "2018-03-01")]
    [InlineData("willow-yellow-hips", "ladder-willow.toml", "yellow", "hips", "2018-03-01")]
    [InlineData("willow-yellow-lifts", "ladder-willow.toml", "yellow", "lifts", "2018-03-01")]
    [InlineData("willow-half-belt", "ladder-willow.toml", "yellow-orange", "drops", "2017-03-01")]
    [InlineData("willow-green-young", "ladder-willow.toml", "green", "shoulders", "2017-03-01")]
    [InlineData("willow-green-older", "ladder-willow.toml", "green", "shoulders", "2014-03-01")]
    [InlineData("heron-white-2-young", "ladder-heron.toml", "white-2", null, "2019-03-01")]
    [InlineData("heron-white-2-older", "ladder-heron.toml", "white-2", null, "2014-03-01")]
    [InlineData("heron-yellow-2", "ladder-heron.toml", "yellow-2", "feet", "2015-03-01")]
    [InlineData("heron-orange-1-wall", "ladder-heron.toml", "orange-1", "feet", null)]
    public void A_sheet_is_as_it_was_read_by_eye(string golden, string file, string rank, string? unit, string? born)
    {
        var edition = StarterKit.Ladders.Contains(file) ? Starters.Edition(StarterKit.Ladder(file)) : Published(file);
        var child = born is null ? null : SheetChild.Plain(DateOnly.ParseExact(born, "yyyy-MM-dd", CultureInfo.InvariantCulture));

        var sheet = MakeSheet.Make(new SheetSnapshot(edition, rank, new DateOnly(2026, 5, 2), unit, [], child));

        Golden.Check($"{Folder}/Sheets/{golden}.txt", Words(edition, sheet, born));
    }

    private static Edition Published(string file) =>
        Starters.Edition(SyllabusText.Read(File.ReadAllText(Repository.PathOf($"{Folder}/Syllabi/{file}")), file));

    private static string Words(Edition edition, RequirementSheet sheet, string? born)
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"{edition.Ladder}: {sheet.RankName}, test on {sheet.TestOn:yyyy-MM-dd}");
        text.Append(born is null ? ", the copy on the wall\n" : $", born {born}\n");
        var m = sheet.Minima;
        text.Append(CultureInfo.InvariantCulture, $"least: {m.Lessons} lessons, {m.Weeks} weeks, {m.Months} months, age {m.Age?.ToString(CultureInfo.InvariantCulture) ?? "any"}\n");
        if (sheet.UnitName is { } unit) text.Append(CultureInfo.InvariantCulture, $"unit {sheet.UnitNumber}: {unit}\n");
        foreach (var part in sheet.Lines.GroupBy(line => line.Part))
        {
            text.Append(CultureInfo.InvariantCulture, $"\n{part.Key}\n");
            foreach (var line in part)
            {
                text.Append(line.Critical ? "  ! " : "  - ").Append(line.Title);
                if (line.Condition is { } condition) text.Append(CultureInfo.InvariantCulture, $" ({condition})");
                if (line.Ages is { } ages) text.Append(CultureInfo.InvariantCulture, $" [{ages}]");
                if (line.Carry != Carry.ThisRank) text.Append(CultureInfo.InvariantCulture, $" [{line.Carry}]");
                if (line.FromRank is { } from) text.Append(CultureInfo.InvariantCulture, $" [from {from}]");
                text.Append('\n');
                var names = string.Join("; ", line.Items.Select(item => item.Item.Name));
                if (names != line.Title) text.Append(CultureInfo.InvariantCulture, $"      {line.Count} of: {names}\n");
            }
        }

        foreach (var left in sheet.LeftOut) text.Append(CultureInfo.InvariantCulture, $"\nleft out: {left.Sentence}");
        return text.Append('\n').ToString();
    }
}
