using CsCheck;
using Keikocho.Core.Kernel;
using Keikocho.Core.Names;
using Keikocho.Testing;
using static Keikocho.Core.Tests.Names.NameLists;

namespace Keikocho.Core.Tests.Names;

public sealed class ResolveNamesTests
{
    private static readonly NamesSnapshot Mixed = new(
        ["osotogari", "Ōuchi-gari", "De-ashi-barai", "Mune-gatame", "kata", "Tan-otoshi", "karate", "背負い投げ", "Koshi-garuma"], [.. Techniques, .. Vocabulary]);

    [Fact, Statement(56)]
    public void Spellings_are_answered_in_their_order_with_reasons_in_words()
    {
        var answer = ResolveNames.Resolve(Mixed);
        Assert.Equal(Mixed.Written, answer.Resolved.Select(r => r.Written));
        Assert.Equal((6, 2, 1), (answer.One, answer.Several, answer.None));
        Assert.Equal(
            [
                "\"osotogari\" is O-soto-gari: written without hyphens.",
                "\"Ōuchi-gari\" is O-uchi-gari: with marks on long vowels.",
                "\"De-ashi-barai\" is De-ashi-harai: a spelling that is known for it.",
                "\"Mune-gatame\" is Yoko-shiho-gatame: Mune-gatame is counted as Yoko-shiho-gatame.",
                "\"kata\" may be kata (prearranged form, 形, training) or kata (shoulder, 肩, body): somebody must choose.",
                "\"Tan-otoshi\" may be Tai-otoshi (Body drop, 体落, te-waza) or Tani-otoshi (Valley drop, 谷落, yoko-sutemi-waza): somebody must choose.",
                "\"karate\" is no name that is known.",
                "\"背負い投げ\" is Seoi-nage: written in kanji with other kana.",
                "\"Koshi-garuma\" is Koshi-guruma: one letter from it, and no other name is as near.",
                "9 spellings against 333 known names: 6 one name, 2 one of a few, 1 no name.",
            ],
            answer.Reasons.Select(r => r.Sentence));
        Assert.Empty(NamesCheck.Objections(Mixed, answer));
        Assert.Equal([new SettingUsed("names.macrons", "no", "", Setting.Ours)], answer.Settings);
    }

    [Fact]
    public void With_macrons_the_name_is_shown_as_its_kana_says()
    {
        var answer = ResolveNames.Resolve(new NamesSnapshot(["osotogari", "kata gatame", "xyz"], Techniques, new NamesRule(Macrons: true)));
        Assert.Equal(["Ō-soto-gari", "Kata-gatame", null], answer.Resolved.Select(r => r.Shown));
        Assert.Equal("O-soto-gari", ((NameOutcome.One)answer.Resolved[0].Outcome).Name);
    }

    [Fact]
    public void A_spelling_of_the_clubs_own_is_never_marked() =>
        Assert.Equal("Osotogari", NameShown.Of(Techniques.Single(n => n.Name == "O-soto-gari") with { Name = "Osotogari", Kana = "おおそとかり" }, macrons: true));

    [Fact]
    public void A_club_may_spell_the_list_in_its_own_way()
    {
        var club = Techniques.Select(n => n.Name == "De-ashi-harai" ? n with { Name = "De-ashi-barai" } : n).ToArray();
        Assert.Equal("De-ashi-barai", Assert.IsType<NameOutcome.One>(NameIndex.Of(club).Resolve("deashiharai"), exactMatch: true).Name);
    }

    [Fact]
    public void A_question_without_names_or_with_gaps_is_refused()
    {
        Assert.StartsWith("The question gives no names to look among", Assert.Throws<ArgumentException>(() => ResolveNames.Resolve(new(["x"]))).Message, StringComparison.Ordinal);
        Assert.StartsWith("Number 2 of the written spellings is empty", Assert.Throws<ArgumentException>(() => ResolveNames.Resolve(new(["x", null!], Techniques))).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_sign_that_slipped_in_beside_a_kanji_is_no_letter() =>
        Assert.Equal("waza", Assert.IsType<NameOutcome.One>(ResolveNames.Resolve(["技'"], NameIndex.Of([.. Techniques, .. Vocabulary]), new NamesRule()).Resolved[0].Outcome).Name);

    private static readonly Gen<string> AnyText = Gen.OneOf(
        Pick.From<string>([.. Techniques.Concat(Vocabulary).SelectMany(n => n.Spellings.Append(n.Name).Append(n.Kana ?? "").Append(n.Kanji ?? "").Append(n.Meaning ?? ""))]),
        Gen.String[Pick.From<char>([.. "aiueokstnhmyrwgzdbpjfc- 'ōûかんっょう足技"]), 0, 14],
        Gen.Select(Pick.From(Listed), Gen.Int[0, 20], Gen.Char['a', 'z']).Select((n, at, c) => n.Insert(at % n.Length, c.ToString())),
        Gen.Select(Pick.From(Listed), Gen.Int[0, 20]).Select((n, at) => n.Remove(at % n.Length, 1)));

    [Fact]
    public void Every_answer_stands_before_the_check()
    {
        var names = Techniques.Concat(Vocabulary).ToArray();
        var index = NameIndex.Of(names);
        AnyText.Array[1, 4].Sample(
            written => NamesCheck.Objections(new(written, names), ResolveNames.Resolve(written, index, new NamesRule())).Count == 0,
            iter: 400, print: written => string.Join('\n', NamesCheck.Objections(new(written, names), ResolveNames.Resolve(written, index, new NamesRule()))));
    }

    [Fact]
    public void A_wrong_answer_is_objected_to()
    {
        var right = ResolveNames.Resolve(Mixed);
        NamesAnswer With(int at, NameOutcome outcome) =>
            right with { Resolved = [.. right.Resolved.Select((r, i) => i == at ? r with { Outcome = outcome } : r)] };
        NamesAnswer[] wrong =
        [
            right with { Resolved = [.. right.Resolved.Reverse()] },
            right with { One = right.One + 1 },
            right with { Reasons = [] },
            With(0, new NameOutcome.One("Ko-soto-gari", "so")),
            With(0, new NameOutcome.None()),
            With(1, new NameOutcome.One("Nothing", "so")),
            With(3, new NameOutcome.One("Mune-gatame", "so")),
            With(4, new NameOutcome.One("kata", "so")),
            With(4, new NameOutcome.Several([])),
            With(8, new NameOutcome.One("Ashi-guruma", "so")),
            With(8, new NameOutcome.One("Koshi-guruma", "")),
        ];
        Assert.All(wrong, w => Assert.NotEmpty(NamesCheck.Objections(Mixed, w)));
    }

    [Fact]
    public void The_same_spelling_has_the_same_answer_whatever_stands_beside_it() =>
        AnyText.Array[1, 6].Sample(written =>
            ResolveNames.Resolve(written, Known, new NamesRule()).Reasons.Take(written.Length).Select(r => r.Sentence)
                .SequenceEqual(written.Select(w => ResolveNames.Resolve([w], Known, new NamesRule()).Reasons[0].Sentence)));
}
