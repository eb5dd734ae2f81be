using Keikocho.Core.Readiness;
using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;
using Keikocho.Paper.Sheets;

namespace Keikocho.Paper.Tests;

/// <summary>Sheets of an invented club; what they ask is made up by hand.</summary>
internal static class SheetSamples
{
    public static readonly DateOnly Test = new(2026, 12, 8);

    /// <summary>An ordinary sheet: 10 lines to show, 8 words, 2 questions.</summary>
    public static RequirementSheet Short => Sheet(
    [
        One(SheetPart.Falls, "Falling backward, from standing", new("ushiro-ukemi", ItemKind.Fall, "Ushiro-ukemi", Fall: new(FallDirection.Back, false, 4), Kanji: "後受身", Kana: "うしろうけみ", LookFor: "chin in, arms flat"), true, Carry.Always, "White, one red tip"),
        One(SheetPart.Falls, "Falling sideways, both sides", new("yoko-ukemi", ItemKind.Fall, "Yoko-ukemi", Fall: new(FallDirection.Side, true, 4), Kanji: "横受身", Kana: "よこうけみ", LookFor: "legs not crossed"), true, Carry.Always, "White, one red tip"),
        Either,
        One(SheetPart.Standing, "O-goshi into Kami-shiho-gatame", new("o-goshi-into-kami-shiho", ItemKind.Combination, "O-goshi into Kami-shiho-gatame", Order: new Order.Into("O-goshi", "Kami-shiho-gatame"), LookFor: "no gap between the two")),
        One(SheetPart.Ground, "Kami-shiho-gatame", new("kami-shiho-gatame", ItemKind.HoldDown, "Kami-shiho-gatame", Kanji: "上四方固", Kana: "かみしほうがため", Meaning: "upper four-corner hold", Seconds: 10, LookFor: "chest low, elbows in")),
        Escapes,
        One(SheetPart.Ground, "Turnover, partner lying face down", new("turnover-face-down", ItemKind.Turnover, "Turnover, partner lying face down", Order: new Order.TurnoverInto(null, "partner lying face down"), LookFor: "both hands under before the turn")),
        One(SheetPart.Manners, "Letting go at once at “mate” and at a tap", new("let-go", ItemKind.Etiquette, "Letting go at once at “mate” and at a tap", Safety: true), true, Carry.Always),
        One(SheetPart.Manners, "Tying your own belt", new("belt", ItemKind.Etiquette, "Tying your own belt", LookFor: "both ends the same length"), false, Carry.Always),
        Words(true, Carry.Always, ("mate", "待て", "まて", "stop, stand still"), ("maitta", "参った", "まいった", "I give up: tap twice")),
        Words(false, Carry.ThisRank, ("hajime", "始め", "はじめ", "begin"), ("rei", "礼", "れい", "bow"), ("tori", "取り", "とり", "who throws"), ("uke", "受け", "うけ", "who is thrown")),
        Words(false, Carry.ThisTerm, ("koshi", "腰", "こし", "hip"), ("goshi-waza", "腰技", "こしわざ", "hip techniques")),
        One(SheetPart.Questions, "Who founded judo?", new("founder", ItemKind.Question, "Who founded judo?", Answers: ["Jigoro Kano", "Kano"]), false, Carry.OnceAskedStays),
        One(SheetPart.Questions, "Why do we bow?", new("why-bow", ItemKind.Question, "Why do we bow?", Answers: ["To thank our partner"])),
    ]);

