using System.Text.RegularExpressions;
using Keikocho.Core.Names;
using Keikocho.Testing;
using static Keikocho.Core.Tests.Names.NameLists;

namespace Keikocho.Core.Tests.Names;

public sealed partial class NameIndexTests
{
    [Fact]
    public void The_list_has_100_names_68_throws_and_32_grips()
    {
        Assert.Equal(100, Listed.Count);
        var counts = Shipped.Where(r => r["listed"] == "yes").GroupBy(r => r["subclass"]).Select(g => (g.Key, g.Count()));
        Assert.Equal(
            [("te-waza", 16), ("koshi-waza", 10), ("ashi-waza", 21), ("ma-sutemi-waza", 5), ("yoko-sutemi-waza", 16), ("osaekomi-waza", 10), ("shime-waza", 12), ("kansetsu-waza", 10)],
            counts);
    }

    [Fact, Statement(56)]
    public void Every_name_is_found_as_it_is_listed_in_kana_and_in_kanji()
    {
        foreach (var name in Techniques.Where(n => Listed.Contains(n.Name)))
        {
            Assert.Equal(new NameOutcome.One(name.Name, "as it is listed"), Known.Resolve(name.Name));
            Assert.Equal(new NameOutcome.One(name.Name, "as it is listed"), Known.Resolve($" {name.Name.ToUpperInvariant()} "));
            Assert.Equal(new NameOutcome.One(name.Name, "written in kana"), Known.Resolve(name.Kana!));
            Assert.Equal(new NameOutcome.One(name.Name, "written in kanji"), Known.Resolve(name.Kanji!));
            Assert.Same(name, Known.Find(name.Name));
        }
    }

    [Fact, Statement(56)]
    public void Every_spelling_of_the_table_of_variants_is_found()
    {
        foreach (var row in Variants)
        {
            var seen = row["variants_seen"].Split(';').Select(v => Remark().Replace(v, "").Trim()).Where(v => v.Length > 0);
            foreach (var spelling in seen.Concat([row["hepburn_macron"], row["kunrei_iso3602"], row["joined"], row["joined"].ToLowerInvariant()]))
            {
                var one = Assert.IsType<NameOutcome.One>(Known.Resolve(spelling), exactMatch: true);
                Assert.True(row["romaji"] == one.Name, $"{spelling} is {one.Name}, not {row["romaji"]}");
            }
        }
    }

    [Theory, Statement(56)]
    [InlineData("osotogari", "O-soto-gari", "written without hyphens")]
    [InlineData("O soto gari", "O-soto-gari", "written without hyphens")]
    [InlineData("Osoto-gari", "O-soto-gari", "written with fewer hyphens")]
    [InlineData("Uki-go-shi", "Uki-goshi", "with the hyphens elsewhere")]
    [InlineData("Kami-shihogatame", "Kami-shiho-gatame", "written with fewer hyphens")]
    [InlineData("Ōsoto-gari", "O-soto-gari", "with marks on long vowels")]
    [InlineData("Ôsotogari", "O-soto-gari", "with marks on long vowels")]
    [InlineData("oosotogari", "O-soto-gari", "with long vowels written out")]
    [InlineData("Oh-soto-gari", "O-soto-gari", "with long vowels written out")]
    [InlineData("Kami-shihou-gatame", "Kami-shiho-gatame", "with long vowels written out")]
    [InlineData("Nami-juuji-jime", "Nami-juji-jime", "with long vowels written out")]
    [InlineData("turi-komi-gosi", "Tsurikomi-goshi", "with other letters for the same sounds")]
    [InlineData("Nami-zyûzi-zime", "Nami-juji-jime", "with other letters for the same sounds")]
    [InlineData("Kawadzu-gake", "Kawazu-gake", "with other letters for the same sounds")]
    [InlineData("kouchigari", "Ko-uchi-gari", "written without hyphens")]
    [InlineData("ouchigari", "O-uchi-gari", "written without hyphens")]
    [InlineData("oouchigari", "O-uchi-gari", "with long vowels written out")]
    [InlineData("Koshi-kuruma", "Koshi-guruma", "with a joint voiced the other way")]
    [InlineData("Okuri ashi barai", "Okuri-ashi-harai", "a spelling that is known for it")]
    [InlineData("Okuriashibarai", "Okuri-ashi-harai", "a spelling that is known for it")]
    [InlineData("Kesakatame", "Kesa-gatame", "a spelling that is known for it")]
    [InlineData("kata katame", "Kata-gatame", "with a joint voiced the other way")]
    [InlineData("Hadaka shime", "Hadaka-jime", "with a joint voiced the other way")]
    [InlineData("Kani-hasami", "Kani-basami", "with a joint voiced the other way")]
    [InlineData("オオソトガリ", "O-soto-gari", "written in kana")]
    [InlineData("おくりあしばらい", "Okuri-ashi-harai", "written in kana, a spelling that is known for it")]
    [InlineData("こしくるま", "Koshi-guruma", "written in kana, with a joint voiced the other way")]
    [InlineData("背負い投げ", "Seoi-nage", "written in kanji with other kana")]
    [InlineData("腕ひしぎ十字固め", "Ude-hishigi-juji-gatame", "written in kanji with other kana")]
    [InlineData("内股すかし", "Uchi-mata-sukashi", "written in kanji")]
    [InlineData("body drop", "Tai-otoshi", "by its meaning")]
    [InlineData("One-arm shoulder throw", "Ippon-seoi-nage", "by its meaning")]
    [InlineData("ＳＥＯＩＮＡＧＥ", "Seoi-nage", "with other letters for the same sounds")]
    public void A_spelling_is_one_name_and_says_how_it_was_found(string written, string name, string how) =>
        Assert.Equal(new NameOutcome.One(name, how), Known.Resolve(written));

