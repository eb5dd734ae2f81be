using Keikocho.Core.Names;

namespace Keikocho.Core.Tests.Names;

public sealed class RomaniseTests
{
    // Published cases of a map for Hepburn of 1954 (read).
    [Theory]
    [InlineData("かんおう", "kan'ō")]
    [InlineData("かのう", "kanō")]
    [InlineData("きんゆう", "kin'yū")]
    [InlineData("とうきょう", "tōkyō")]
    [InlineData("がっこう", "gakkō")]
    [InlineData("かごっま", "kagomma")]
    [InlineData("てっら", "terra")]
    public void Published_cases_of_modified_Hepburn(string kana, string romaji) =>
        Assert.Equal(romaji, Romanise.Of(kana, RomajiSystem.ModifiedHepburn));

    // The table of the systems (read), one line for each point on which they part.
    [Theory]
    [InlineData("しちつふじ", "shichitsufuji", "shichitsufuji", "sitituhuzi", "shichitsufuji")]
    [InlineData("しゃちゃじゃ", "shachaja", "shachaja", "syatyazya", "shachaja")]
    [InlineData("ぢづ", "jizu", "jizu", "zizu", "jizu")]
    [InlineData("ぜんぽう", "zempō", "zenpō", "zenpô", "zenpo")]
    [InlineData("ぜんよう", "zen-yō", "zen'yō", "zen'yô", "zenyo")]
    [InlineData("まっちゃ", "matcha", "matcha", "mattya", "matcha")]
    [InlineData("せいりょく", "seiryoku", "seiryoku", "seiryoku", "seiryoku")]
    [InlineData("きをつけ", "kiotsuke", "kiotsuke", "kiotuke", "kiotsuke")]
    [InlineData("ズボン", "zubon", "zubon", "zubon", "zubon")]
    [InlineData("ジュードー", "jūdō", "jūdō", "zyûdô", "judo")]
    public void The_systems_part_where_the_table_says(string kana, string traditional, string modified, string kunrei, string plain) =>
        Assert.Equal(
            (traditional, modified, kunrei, plain),
            (Romanise.Of(kana, RomajiSystem.TraditionalHepburn), Romanise.Of(kana, RomajiSystem.ModifiedHepburn),
                Romanise.Of(kana, RomajiSystem.Kunrei), Romanise.Of(kana, RomajiSystem.Plain)));

    [Fact]
    public void A_long_vowel_is_drawn_together_inside_an_element_only()
    {
        Assert.Equal("ko-uchi-gari", Romanise.Of("こ-うち-がり", RomajiSystem.ModifiedHepburn));
        Assert.Equal("ō-uchi-gari", Romanise.Of("おお-うち-がり", RomajiSystem.ModifiedHepburn));
        Assert.Equal("kōchigari", Romanise.Of("こうちがり", RomajiSystem.ModifiedHepburn));
    }

    // The columns of the table of variants (derived from the kana by another hand).
    [Fact]
    public void All_100_names_have_the_macrons_and_the_Kunrei_spelling_of_the_table()
    {
        foreach (var row in NameLists.Variants)
        {
            var name = NameLists.Techniques.Single(n => n.Name == row["romaji"]);
            Assert.Equal(row["hepburn_macron"], NameShown.Of(name, macrons: true));
            Assert.Equal(row["romaji"], NameShown.Of(name, macrons: false));
            var kunrei = Romanise.Of(string.Join('-', KanaElements.Split(name.Name, name.Kana!)!), RomajiSystem.Kunrei);
            Assert.Equal(row["kunrei_iso3602"].ToLowerInvariant(), kunrei);
        }
    }

    // Outside check: the npm package wanakana 5.3.1, asked by Data/make-wanakana.mjs. It writes を as wo where it is a particle in judo's words.
    [Fact]
    public void Another_program_writes_every_kana_the_same()
    {
        Assert.True(NameLists.Wanakana.Count > 250);
        foreach (var row in NameLists.Wanakana)
            Assert.Equal(row.Values.Last().Replace("wo", "o", StringComparison.Ordinal), Romanise.Of(row["kana"], RomajiSystem.Letters));
    }

    // Documented exceptions: matte is まて, and the word parts o- and ko- carry their hyphen.
    [Fact]
    public void Every_word_reads_as_its_kana_but_for_matte()
    {
        var other = NameLists.Words.Where(r => KanaElements.Split(r["romaji"], r["kana"]) is null).Select(r => r["romaji"]);
        Assert.Equal(["matte"], other);
    }

    [Fact]
    public void What_is_not_kana_stays_as_it_is() => Assert.Equal("judo 柔道".Replace(' ', '-'), Romanise.Of("judo 柔道", RomajiSystem.Plain));
}
