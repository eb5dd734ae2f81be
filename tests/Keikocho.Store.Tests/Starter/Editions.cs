using CsCheck;
using Keikocho.Core.Syllabus;
using FallDirection = Keikocho.Core.Safety.FallDirection;

namespace Keikocho.Store.Tests.Starter;

/// <summary>Editions made by chance: every shape, any text. They need not hold together.</summary>
internal static class Editions
{
    // Quotes, backslashes, line ends, kanji and signs outside the first plane: whatever may break a quoted text.
    private static readonly Gen<string> Character = Gen.OneOf(
        "a", "Z", "7", " ", "-", "\"", "\\", "'", "#", "\n", "\r", "\t", "\u0001", "\u007f", "é", "ō", "礼", "\U00020B9F", "=", "[", "]", "{", "}", "\"\"\"");

    private static readonly Gen<string> Text = Character.Array[0, 7].Select(parts => "x" + string.Concat(parts));

    private static readonly Gen<string> Key = Gen.OneOf("o-goshi", "uki-goshi-moving", "falls", "yellow-1", "word-mate", "x");

    private static readonly Gen<string?> Maybe = Or(Text);

    private static readonly Gen<IReadOnlyList<string>> Keys = Key.Array[0, 12].Select(keys => (IReadOnlyList<string>)keys);

    private static readonly Gen<IReadOnlyList<string>?> MaybeTexts =
        Gen.OneOf(Gen.Const((IReadOnlyList<string>?)null), Text.Array[0, 3].Select(texts => (IReadOnlyList<string>?)texts));

    private static readonly Gen<int?> MaybeNumber = Gen.OneOf(Gen.Const((int?)null), Gen.Int[0, 90].Select(number => (int?)number));

    private static readonly Gen<IReadOnlyList<ItemKind>?> MaybeKinds =
        Gen.OneOf(Gen.Const((IReadOnlyList<ItemKind>?)null), Gen.Enum<ItemKind>().Array[0, 3].Select(kinds => (IReadOnlyList<ItemKind>?)kinds));

    private static readonly Gen<AgeBand> Band = Gen.Select(MaybeNumber, MaybeNumber, (from, to) => new AgeBand(from, to));

    private static readonly Gen<Ask> Asks = Gen.OneOf(
        Keys.Select(items => (Ask)new Ask.AllOf(items)),
        Gen.Select(Gen.Int[0, 5], Keys, (count, items) => (Ask)new Ask.AnyOf(count, items)),
        Gen.Select(Gen.Int[0, 5], Gen.Enum<Chooser>(), Keys, MaybeKinds, (count, by, pool, kinds) => (Ask)new Ask.FromPool(count, by, pool, kinds)),
        Gen.Select(Key, Gen.Int[1, 99], MaybeKinds, (rank, percent, kinds) => (Ask)new Ask.ShareOfRank(rank, percent, kinds)),
        Gen.Select(Gen.Int[0, 5], Keys, MaybeKinds, (count, ranks, kinds) => (Ask)new Ask.DrawnFromEarlier(count, ranks, kinds)),
        Gen.Select(Key, Key, (rank, requirement) => (Ask)new Ask.TheOther(rank, requirement)));

    private static readonly Gen<Requirement> Requirements = Gen.Select(
        Gen.Select(Key, Asks, Maybe, Maybe), Or(Band), Gen.Bool, Gen.Enum<Carry>(), Or(Key), Gen.Bool,
        (head, ages, critical, carry, unit, atOnce) => new Requirement(head.Item1, head.Item2, head.Item3, head.Item4, ages, critical, carry, unit, atOnce));

    private static readonly Gen<MinimaForAges> ForAges = Gen.Select(
        Band, MaybeNumber, MaybeNumber, MaybeNumber, (band, lessons, weeks, months) => new MinimaForAges(band, lessons, weeks, months));

    private static readonly Gen<FastTrack?> Track = Gen.OneOf(
        Gen.Const((FastTrack?)null),
        Gen.Select(Gen.Int[0, 17], Gen.Int[0, 5], Gen.Int[0, 5], (age, ranks, tests) => (FastTrack?)new FastTrack(age, ranks, tests)));

