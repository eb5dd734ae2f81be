using Keikocho.Core.Names;
using Keikocho.Store.Starter;
using Keikocho.Testing;

namespace Keikocho.Store.Tests.Starter;

public sealed class StarterNamesTests
{
    private const string Head = "listed,name,kana,kanji,class,subclass,meaning,spellings,counted as,source\n";
    private const string Right = "yes,Tai-otoshi,たいおとし,体落,nage-waza,te-waza,Body drop,,,read\n";

    // Counts of the list since 2017 (read: the Kodokan's own notice, and two lists that give the same).
    [Fact, Statement(56)]
    public void The_program_ships_100_listed_names_in_the_order_of_the_list()
    {
        var listed = StarterNames.All.Where(n => n.Listed).ToArray();
        Assert.Equal(100, listed.Length);
        Assert.Equal((68, 32), (listed.Count(n => n.Class == "nage-waza"), listed.Count(n => n.Class == "katame-waza")));
        Assert.Equal(
            [("te-waza", 16), ("koshi-waza", 10), ("ashi-waza", 21), ("ma-sutemi-waza", 5), ("yoko-sutemi-waza", 16), ("osaekomi-waza", 10), ("shime-waza", 12), ("kansetsu-waza", 10)],
            listed.GroupBy(n => n.Subclass).Select(g => (g.Key, g.Count())));
        Assert.Equal(("Seoi-nage", "Ashi-garami"), (listed[0].Known.Name, listed[^1].Known.Name));
        Assert.All(listed, n => Assert.True(n.Known.Kana is not null && n.Known.Kanji is not null && n.Known.Meaning is not null));
        Assert.All(StarterNames.All, n => Assert.Matches("^name (read|from memory)", n.Source));
    }

    [Fact]
    public void The_names_that_are_not_listed_say_what_they_are_counted_as()
    {
        var own = StarterNames.All.Where(n => !n.Listed).ToArray();
        Assert.Equal(["Daki-age"], own.Where(n => n.Known.CountedAs is null).Select(n => n.Known.Name));
        Assert.Equal("Koshi-guruma", own.Single(n => n.Known.Name == "Kubi-nage").Known.CountedAs);
    }

    [Fact, Statement(56)]
    public void Every_shipped_name_and_spelling_is_found_in_the_shipped_names()
    {
        var index = NameIndex.Of(StarterNames.Known);
        foreach (var name in StarterNames.Known.Where(n => n.Name != "Ko-uchi-gake"))
        {
            foreach (var spelling in name.Spellings.Append(name.Name).Concat(new[] { name.Kana, name.Kanji }.OfType<string>()))
                Assert.Equal(name.CountedAs ?? name.Name, Assert.IsType<NameOutcome.One>(index.Resolve(spelling), exactMatch: true).Name);
        }

        Assert.IsType<NameOutcome.Several>(index.Resolve("Ko-uchi-gake"));
    }

    [Fact]
    public void A_list_in_another_order_of_columns_is_read()
    {
        var names = StarterNames.Read(new StringReader("name,listed,kana,kanji,class,subclass,meaning,counted as,source,spellings\nTai-otoshi,yes,たいおとし,体落,nage-waza,te-waza,\"Body drop, a throw\",,read,Taiotoshi; Tai otoshi\n"), "own.csv");
        var name = Assert.Single(names);
        Assert.Equal(("Tai-otoshi", "Body drop, a throw", true), (name.Known.Name, name.Known.Meaning, name.Listed));
        Assert.Equal(["Taiotoshi", "Tai otoshi"], name.Known.Spellings);
    }

    [Theory]
    [InlineData("", "own.csv, line 1, column listed: the file is empty; write the line of columns.")]
    [InlineData("name\nx\n", "own.csv, line 1, column listed: the column must be there once; add it, or take the second out.")]
    [InlineData("listed,name,kana,kanji,class,subclass,meaning,spellings,counted as,source,belt\n", "own.csv, line 1, column belt: the format does not know this column; take it out or mend its spelling.")]
    [InlineData(Head + Right + "maybe,Uki-goshi,うきごし,浮腰,nage-waza,koshi-waza,,,,read\n", "own.csv, line 3, column listed: say yes or no.")]
    [InlineData(Head + "yes,,うきごし,浮腰,nage-waza,koshi-waza,,,,read\n", "own.csv, line 2, column name: the cell is empty; fill it.")]
    [InlineData(Head + "yes,Uki-goshi,ukigoshi,浮腰,nage-waza,koshi-waza,,,,read\n", "own.csv, line 2, column kana: ukigoshi holds something that is not kana; write hiragana or katakana.")]
    [InlineData(Head + "yes,Uki-goshi,,浮腰,nage-waza,koshi-waza,,,,read\n", "own.csv, line 2, column kana: a listed name needs its kana; write it.")]
    [InlineData(Head + Right + "yes,Uki-goshi,うきごし,浮腰,nage-waza,koshi-waza,,,Tai-otoshi,read\n", "own.csv, line 3, column counted as: a listed name is counted as itself; empty the cell.")]
    [InlineData(Head + Right + "no,Own,,,nage-waza,te-waza,,,Tani-otoshi,ours\n", "own.csv, line 3, column counted as: Tani-otoshi is not among the listed names; mend its spelling.")]
    [InlineData(Head + Right + Right, "own.csv, line 3, column name: Tai-otoshi is there twice; take one out.")]
    [InlineData(Head + "yes,Uki-goshi,うきごし,浮腰,nage-waza,,,,,read\n", "own.csv, line 2, column subclass: the cell is empty; fill it.")]
    [InlineData(Head + "yes,Uki-goshi,うきごし,浮腰,nage-waza,koshi-waza,,,,\n", "own.csv, line 2, column source: the cell is empty; fill it.")]
    [InlineData(Head + "yes,Uki-goshi\n", "own.csv, line 2: the line has a stray quotation mark, or more or fewer cells than there are columns; mend it.")]
    public void A_fault_is_said_with_file_line_and_column_and_nothing_is_read(string text, string sentence) =>
        Assert.Equal(sentence, Assert.Throws<InvalidDataException>(() => StarterNames.Read(new StringReader(text), "own.csv")).Message);

    [Fact]
    public void A_file_that_the_library_lacks_is_said()
    {
        Assert.Contains("names.csv", StarterFile.All);
        Assert.StartsWith("The starter library has no file none.csv", Assert.Throws<ArgumentException>(() => StarterFile.Open("none.csv")).Message, StringComparison.Ordinal);
    }

    // What travels in the program is what lies in the source tree.
    [Fact]
    public void The_shipped_list_is_the_file_of_the_source_tree()
    {
        using var shipped = StarterFile.Open("names.csv");
        Assert.Equal(File.ReadAllText(Repository.PathOf("starter/names.csv")), shipped.ReadToEnd());
    }
}