    /// <summary>Exactly what one page is promised for: 12 things to show and 10 words, each with script, meaning and what we look for.</summary>
    public static RequirementSheet OnePage => Sheet(
    [
        .. Enumerable.Range(0, 3).Select(i => Fall(i)),
        .. Enumerable.Range(0, 9).Select(Throw),
        Words(true, Carry.Always, ("mate", "待て", "まて", "stop, stand still"), ("maitta", "参った", "まいった", "I give up: tap twice")),
        Words(false, Carry.Always, ("hajime", "始め", "はじめ", "begin"), ("rei", "礼", "れい", "bow"), ("tori", "取り", "とり", "who throws"), ("uke", "受け", "うけ", "who is thrown")),
        Words(false, Carry.ThisTerm, ("koshi", "腰", "こし", "hip"), ("osaekomi", "抑え込み", "おさえこみ", "the hold counts from now"), ("toketa", "解けた", "とけた", "the hold is broken"), ("sono-mama", "其の儘", "そのまま", "do not move")),
        One(SheetPart.Questions, "Who founded judo?", new("founder", ItemKind.Question, "Who founded judo?", Answers: ["Jigoro Kano", "Kano"]), false, Carry.OnceAskedStays),
        One(SheetPart.Questions, "Why do we bow?", new("why-bow", ItemKind.Question, "Why do we bow?", Answers: ["To thank our partner"])),
    ]);

    /// <summary>Thirty things to show, eighteen words, six questions.</summary>
    public static RequirementSheet Long => Sheet(
    [
        .. Enumerable.Range(0, 3).Select(i => Fall(i)),
        Either,
        .. Enumerable.Range(0, 12).Select(Throw),
        Escapes,
        AnyTwo,
        All,
        .. Enumerable.Range(0, 11).Select(Hold),
        .. Enumerable.Range(0, 18).Select(i => Words(i == 0, i < 6 ? Carry.Always : Carry.ThisRank, Vocabulary[i])),
        .. Enumerable.Range(1, 6).Select(i => One(SheetPart.Questions, $"What is rule {i} of our mat?", new($"question-{i}", ItemKind.Question, $"What is rule {i} of our mat?", Answers: [$"Rule {i} in your own words", "the sentence on the wall"]))),
    ]);

    public static SheetLine Either => new(
        "either-throw", SheetPart.Standing, 1,
        [
            new(new("o-goshi", ItemKind.Throw, "O-goshi", Kanji: "大腰", Kana: "おおごし", Meaning: "major hip throw", LookFor: "hips below your partner’s")),
            new(new("de-ashi-barai", ItemKind.Throw, "De-ashi-barai", Kanji: "出足払", Kana: "であしばらい", Meaning: "advancing foot sweep", LookFor: "sole of the foot, little toe first")),
        ],
        "O-goshi or De-ashi-barai", "moving", false, Carry.ThisRank, null, null);

    public static SheetLine Escapes => new(
        "escape", SheetPart.Ground, 1,
        [
            new(new("escape-belt", ItemKind.Escape, "Roll with the belt", Order: new Order.EscapeFrom("Kami-shiho-gatame", "roll with the belt"))),
            new(new("escape-turn", ItemKind.Escape, "Turn to the front and kneel", Order: new Order.EscapeFrom("Kami-shiho-gatame", "turn to the front and kneel"))),
        ],
        "One way out of Kami-shiho-gatame", null, false, Carry.ThisRank, null, null);

    public static SheetLine AnyTwo => new(
        "any-two", SheetPart.Standing, 2,
        [.. new[] { "Uki-goshi", "Tai-otoshi", "Hiza-guruma", "Ko-uchi-gari" }.Select((name, i) => new SheetItem(new(name.ToLowerInvariant(), ItemKind.Throw, name), Chosen: i == 1))],
        "Two throws of your own choice", "both sides", false, Carry.ThisRank, null, null);

    public static SheetLine All => new(
        "all", SheetPart.Standing, 3,
        [.. new[] { "Kumi-kata", "Tsugi-ashi", "Tai-sabaki" }.Select(name => new SheetItem(new(name.ToLowerInvariant(), ItemKind.Movement, name, LookFor: "upright and light")))],
        "Kumi-kata, Tsugi-ashi and Tai-sabaki", null, true, Carry.ThisRank, null, null);

