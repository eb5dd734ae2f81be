using System.Text.RegularExpressions;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Starter;
using Keikocho.Testing;

namespace Keikocho.Store.Tests.Starter;

/// <summary>The pages about the formats: their examples are read, and no field is left out.</summary>
public partial class FormatPageTests
{
    private static readonly string Page = File.ReadAllText(Repository.PathOf("docs/formats/syllabus.md")).ReplaceLineEndings("\n");

    private static readonly string Kit = File.ReadAllText(Repository.PathOf("docs/formats/starter.md")).ReplaceLineEndings("\n");

    [Fact]
    public void The_blocks_of_the_page_make_a_syllabus_of_every_shape()
    {
        var reading = SyllabusText.Read(Blocks(Page, "toml"), "syllabus.md");
        var edition = Starters.Edition(reading);

        Assert.Equal([], Assert.IsType<SyllabusReading.Read>(reading).Cautions.Select(caution => $"{caution.Path} {caution.Sentence}"));
        var asks = edition.Ranks.SelectMany(rank => rank.Requirements).ToList();
        Assert.Equal(typeof(Ask).GetNestedTypes().Length, asks.Select(asked => asked.Ask.GetType()).Distinct().Count());
        Assert.Equal(Enum.GetValues<Carry>().Length, asks.Select(asked => asked.Carry).Distinct().Count());
        Assert.Equal(typeof(Order).GetNestedTypes().Length, edition.Items.Select(item => item.Order?.GetType()).OfType<Type>().Distinct().Count());
    }

    [Fact]
    public void Every_field_and_every_kind_is_on_the_page()
    {
        const string strange = """
            ladder = "a"
            edition = "b"
            x = 1
            [[rank]]
            name = "a"
            x = 1
            [[rank.asks]]
            key = "a"
            all = []
            x = 1
            [[unit]]
            name = "a"
            x = 1
            [[item]]
            name = "a"
            kind = "throw"
            x = 1
            [[technique]]
            name = "a"
            x = 1
            """;
        var faults = Assert.IsType<SyllabusReading.Faulty>(SyllabusText.Read(strange, "a")).Faults;

        Assert.Equal(6, faults.Count);
        var fields = faults.SelectMany(fault => fault.Sentence.Split("there are ")[1].Split(')')[0].Split(", ")).ToList();
        Assert.All(fields, field => Assert.Matches($@"[`\[\n {{]{Regex.Escape(field)}( =|`|\]\])", Page));
        foreach (var kind in SyllabusWords.Kinds.All.Replace("\"", "`", StringComparison.Ordinal).Split(", ")) Assert.Contains(kind, Page, StringComparison.Ordinal);
    }

    [Fact]
    public void The_examples_of_the_kit_are_read()
    {
        Assert.Single(Starters.Value(TechniqueText.Read(Blocks(Kit, "toml techniques"), "a")));
        Assert.Equal(2, Starters.Value(QuestionBank.Read(Blocks(Kit, "toml questions"), "a")).Count);
        Assert.Single(Starters.Value(GamesText.Read(Blocks(Kit, "toml games"), "a")));
        Assert.Single(Starters.Value(PhrasesText.Read(Blocks(Kit, "toml phrases"), "a")));
        Assert.Equal(10, Starters.Value(LessonText.Read(Blocks(Kit, "toml lesson"), "a")).Minutes);
        Assert.Contains(StarterKit.Text("vocabulary.csv").ReplaceLineEndings("\n").Split('\n')[0], Kit, StringComparison.Ordinal);
    }

    private static string Blocks(string page, string mark) =>
        string.Join('\n', Fence().Matches(page).Where(fence => fence.Groups[1].Value == mark).Select(fence => fence.Groups[2].Value));

    [GeneratedRegex("^```([a-z ]+)\n(.*?)^```$", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex Fence();
}
