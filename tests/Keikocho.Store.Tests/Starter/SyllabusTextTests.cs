using CsCheck;
using Keikocho.Core.Kernel;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Starter;

namespace Keikocho.Store.Tests.Starter;

public class SyllabusTextTests
{
    private const string Small = """
        ladder = "Sample"
        edition = "draft"
        first-course = ["back-fall"]

        [[rank]]
        name = "White"
        belt = "white"

        [[rank]]
        name = "White, one red tip"
        belt = "white"
        tips = 1
        lessons = 14

        [[rank.asks]]
        key = "falls"
        all = ["back-fall"]
        critical = true
        carry = "always"

        [[rank.asks]]
        key = "either-throw"
        any = 1
        of = ["uki-goshi", "hiza-guruma"]

        [[item]]
        key = "back-fall"
        kind = "fall"
        name = "Falling backward"
        fall = { direction = "back", stage = 3 }

        [[item]]
        kind = "throw"
        name = "Uki-goshi"

        [[item]]
        kind = "throw"
        name = "Hiza-guruma"
        """;

    [Fact]
    public void What_is_written_is_read_again_the_same() =>
        Editions.Any.Sample(
            edition =>
            {
                var text = SyllabusText.Write(edition);
                var read = Read(text) as SyllabusReading.Read;
                Assert.True(read is not null, $"{Read(text)}\n{text}");
                Assert.Equal(SumJson.Write(edition), SumJson.Write(read.Edition));
            },
            iter: 2000);

    [Fact]
    public void A_small_syllabus_is_read()
    {
        var edition = Assert.IsType<SyllabusReading.Read>(Read(Small)).Edition;

        Assert.Equal(["white", "white-one-red-tip"], edition.Ranks.Select(rank => rank.Key));
        Assert.Equal(14, edition.Ranks[1].Minima.Lessons);
        Assert.Equal(["uki-goshi", "hiza-guruma"], Assert.IsType<Ask.AnyOf>(edition.Ranks[1].Requirements[1].Ask).Items);
        Assert.Equal(Carry.Always, edition.Ranks[1].Requirements[0].Carry);
        Assert.Null(edition.From);
    }