    public static (string, string, string, string)[] Vocabulary { get; } =
    [
        ("mate", "待て", "まて", "stop, stand still"), ("hajime", "始め", "はじめ", "begin"), ("rei", "礼", "れい", "bow"), ("tori", "取り", "とり", "who throws"),
        ("uke", "受け", "うけ", "who is thrown"), ("ukemi", "受身", "うけみ", "breakfall"), ("dojo", "道場", "どうじょう", "practice hall"), ("tatami", "畳", "たたみ", "mat"),
        ("sensei", "先生", "せんせい", "teacher"), ("judogi", "柔道着", "じゅうどうぎ", "judo suit"), ("obi", "帯", "おび", "belt"), ("seiza", "正座", "せいざ", "kneeling upright"),
        ("ippon", "一本", "いっぽん", "a full point"), ("waza-ari-awasete-ippon", "技有合わせて一本", "わざありあわせていっぽん", "two waza-ari make a full point"), ("randori", "乱取り", "らんどり", "free practice"),
        ("kata", "形", "かた", "set forms"), ("kuzushi", "崩し", "くずし", "breaking the balance"), ("tsukuri", "作り", "つくり", "fitting in"),
    ];

    public static RequirementSheetContent Child(RequirementSheet? sheet = null, string name = "Anselm B.") => new(
        "Osier Quay Judo Club", new DateOnly(2026, 11, 24), name, sheet ?? Short, "Autumn term 2026", new TimeOnly(17, 30), [],
        [.. MinimaWords.Of((sheet ?? Short).Minima, false, false), "An instructor must have seen each item good on two evenings."],
        new BeltPicture(BeltColour.White, null, 2), new Dictionary<string, ItemScript>(),
        ["Ask somebody to call four words, and answer in English.", "Tie your belt twice."], "Maren");

    public static RequirementSheetContent Wall(RequirementSheet? sheet = null) => Child(sheet) with
    {
        Child = null,
        Sheet = (sheet ?? Short) with { Lines = [.. (sheet ?? Short).Lines.Select(line => line with { Items = [.. line.Items.Select(item => item with { Chosen = false })] })] },
        OtherTestDays = [new DateOnly(2026, 12, 12)],
        Before = MinimaWords.Of((sheet ?? Short).Minima, false, true),
    };

    public static ParentsPageContent Parents { get; } = new(
        "Osier Quay Judo Club", "Anselm", new DateOnly(2026, 11, 24),
        new ParentsPageAnswer(
            "Anselm: White, two red tips",
            ["Anselm has been to 9 of the 11 lessons held this term.", "He is not put forward for the test on Tuesday 8 December 2026. Two things are left, and he keeps everything else."],
            [
                new("What is secure", ["Falling backward: seen clean on 17 November and 10 November 2026.", "Tying his own belt: seen good on 10 November 2026.", "The words mate, maitta, hajime and rei: known on 3 November 2026."]),
                new("What is not there yet", ["O-goshi, moving: seen on 17 November 2026, with a prompt from the instructor.", "Falling sideways, left: not seen on two evenings yet; seen once, on 10 November 2026."]),
                new("A unit he has not met", ["He missed the summer term, and with it the unit Sweeps. It returns in the spring term 2027."]),
                new("What would change this", ["One more evening on which he falls sideways to the left clean, and O-goshi without a prompt."]),
                new("When next", ["The next test is on Tuesday 23 March 2027, and there are 14 lessons before it."]),
            ],
            "parents-page 1"),
        "Maren");

    public static RequirementSheet Sheet(IReadOnlyList<SheetLine> lines) => new(
        "white-2", "White, two red tips", "White, one red tip", "edition 3", new DateOnly(2026, 9, 1), "Hip throws", 1, Test, lines,
        new Minima(Lessons: 8, Weeks: 6, Age: 6), null, [], [], []);

    public static SheetLine One(SheetPart part, string title, Item item, bool critical = false, Carry carry = Carry.ThisRank, string? fromRank = null) =>
        new(item.Key, part, 1, [new(item)], title, null, critical, carry, fromRank, null);