    private static readonly Gen<Minima> Minimum = Gen.Select(
        Gen.Int[0, 99].Array[6],
        MaybeNumber,
        Gen.Enum<AgeBasis>(),
        Gen.Bool.Array[2],
        Gen.OneOf(Gen.Const((IReadOnlyList<MinimaForAges>?)null), ForAges.Array[0, 3].Select(bands => (IReadOnlyList<MinimaForAges>?)bands)),
        Track,
        (n, age, by, said, bands, track) => new Minima(n[0], n[1], n[2], age, by, said[0], n[3], n[4], bands, n[5], track, said[1]));

    private static readonly Gen<LadderRank> Ranks = Gen.Select(
        Gen.Select(Key, Text, Maybe, Maybe, Gen.Int[0, 4]), Minimum, Requirements.Array[0, 4], Gen.Bool, Maybe,
        (head, minima, asks, first, given) => new LadderRank(head.Item1, head.Item2, head.Item3, head.Item4, head.Item5, minima, asks, first, given));

    private static readonly Gen<Order?> Orders = Gen.OneOf(
        Gen.Const((Order?)null),
        Gen.Select(Text, Text, (one, two) => (Order?)new Order.Into(one, two)),
        Gen.Select(Text, Text, (one, two) => (Order?)new Order.CounteredBy(one, two)),
        Gen.Select(Text, Text, (one, two) => (Order?)new Order.EscapeFrom(one, two)),
        Gen.Select(Maybe, Text, (one, two) => (Order?)new Order.TurnoverInto(one, two)));

    private static readonly Gen<FallForm?> Falls = Gen.OneOf(
        Gen.Const((FallForm?)null),
        Gen.Select(Gen.Enum<FallDirection>(), Gen.Bool, Gen.Int[1, 6], (way, both, stage) => (FallForm?)new FallForm(way, both, stage)));

    private static readonly Gen<Item> Items = Gen.Select(
        Gen.Select(Key, Gen.Enum<ItemKind>(), Text, Maybe),
        Gen.Select(Orders, Falls),
        Gen.Select(Maybe, Maybe, Maybe, Maybe),
        Gen.Select(MaybeNumber, MaybeNumber, MaybeTexts),
        Gen.Select(Gen.Bool, Gen.Bool),
        Gen.Select(Or(Key), MaybeTexts),
        (head, form, words, amount, flags, others) => new Item(
            head.Item1, head.Item2, head.Item3, head.Item4, form.Item1, form.Item2, words.Item1, words.Item2, words.Item3, words.Item4,
            amount.Item1, amount.Item2, amount.Item3, flags.Item1, flags.Item2, others.Item1, others.Item2));

    private static readonly Gen<OwnTechnique> Own =
        Gen.Select(Text, Maybe, Maybe, Maybe, Maybe, (name, as_, kana, kanji, meaning) => new OwnTechnique(name, as_, kana, kanji, meaning));

    /// <summary>Any edition.</summary>
    public static readonly Gen<Edition> Any = Gen.Select(
        Gen.Select(Text, Text, Gen.OneOf(Gen.Const((DateOnly?)null), Gen.Int[0, 9000].Select(day => (DateOnly?)new DateOnly(2020, 1, 1).AddDays(day)))),
        Ranks.Array[0, 4],
        Gen.Select(Key, Text, Keys, (key, name, items) => new Unit(key, name, items)).Array[0, 3],
        Keys,
        Items.Array[0, 4],
        Gen.OneOf(Gen.Const((IReadOnlyList<OwnTechnique>?)null), Own.Array[0, 2].Select(own => (IReadOnlyList<OwnTechnique>?)own)),
        Gen.Select(Maybe, MaybeTexts),
        (head, ranks, units, first, items, own, end) =>
            new Edition(head.Item1, head.Item2, head.Item3, ranks, units, first, items, own, end.Item1, end.Item2));

    private static Gen<T?> Or<T>(Gen<T> gen)
        where T : class => Gen.OneOf(Gen.Const((T?)null), gen.Select(value => (T?)value));
}