    [Theory]
    [InlineData("tips = 1", "tips = -1", 12, "rank.tips", "This takes a whole number from 0 to 4; write it so.")]
    [InlineData("tips = 1", "tips = \"one\"", 12, "rank.tips", "This takes a whole number from 0 to 4; write it so.")]
    [InlineData("any = 1", "any = 1.5", 23, "rank.asks.any", "This takes a whole number from 0 to 1000000; write it so.")]
    [InlineData("any = 1", "some = 1", 21, "rank.asks", "It does not say what is asked; write one of all, any, pool, share, draw, the-other.")]
    [InlineData("any = 1", "any = 1\nall = [\"uki-goshi\"]", 23, "rank.asks.any", "One block asks one thing, and this one has all and any; make a block of each.")]
    [InlineData("belt = \"white\"\ntips", "bely = \"white\"\ntips", 11, "rank.bely", "There is no such field; take it out or mend its spelling (there are ")]
    [InlineData("carry = \"always\"", "carry = \"forever\"", 19, "rank.asks.carry", "\"forever\" is none of its words; write one of \"this rank\", \"this term\", \"always\", \"once asked stays\".")]
    [InlineData("ladder = \"Sample\"", "", 1, "ladder", "This is missing; write it.")]
    [InlineData("critical = true", "critical = true\ncritical = true", 19, "", "This is not TOML (")]
    [InlineData("stage = 3", "stage = 7", 30, "item.fall.stage", "This takes a whole number from 1 to 6; write it so.")]
    [InlineData("[[item]]\nkind = \"throw\"\nname = \"Hiza-guruma\"", "[[item]]\nname = \"Hiza-guruma\"", 36, "item.kind", "This is missing; write one of ")]
    [InlineData("[\"back-fall\"]\n\n", "[\"back-fall\", 3]\n\n", 3, "first-course", "This takes texts in brackets, each in double quotes; write it so.")]
    public void What_is_wrong_is_named_with_line_and_field(string right, string wrong, int line, string field, string sentence)
    {
        var text = Small.Replace(right, wrong, StringComparison.Ordinal);
        Assert.NotEqual(Small, text);

        var fault = Assert.IsType<SyllabusReading.Faulty>(Read(text)).Faults[0];

        Assert.Equal((line, field), (fault.Line, fault.Field));
        Assert.StartsWith(sentence, fault.Sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("ranks[1].requirements[1].ask.items[1]", 24, "rank.asks.of")]
    [InlineData("ranks[1].requirements[1].ask.count", 23, "rank.asks.any")]
    [InlineData("ranks[1].requirements[0]", 15, "rank.asks")]
    [InlineData("ranks[1].minima.lessons", 13, "rank.lessons")]
    [InlineData("ranks[0].minima.lessons", 5, "rank")]
    [InlineData("items[0].fall.stage", 30, "item.fall.stage")]
    [InlineData("firstCourse[0]", 3, "first-course")]
    [InlineData("units", 1, "")]
    public void A_fault_of_the_edition_is_said_with_its_line(string path, int line, string field)
    {
        var reading = SyllabusText.Read(Small, "club.toml", _ => [new EditionFault(path, "It does not fit.", true), new EditionFault(path, "Look.", false)]);

        Assert.Equal([new TextFault("club.toml", line, field, "It does not fit.")], Assert.IsType<SyllabusReading.Faulty>(reading).Faults);
    }

    [Fact]
    public void A_caution_stops_nothing()
    {
        var reading = SyllabusText.Read(Small, "club.toml", _ => [new EditionFault("ranks[0]", "Look.", false)]);

        Assert.Equal(["Look."], Assert.IsType<SyllabusReading.Read>(reading).Cautions.Select(caution => caution.Sentence));
    }

    [Fact]
    public void A_fault_reads_as_one_line() =>
        Assert.Equal("club.toml, line 14, rank.asks.any: Mend it.", new TextFault("club.toml", 14, "rank.asks.any", "Mend it.").ToString());

    [Theory]
    [InlineData("")]
    [InlineData("ladder")]
    [InlineData("[[rank]\nname = 1")]
    [InlineData("rank = 3\n[[rank]]\n")]
    [InlineData("[rank]\nname = \"White\"")]
    [InlineData("rank = [[1], [2]]\nitem = [3]\nunit = { a = 1 }")]
    [InlineData("a.b = 1\na.b.c = 2")]
    [InlineData("from = 2026-13-45")]
    [InlineData("rank = 99999999999999999999999")]
    public void Whatever_is_in_a_file_it_is_read_or_refused(string text) => Assert.IsType<SyllabusReading.Faulty>(Read(text));

    [Fact]
    public void A_file_of_nothing_but_brackets_is_refused() => Assert.IsType<SyllabusReading.Faulty>(Read($"a = {new string('[', 200_000)}"));

    [Fact]
    public void A_file_cut_or_changed_anywhere_is_read_or_refused() =>
        Gen.Select(Gen.Int[0, Small.Length - 1], Gen.OneOf("", "\"", "[", "]", "{", "}", "=", "\n", "x", "1", ".", ",", "\\", "\0", "礼", "#")).Sample(
            (at, put) =>
            {
                Assert.NotNull(Read(Small[..at]));
                Assert.NotNull(Read(string.Concat(Small.AsSpan(0, at), put, Small.AsSpan(at + 1))));
                Assert.NotNull(Read(string.Concat(Small.AsSpan(0, at), put, Small.AsSpan(at))));
            },
            iter: 2000);

    private static SyllabusReading Read(string text) => SyllabusText.Read(text, "club.toml", _ => []);
}