    [Theory]
    [InlineData("Morote-seoi-nage", "Seoi-nage")]
    [InlineData("morote seoinage", "Seoi-nage")]
    [InlineData("Eri-seoi-nage", "Seoi-nage")]
    [InlineData("Kubi-nage", "Koshi-guruma")]
    [InlineData("Mune-gatame", "Yoko-shiho-gatame")]
    [InlineData("Munegatame", "Yoko-shiho-gatame")]
    [InlineData("Gyaku-kesa-gatame", "Ushiro-kesa-gatame")]
    [InlineData("Jūji-gatame", "Ude-hishigi-juji-gatame")]
    [InlineData("Juji-katame", "Ude-hishigi-juji-gatame")]
    [InlineData("Hon-kesa-gatame", "Kesa-gatame")]
    [InlineData("Drop seoi-nage", "Seoi-otoshi")]
    public void A_name_that_is_not_listed_is_what_it_is_counted_as_and_says_so(string written, string name)
    {
        var one = Assert.IsType<NameOutcome.One>(Known.Resolve(written), exactMatch: true);
        Assert.Equal(name, one.Name);
        Assert.EndsWith($"{one.CountedFrom} is counted as {name}", one.How, StringComparison.Ordinal);
    }

    // Slips seen in printed syllabi (read).
    [Theory]
    [InlineData("Hiza-garuma", "Hiza-guruma")]
    [InlineData("Kata-garuma", "Kata-guruma")]
    [InlineData("Morote-geri", "Morote-gari")]
    [InlineData("Hikkomi-gaeshi", "Hikikomi-gaeshi")]
    [InlineData("ippon-seio-nage", "Ippon-seoi-nage")]
    public void Slips_of_printed_syllabi_are_known(string written, string name) =>
        Assert.Equal(name, Assert.IsType<NameOutcome.One>(Known.Resolve(written), exactMatch: true).Name);

    [Theory]
    [InlineData("Koshi-garuma", "Koshi-guruma", "one letter from it, and no other name is as near")]
    [InlineData("Tomeo-nage", "Tomoe-nage", "one letter from it, and no other name is as near")]
    [InlineData("Sasae-tsurikomi-asih", "Sasae-tsurikomi-ashi", "one letter from it, and no other name is as near")]
    [InlineData("Tsubami-gaishi", "Tsubame-gaeshi", "two letters from it, and no other name is as near")]
    [InlineData("kōchi-gari", "Ko-uchi-gari", "one letter from it, and no other name is as near")]
    public void A_slip_is_forgiven_where_no_other_name_is_near(string written, string name, string how) =>
        Assert.Equal(new NameOutcome.One(name, how), Known.Resolve(written));

    [Theory]
    [InlineData("Ritzurei", "ritsurei")]
    [InlineData("Renwaku-waza", "renraku-waza")]
    [InlineData("Wazari", "waza-ari")]
    [InlineData("sempai", "senpai")]
    [InlineData("shimban", "shinpan")]
    [InlineData("zempo kaiten ukemi", "zenpo-kaiten-ukemi")]
    [InlineData("seiryoku zen'yō", "seiryoku-zenyo")]
    [InlineData("ki wo tsuke", "kiotsuke")]
    [InlineData("まて", "matte")]
    [InlineData("mate", "matte")]
    [InlineData("kohoukemi", "koho-ukemi")]
    [InlineData("juudou", "judo")]
    public void Words_of_the_dojo_are_found_too(string written, string word) =>
        Assert.Equal(word, Assert.IsType<NameOutcome.One>(WordIndex.Resolve(written), exactMatch: true).Name);

