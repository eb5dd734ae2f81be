using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;

namespace Keikocho.Store.Tests.Syllabus;

/// <summary>A small invented ladder that has every shape a document can hold.</summary>
internal static class SmallLadder
{
    public static Edition Edition { get; } = new(
        "Juniors",
        "edition 1",
        null,
        [
            new LadderRank("white", "White", "W", "white", 0, new Minima(), [], Given: "on joining"),
            new LadderRank("white-1", "White, one red tip", "W1", "white", 1, new Minima(14, 10, ForAges: [new MinimaForAges(new Keikocho.Core.Syllabus.AgeBand(10), 10, 8)]),
                [
                    new Requirement("falls", new Ask.AllOf(["back-fall", "rolling"]), Critical: true, Carry: Carry.Always, AtOnce: true),
                    new Requirement("throw", new Ask.AnyOf(1, ["o-goshi", "hiza-guruma"]), Condition: "standing still"),
                    new Requirement("half", new Ask.ShareOfRank("yellow", 50)),
                    new Requirement("stop", new Ask.AllOf(["matte"]), Critical: true, Carry: Carry.Always),
                ],
                FirstCourse: true),
            new LadderRank("yellow", "Yellow", null, "yellow", 0,
                new Minima(20, 12, 6, 8, AgeBasis.CalendarYear, true, 1, 45, null, 25, new FastTrack(14, 2, 1), true),
                [
                    new Requirement("moving", new Ask.AllOf(["o-goshi-moving"]), Unit: "hips", Ages: new Keikocho.Core.Syllabus.AgeBand(8)),
                    new Requirement("other", new Ask.TheOther("white-1", "throw")),
                    new Requirement("own", new Ask.FromPool(1, Chooser.Child, ["kesa-gatame", "yoko-shiho"], null), Title: "A hold of your own choice"),
                    new Requirement("drawn", new Ask.DrawnFromEarlier(1, ["white-1"], [ItemKind.Throw]), Carry: Carry.OnceAskedStays),
                ]),
        ],
        [new Unit("hips", "Hip throws", ["o-goshi", "o-goshi-moving"]), new Unit("feet", "Foot sweeps", ["hiza-guruma"])],
        ["back-fall", "rolling", "o-goshi", "hiza-guruma", "matte"],
        [
            new Item("back-fall", ItemKind.Fall, "Backward fall", Fall: new FallForm(FallDirection.Back, false, 3)),
            new Item("rolling", ItemKind.Fall, "Rolling fall", Fall: new FallForm(FallDirection.Rolling, true, 3)),
            new Item("o-goshi", ItemKind.Throw, "O-goshi", "O-goshi", Meaning: "major hip throw", LookFor: "Hips lower than the partner's"),
            new Item("o-goshi-moving", ItemKind.Throw, "O-goshi, moving", "O-goshi", Covers: ["o-goshi"]),
            new Item("hiza-guruma", ItemKind.Throw, "Hiza-guruma", "Hiza-guruma", Alternative: "o-goshi", LoadsTheNeck: true),
            new Item("kesa-gatame", ItemKind.HoldDown, "Kesa-gatame", "Kesa-gatame", Seconds: 20),
            new Item("yoko-shiho", ItemKind.HoldDown, "Yoko-shiho-gatame", "Yoko-shiho-gatame", Times: 2),
            new Item("out-of-kesa", ItemKind.Escape, "Out of Kesa-gatame", Order: new Order.EscapeFrom("Kesa-gatame", "bridge and roll")),
            new Item("matte", ItemKind.Word, "Matte", Kana: "まて", Kanji: "待て", Meaning: "stop", Answers: ["stop", "wait"], Safety: true),
        ],
        [new OwnTechnique("Quay roll", "O-goshi", "きい", null, "our own")],
        "Invented for the tests.",
        ["Not reviewed by a graded instructor."]);
}
