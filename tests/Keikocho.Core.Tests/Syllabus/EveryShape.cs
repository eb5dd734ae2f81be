using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;

namespace Keikocho.Core.Tests.Syllabus;

/// <summary>An invented edition in which every shape of a requirement, every order and every way of carrying on occurs.</summary>
public static class EveryShape
{
    /// <summary>The items, each key once.</summary>
    public static readonly IReadOnlyList<Item> Items =
    [
        new("back-fall", ItemKind.Fall, "Back fall", Fall: new(FallDirection.Back, false, 3), LookFor: "chin in, arms beat together"),
        new("side-fall", ItemKind.Fall, "Side fall, both sides", Fall: new(FallDirection.Side, true, 3)),
        new("rolling-fall", ItemKind.Fall, "Rolling fall", Fall: new(FallDirection.Rolling, true, 3)),
        new("o-goshi", ItemKind.Throw, "O-goshi", "O-goshi", Meaning: "major hip throw", LookFor: "knees bent, hips below the partner's"),
        new("o-goshi-moving", ItemKind.Throw, "O-goshi, moving", "O-goshi", Covers: ["o-goshi"]),
        new("o-soto-otoshi", ItemKind.Throw, "O-soto-otoshi", "O-soto-otoshi"),
        new("de-ashi-barai", ItemKind.Throw, "De-ashi-barai", "De-ashi-barai"),
        new("uki-goshi", ItemKind.Throw, "Uki-goshi", "Uki-goshi"),
        new("koshi-guruma", ItemKind.Throw, "Koshi-guruma", "Koshi-guruma", LoadsTheNeck: true, Alternative: "o-goshi-moving"),
        new("tani-otoshi", ItemKind.Throw, "Tani-otoshi", "Tani-otoshi"),
        new("tai-otoshi", ItemKind.Throw, "Tai-otoshi", "Tai-otoshi"),
        new("kesa-gatame", ItemKind.HoldDown, "Kesa-gatame", "Kesa-gatame", Seconds: 10),
        new("mune-gatame", ItemKind.HoldDown, "Mune-gatame", "Mune-gatame", Seconds: 10),
        new("kami-shiho-gatame", ItemKind.HoldDown, "Kami-shiho-gatame", "Kami-shiho-gatame"),
        new("kesa-out-leg", ItemKind.Escape, "Out of Kesa-gatame, trapping the leg", Order: new Order.EscapeFrom("Kesa-gatame", "trapping the leg")),
        new("kesa-out-bridge", ItemKind.Escape, "Out of Kesa-gatame, bridge and roll", Order: new Order.EscapeFrom("Kesa-gatame", "bridge and roll"), LoadsTheNeck: true, Alternative: "kesa-out-leg"),
        new("turn-all-fours", ItemKind.Turnover, "Turnover into Mune-gatame", Order: new Order.TurnoverInto("Mune-gatame", "partner on hands and knees")),
        new("otoshi-into-kesa", ItemKind.Sequence, "O-soto-otoshi into Kesa-gatame", Order: new Order.Into("O-soto-otoshi", "Kesa-gatame")),
        new("uki-then-koshi", ItemKind.Combination, "Uki-goshi into Koshi-guruma", Order: new Order.Into("Uki-goshi", "Koshi-guruma"), LoadsTheNeck: true),
        new("goshi-by-tani", ItemKind.Counter, "O-goshi countered by Tani-otoshi", Order: new Order.CounteredBy("O-goshi", "Tani-otoshi")),
        new("okuri-eri-jime", ItemKind.Strangle, "Okuri-eri-jime", "Okuri-eri-jime", LoadsTheNeck: true, Alternative: "juji-gatame"),
        new("juji-gatame", ItemKind.Armlock, "Juji-gatame", "Juji-gatame", Alternative: "kami-shiho-gatame"),
        new("sleeve-and-lapel", ItemKind.Grip, "Sleeve and lapel grip"),
        new("turning", ItemKind.Movement, "Turning the body"),
        new("press-ups", ItemKind.Exercise, "Press-ups", Times: 10),
        new("randori", ItemKind.FreePractice, "Free practice", Seconds: 120),
        new("bow", ItemKind.Etiquette, "Standing and kneeling bow"),
        new("belt", ItemKind.Etiquette, "Tying the belt"),
        new("hajime", ItemKind.Word, "Hajime", Meaning: "begin", Answers: ["begin", "start"]),
        new("matte", ItemKind.Word, "Matte", Meaning: "stop", Answers: ["stop", "wait"], Safety: true),
        new("koshi", ItemKind.Word, "Koshi", Meaning: "hip", Answers: ["hip", "hips"]),
        new("ashi", ItemKind.Word, "Ashi", Meaning: "foot or leg", Answers: ["foot", "leg"]),
        new("tap", ItemKind.Question, "How do you give up?", Answers: ["tap twice", "say I give up"], Safety: true),
        new("founder", ItemKind.Question, "Who founded judo?", Answers: ["Jigoro Kano", "Kano"]),
        new("country", ItemKind.Question, "Where does judo come from?", Answers: ["Japan"]),
        new("two-faults", ItemKind.Question, "Name two actions against the rules", Answers: ["any two"]),
    ];