    [Fact]
    public void Words_of_one_sound_are_several_with_what_tells_them_apart()
    {
        Assert.Equal(
            [new Candidate("kata", "prearranged form, 形, training"), new Candidate("kata", "shoulder, 肩, body")],
            Assert.IsType<NameOutcome.Several>(WordIndex.Resolve("kata")).Names);
        Assert.Equal(
            [new Candidate("ju", "gentleness; suppleness, 柔, principle"), new Candidate("ju", "ten, 十, number")],
            Assert.IsType<NameOutcome.Several>(WordIndex.Resolve("jū")).Names);
        Assert.Equal("kata", Assert.IsType<NameOutcome.One>(WordIndex.Resolve("肩")).Name);
        Assert.Null(WordIndex.Find("kata"));
    }

    [Theory]
    [InlineData("Ko-uchi-gake", "Ko-uchi-gari", "Ko-uchi-makikomi")]
    [InlineData("Tan-otoshi", "Tai-otoshi", "Tani-otoshi")]
    [InlineData("Tain-otoshi", "Tai-otoshi", "Tani-otoshi")]
    [InlineData("Kata-jime")]
    [InlineData("Uka-gatame", "Uki-gatame", "Ura-gatame")]
    [InlineData("Keta-gatame", "Kesa-gatame", "Kata-gatame")]
    [InlineData("Ko-soto-gare", "Ko-soto-gari", "Ko-soto-gake")]
    [InlineData("Ude-hishigi-hira-gatame", "Ude-hishigi-hiza-gatame", "Ude-hishigi-hara-gatame")]
    public void Where_two_names_are_near_nobody_guesses(string written, params string[] among)
    {
        var outcome = Known.Resolve(written);
        Assert.IsNotType<NameOutcome.One>(outcome);
        Assert.All(among, name => Assert.Contains(name, ((NameOutcome.Several)outcome).Names.Select(c => c.Name)));
    }

    // Names that nobody has listed, but which are made of real words: none of them is a slip for its neighbour.
    [Theory]
    [InlineData("Ko-soto-otoshi")]
    [InlineData("Kosoto-ottoshi")]
    [InlineData("Ko-soto-guruma")]
    [InlineData("Ko-goshi")]
    [InlineData("Morote-gake")]
    [InlineData("Ura-goshi")]
    [InlineData("Sumi-nage")]
    [InlineData("Kosoto-makikomi")]
    [InlineData("Hane-guruma")]
    [InlineData("Uki-guruma")]
    public void A_name_made_of_real_words_is_no_slip(string written) => Assert.IsNotType<NameOutcome.One>(Known.Resolve(written));

    [Fact]
    public void The_beginning_of_names_is_a_question_and_no_answer()
    {
        Assert.Equal(
            ["O-soto-gari", "O-soto-guruma", "O-soto-otoshi", "O-soto-gaeshi", "O-soto-makikomi", "O-soto-gari"],
            Assert.IsType<NameOutcome.Several>(Known.Resolve("osoto")).Names.Select(c => c.Name));
        Assert.Equal(["Tsubame-gaeshi"], Assert.IsType<NameOutcome.Several>(Known.Resolve("Tsubame")).Names.Select(c => c.Name));
    }

    [Theory]
    [InlineData("")]
    [InlineData("   ")]
    [InlineData("-")]
    [InlineData("?!")]
    [InlineData("karate")]
    [InlineData("空手")]
    [InlineData("からて")]
    [InlineData("内股けんけん")]
    [InlineData("Mae-geri")]
    public void What_is_no_name_is_none(string written) => Assert.IsType<NameOutcome.None>(Known.Resolve(written));

    [Fact]
    public void A_very_long_text_is_none() => Assert.IsType<NameOutcome.None>(Known.Resolve(new string('o', 100_000)));

    [Fact]
    public void Two_names_that_nothing_tells_apart_are_refused()
    {
        var name = Techniques[0];
        Assert.StartsWith("Seoi-nage is among the names twice", Assert.Throws<ArgumentException>(() => NameIndex.Of([name, name with { Spellings = [] }])).Message, StringComparison.Ordinal);
        Assert.StartsWith("Own is counted as Nothing, which is not among the listed names", Assert.Throws<ArgumentException>(() => NameIndex.Of([new("Own", null, null, null, null, [], "Nothing")])).Message, StringComparison.Ordinal);
    }

    [GeneratedRegex(@"\(.*?\)")]
    private static partial Regex Remark();
}
