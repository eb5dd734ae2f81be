using CsCheck;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;

namespace Keikocho.Core.Tests.Evening;

/// <summary>Questions about a card, made for tests.</summary>
internal static class Cards
{
    public static readonly IReadOnlyList<CardPart> Parts =
    [
        new(CardPartKind.Bow, "Bow", 3, "Line up."),
        new(CardPartKind.WarmUp, "Warm-up and game", 12, "Together."),
        new(CardPartKind.Falls, "Falls", 10, "Low first."),
        new(CardPartKind.Slot, "First slot", 15, "The ends part."),
        new(CardPartKind.Slot, "Second slot", 15, "Change partners."),
        new(CardPartKind.Game, "Small game", 8, "On the knees."),
        new(CardPartKind.Words, "Cool-down with words", 7, "Quiet."),
        new(CardPartKind.Close, "Bow and notices", 5, "Line up."),
    ];

    public static readonly FallWay LeftSide = new(FallDirection.Side, FallSide.Left);

    public static CardSnapshot Question(IReadOnlyList<CardChild> children, IReadOnlyList<CardItem> items) => new(
        MatEnd.Beginners, new TimeOnly(17, 30), Parts, children, items, [], [new CardAdult("tobias", "Tobias", true)], 0, null,
        [], new CardPlayers(children.Count, null, false), new CardPlayers(children.Count, null, false), [], new CardRule(), new LookAtRule(), new WordsDueRule());

    public static CardItem Throw(string key, string name, IReadOnlyDictionary<string, CardStanding> standing, params int[] ago) => new(
        key, name, ItemKind.Throw, standing, ago, new PlannedThrow(name, [LeftSide], 4), new PlannedThrow(name, [LeftSide], 6));

    public static CardItem Hold(string key, string name, IReadOnlyDictionary<string, CardStanding> standing, params int[] ago) => new(key, name, ItemKind.HoldDown, standing, ago);

    public static CardGate Open(int to) => new(LeftSide, [.. Enumerable.Range(1, to)]);

    /// <summary>The beginners' evening of the example that was reckoned by hand: P, Q, R, S, V with two throws, two holds and a turnover.</summary>
    public static CardSnapshot FiveBeginners()
    {
        const CardStanding Never = CardStanding.NeverShown, Shown = CardStanding.NotSigned, Stale = CardStanding.Stale, Fresh = CardStanding.Fresh;
        Dictionary<string, CardStanding> Of(CardStanding p, CardStanding q, CardStanding r, CardStanding s, CardStanding v) => new() { ["P"] = p, ["Q"] = q, ["R"] = r, ["S"] = s, ["V"] = v };
        return Question(
            [
                new CardChild("P", "P", IsNewcomer: true),
                new CardChild("Q", "Q", LessonsToTest: 3, Gates: [Open(5)]),
                new CardChild("R", "R", LessonsToTest: 4, Gates: [Open(6)]),
                new CardChild("S", "S", LessonsToTest: 9, Gates: [Open(3)]),
                new CardChild("V", "V", LessonsToTest: 9, Gates: [Open(4)]),
            ],
            [
                Throw("t1", "T1", Of(Never, Fresh, Fresh, Shown, Shown)),
                Throw("t2", "T2", Of(Never, Shown, Shown, Never, Shown)),
                Hold("h1", "H1", Of(Never, Stale, Fresh, Fresh, Shown)),
                Hold("h2", "H2", Of(Never, Fresh, Fresh, Shown, Shown)),
                new CardItem("m", "M", ItemKind.Turnover, Of(Never, Shown, Never, Never, Never), []),
            ]);
    }

    private static readonly Gen<CardGate> AnyGate = Gen.Select(Gen.Int[0, FallWay.All.Count - 1], Gen.Int[0, 6]).Select((w, to) => new CardGate(FallWay.All[w], [.. Enumerable.Range(1, to)]));

    private static readonly Gen<CardChild> AnyChild = Gen.Select(Gen.Bool, Gen.Int[-1, 8], Gen.Int[0, 7], Gen.Bool, AnyGate.Array[0, 6], Gen.Int[0, 6])
        .Select((isNew, left, stand, neck, gates, unseen) => new CardChild(
            "", "", isNew, false, left < 0 ? null : left, stand > 2, stand > 1, stand > 0, neck, [.. gates.DistinctBy(g => g.Way)], unseen));

    private static Gen<CardItem> AnyItem(int children) => Gen.Select(
            Gen.Int[0, 3], Gen.Int[0, 4].Array[children], Gen.Int[1, 5].Array[0, 3], Gen.Int[0, FallWay.All.Count - 1], Gen.Int[0, 3], Gen.Bool)
        .Select((which, standing, ago, way, plan, alternative) =>
        {
            var kind = which switch { 0 => ItemKind.Throw, 1 => ItemKind.HoldDown, 2 => ItemKind.Turnover, _ => ItemKind.Strangle };
            var asked = new PlannedThrow("T", [FallWay.All[way]], 4);
            return new CardItem(
                "", "", kind,
                standing.Select((s, i) => (s, i)).Where(s => s.s < 4).ToDictionary(s => $"c{s.i}", s => (CardStanding)s.s),
                [.. ago.Distinct()],
                kind == ItemKind.Throw && plan != 3 ? asked : null,
                kind == ItemKind.Throw && plan == 2 ? asked with { Stage = 6 } : null,
                kind == ItemKind.Strangle,
                alternative ? "a hold" : null,
                plan == 1 ? 1 : null);
        });

    /// <summary>Any card at all.</summary>
    public static readonly Gen<CardSnapshot> AnyCard = Gen.SelectMany(Gen.Int[0, 7], children => Gen.Select(
        AnyChild.Array[children], AnyItem(children).Array[0, 7], Gen.Int[0, 3], Gen.Int[0, 2], Gen.Int[-1, 2], Gen.Bool, Gen.Int[0, 3])
        .Select((who, what, adults, shortBy, plan, isMain, words) => Question(
            [.. who.Select((c, i) => c with { Key = $"c{i}", Name = $"Child {i}", Asked = [.. Enumerable.Range(0, words).Where(w => (w + i) % 2 == 0).Select(w => new AskedBefore($"w{w}", i + w, (i + w) % 4))] })],
            [.. what.Select((item, i) => item with { Key = $"i{i}", Name = $"Item {i}" })]) with
        {
            End = isMain ? MatEnd.Main : MatEnd.Beginners,
            Words = [.. Enumerable.Range(0, words).Select(w => new DueWord($"w{w}", $"Word {w}", w == 2))],
            Adults = [.. Enumerable.Range(0, adults).Select(a => new CardAdult($"a{a}", $"Adult {a}", a % 2 == 1))],
            ShortBy = shortBy,
            Plan = plan < 0 ? null : (CardPlan)plan,
            Games = [new CardGame("Quiet", 1, 30, 1, GameContact.None, false, "x"), new CardGame("Pushing", 2, 6, 4, GameContact.Hold, false, "x"), new CardGame("Falling", 1, 9, 2, GameContact.None, true, "x")],
            Together = new CardPlayers(children + 3, 30, shortBy == 1),
            Here = new CardPlayers(children, 20, who.Any(c => !c.MayFall)),
            Taken = words == 1 && what.Length > 0 ? [new SlotTaken(1, "i0")] : [],
        }));
}