    /// <summary>The edition.</summary>
    public static readonly Edition Edition = new(
        "Every shape", "edition 3", new(2026, 1, 12),
        [
            new("white", "White", null, "white", 0, new Minima(), []),
            new("red", "Red", null, "red", 0, new Minima(14, 10, ForAges: [new(new(To: 7), Lessons: 18, Weeks: 14)]),
            [
                new("falls", new Ask.AllOf(["back-fall", "side-fall"]), Critical: true),
                new("throw", new Ask.AnyOf(1, ["o-goshi", "o-soto-otoshi"])),
                new("hold", new Ask.AllOf(["kesa-gatame"]), "A hold for ten seconds"),
                new("out", new Ask.AnyOf(1, ["kesa-out-leg", "kesa-out-bridge"]), "A way out of the hold"),
                new("manners", new Ask.AllOf(["bow", "belt"])),
                new("stop", new Ask.AllOf(["hajime", "matte"]), Carry: Carry.Always),
                new("tap", new Ask.AllOf(["country", "tap"]), Carry: Carry.Always, Critical: true),
                new("hips-words", new Ask.AnyOf(1, ["koshi", "founder"]), Carry: Carry.OnceAskedStays, Unit: "hips"),
            ], FirstCourse: true),
            new("yellow-tip", "Red, one yellow tip", "Red 1", "red", 1, new Minima(7),
            [
                new("half", new Ask.ShareOfRank("yellow", 50), "Half of Yellow"),
            ]),
            new("yellow", "Yellow", null, "yellow", 0, new Minima(20, Months: 3, Age: 7),
            [
                new("roll", new Ask.AllOf(["rolling-fall"]), Condition: "both sides", Critical: true),
                new("three", new Ask.AllOf(["de-ashi-barai", "koshi-guruma", "tani-otoshi"]), "De-ashi-barai, Koshi-guruma and Tani-otoshi"),
                new("two", new Ask.AnyOf(2, ["uki-goshi", "tai-otoshi", "tani-otoshi"]), Ages: new(8)),
                new("one", new Ask.AnyOf(1, ["uki-goshi", "tai-otoshi"]), Ages: new(To: 7)),
                new("hold", new Ask.AllOf(["mune-gatame", "turn-all-fours", "otoshi-into-kesa"])),
                new("hips", new Ask.AllOf(["o-goshi-moving"]), Unit: "hips"),
                new("feet-words", new Ask.AllOf(["ashi"]), Carry: Carry.ThisTerm, Unit: "feet"),
                new("other", new Ask.TheOther("red", "throw")),
            ]),
            new("orange", "Orange", null, "orange", 0, new Minima(30, CountedOverTwoRanks: true, LessonsADay: 2, ExaminerIsNotTheCoach: true),
            [
                new("combination", new Ask.AllOf(["uki-then-koshi", "goshi-by-tani"])),
                new("ground", new Ask.AllOf(["okuri-eri-jime", "kami-shiho-gatame"])),
                new("grip", new Ask.AllOf(["sleeve-and-lapel", "turning"])),
                new("fit", new Ask.AllOf(["press-ups", "randori"])),
                new("own", new Ask.FromPool(2, Chooser.Child, [])),
                new("set", new Ask.FromPool(1, Chooser.Instructor, ["kesa-gatame", "mune-gatame", "juji-gatame"]), "A hold that the instructor names"),
                new("recall", new Ask.DrawnFromEarlier(3, [])),
                new("words", new Ask.DrawnFromEarlier(1, ["red"], [ItemKind.Word, ItemKind.Question])),
                new("faults", new Ask.AllOf(["two-faults"]), AtOnce: true),
            ], Given: "Summer test"),
        ],
        [
            new("hips", "Hip throws", ["o-goshi", "o-goshi-moving", "uki-goshi", "koshi-guruma", "koshi"]),
            new("feet", "Foot throws", ["de-ashi-barai", "o-soto-otoshi", "ashi"]),
        ],
        ["back-fall", "side-fall", "o-goshi", "o-soto-otoshi", "kesa-gatame", "kesa-out-leg", "bow", "belt", "matte", "tap"],
        Items,
        [new("Neck wheel", "Koshi-guruma")],
        Source: "invented");

    /// <summary>Two invented age rules; the first names its technique in another spelling.</summary>
    public static readonly IReadOnlyList<AgeRule> Rules =
    [
        new("no neck grips", 11, AgeBasis.Birthday, [], ["KOSHI GURUMA"], [], "invented circular 4", new(2026, 1, 5)),
        new("no strangles or armlocks", 13, AgeBasis.CalendarYear, [], [], [ItemKind.Strangle, ItemKind.Armlock], "invented circular 4", new(2026, 1, 5)),
    ];

    /// <summary>The day of the test.</summary>
    public static readonly DateOnly TestOn = new(2026, 3, 28);

    /// <summary>A question about one rank.</summary>
    public static SheetSnapshot Ask(string rank, SheetChild? child, string? unit = "hips") => new(Edition, rank, TestOn, unit, Rules, child);
}