    public static SheetLine Words(bool critical, Carry carry, params (string Word, string Kanji, string Kana, string Meaning)[] words) => new(
        "words-" + words[0].Word, SheetPart.Words, words.Length,
        [.. words.Select(word => new SheetItem(new(word.Word, ItemKind.Word, word.Word, Kanji: word.Kanji, Kana: word.Kana, Meaning: word.Meaning)))],
        string.Join(", ", words.Select(word => word.Word)), null, critical, carry, null, null);

    private static SheetLine Fall(int i)
    {
        var (title, name, kanji, kana) = new[]
        {
            ("Falling backward, from standing", "Ushiro-ukemi", "後受身", "うしろうけみ"), ("Falling sideways, both sides", "Yoko-ukemi", "横受身", "よこうけみ"),
            ("Rolling to standing, both sides", "Mae-mawari-ukemi", "前回り受身", "まえまわりうけみ"),
        }[i];
        return One(SheetPart.Falls, title, new(name.ToLowerInvariant(), ItemKind.Fall, name, Kanji: kanji, Kana: kana, LookFor: "chin in, arms flat, no hand out"), true, Carry.Always);
    }

    private static SheetLine Throw(int i)
    {
        var (name, kanji, kana, meaning) = Throws[i];
        return One(SheetPart.Standing, name + ", moving", new(name.ToLowerInvariant(), ItemKind.Throw, name, Kanji: kanji, Kana: kana, Meaning: meaning, LookFor: "pull first, then turn, hold on"));
    }

    private static SheetLine Hold(int i)
    {
        var (name, kanji, kana, meaning) = Holds[i % Holds.Length];
        var form = i < Holds.Length ? "" : ", and a way out of it";
        return One(SheetPart.Ground, name + form, new($"hold-{i}", i < Holds.Length ? ItemKind.HoldDown : ItemKind.Escape, name + form, Kanji: kanji, Kana: kana, Meaning: meaning, Seconds: i < Holds.Length ? 15 : null, LookFor: "low and heavy"));
    }

    private static readonly (string, string, string, string)[] Throws =
    [
        ("Uki-goshi", "浮腰", "うきごし", "floating hip throw"), ("Hiza-guruma", "膝車", "ひざぐるま", "knee wheel"), ("O-soto-otoshi", "大外落", "おおそとおとし", "major outer drop"),
        ("Tai-otoshi", "体落", "たいおとし", "body drop"), ("Ippon-seoi-nage", "一本背負投", "いっぽんせおいなげ", "one-arm shoulder throw"), ("Ko-uchi-gari", "小内刈", "こうちがり", "minor inner reap"),
        ("O-uchi-gari", "大内刈", "おおうちがり", "major inner reap"), ("Sasae-tsurikomi-ashi", "支釣込足", "ささえつりこみあし", "propping lifting-pulling foot"), ("Tsurikomi-goshi", "釣込腰", "つりこみごし", "lifting-pulling hip throw"),
        ("Harai-goshi", "払腰", "はらいごし", "sweeping hip throw"), ("Ko-soto-gari", "小外刈", "こそとがり", "minor outer reap"), ("Morote-seoi-nage", "双手背負投", "もろてせおいなげ", "two-hand shoulder throw"),
    ];

    private static readonly (string, string, string, string)[] Holds =
    [
        ("Kesa-gatame", "袈裟固", "けさがため", "scarf hold"), ("Yoko-shiho-gatame", "横四方固", "よこしほうがため", "side four-corner hold"), ("Kami-shiho-gatame", "上四方固", "かみしほうがため", "upper four-corner hold"),
        ("Tate-shiho-gatame", "縦四方固", "たてしほうがため", "vertical four-corner hold"), ("Kuzure-kesa-gatame", "崩袈裟固", "くずれけさがため", "broken scarf hold"), ("Kata-gatame", "肩固", "かたがため", "shoulder hold"),
    ];
}
