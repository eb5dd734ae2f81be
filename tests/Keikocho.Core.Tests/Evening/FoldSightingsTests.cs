using CsCheck;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;

namespace Keikocho.Core.Tests.Evening;

public sealed class FoldSightingsTests
{
    private static readonly DateOnly Today = new(2026, 3, 3);

    /// <summary>A word of an instructor on tablet 1; its number is its id and its place in the tablet's order.</summary>
    private static SightingMark Word(int id, SeenWord word, int device = 1, bool confirms = true, DateOnly? on = null, bool settled = false) =>
        new(Ids.Mark(id), Ids.Device(device), id, on ?? Today, MarkKind.Sighting, word, settled, null, null, confirms);

    private static SightingMark About(int id, MarkKind kind, int target, SeenWord? word = null, int device = 1, bool confirms = true) =>
        new(Ids.Mark(id), Ids.Device(device), id, Today, kind, word, false, Ids.Mark(target), null, confirms);

    private static IReadOnlyList<SeenEvening> Fold(params SightingMark[] marks)
    {
        var evenings = FoldSightings.Fold(marks);
        Assert.Empty(FoldSightingsCheck.Objections(marks, evenings));
        return evenings;
    }

    [Theory]
    [InlineData(SeenWord.Good, SeenWord.Good, SeenWord.Good)]
    [InlineData(SeenWord.NotYet, SeenWord.NotYet, SeenWord.NotYet)]
    [InlineData(SeenWord.Good, SeenWord.NotYet, null)]
    [InlineData(SeenWord.Prompted, SeenWord.Good, null)]
    [InlineData(SeenWord.Prompted, SeenWord.NotYet, SeenWord.NotYet)]
    public void Two_tablets_on_one_evening_are_one_evening_and_good_against_another_word_is_none(SeenWord one, SeenWord two, SeenWord? word)
    {
        var evening = Assert.Single(Fold(Word(1, one), Word(2, two, device: 2)));
        Assert.Equal(word, evening.Word);
        Assert.Equal([one, two], evening.Seen);
    }

    [Fact]
    public void An_instructor_settles_two_words_by_a_correction()
    {
        var evening = Assert.Single(Fold(Word(1, SeenWord.Good), Word(2, SeenWord.NotYet, device: 2), About(3, MarkKind.Corrected, 2, SeenWord.Prompted)));
        Assert.Equal((SeenWord.Prompted, true), (evening.Word!.Value, evening.Confirmed));
    }

    [Fact]
    public void A_leaders_correction_settles_nothing()
    {
        var evening = Assert.Single(Fold(Word(1, SeenWord.Good), Word(2, SeenWord.NotYet, device: 2), About(3, MarkKind.Corrected, 2, SeenWord.Good, confirms: false)));
        Assert.Null(evening.Word);
        Assert.Equal(3, evening.Seen.Count);
    }

    [Fact]
    public void On_one_tablet_the_last_word_holds() =>
        Assert.Equal(SeenWord.Good, Assert.Single(Fold(Word(2, SeenWord.Good), Word(1, SeenWord.NotYet))).Word);

    [Fact]
    public void A_leaders_word_waits_until_somebody_stands_behind_it()
    {
        Assert.False(Assert.Single(Fold(Word(1, SeenWord.Good, confirms: false))).Confirmed);
        var evening = Assert.Single(Fold(Word(1, SeenWord.Good, confirms: false), About(2, MarkKind.Confirmed, 1, device: 2)));
        Assert.Equal((SeenWord.Good, true), (evening.Word!.Value, evening.Confirmed));
        Assert.False(Assert.Single(Fold(Word(1, SeenWord.Good, confirms: false), About(2, MarkKind.Confirmed, 1, device: 2, confirms: false))).Confirmed);
        Assert.False(Assert.Single(Fold(
            Word(1, SeenWord.Good, confirms: false), About(2, MarkKind.Confirmed, 1, device: 2), About(3, MarkKind.Cleared, 2, device: 2))).Confirmed);
    }

    [Fact]
    public void A_leaders_word_changes_nothing_that_an_adult_said()
    {
        var evening = Assert.Single(Fold(Word(1, SeenWord.NotYet), Word(2, SeenWord.Good, confirms: false), Word(3, SeenWord.Good, device: 2, confirms: false)));
        Assert.Equal((SeenWord.NotYet, true, 3), (evening.Word!.Value, evening.Confirmed, evening.Seen.Count));
    }

    [Fact]
    public void What_was_taken_back_is_gone_and_another_tablet_takes_nothing_back()
    {
        Assert.Empty(Fold(Word(1, SeenWord.Good), About(2, MarkKind.Cleared, 1)));
        Assert.Single(Fold(Word(1, SeenWord.Good), About(2, MarkKind.Cleared, 1, device: 2)));
        Assert.Single(Fold(Word(1, SeenWord.Good), About(2, MarkKind.Cleared, 1), About(3, MarkKind.Cleared, 2)));
    }

    [Fact]
    public void A_correction_to_nothing_takes_a_word_off_the_wrong_child() =>
        Assert.Empty(Fold(Word(1, SeenWord.Good), About(2, MarkKind.Corrected, 1, device: 2)));

    [Fact]
    public void A_correction_made_later_speaks_of_the_evening_of_the_first_mark()
    {
        var evening = Assert.Single(Fold(Word(1, SeenWord.Good), About(2, MarkKind.Corrected, 1, SeenWord.NotYet) with { On = Today.AddDays(7) }));
        Assert.Equal((Today, SeenWord.NotYet), (evening.On, evening.Word!.Value));
    }

    [Fact]
    public void Evenings_come_oldest_first_and_a_sign_off_is_settled()
    {
        var evenings = Fold(Word(2, SeenWord.Good, settled: true), Word(1, SeenWord.Prompted, on: Today.AddDays(-7)));
        Assert.Equal([(Today.AddDays(-7), false), (Today, true)], evenings.Select(e => (e.On, e.Settled)));
    }

    [Fact]
    public void Marks_that_replace_each_other_in_a_circle_hide_nothing() =>
        Assert.Equal(2, Assert.Single(Fold(About(1, MarkKind.Corrected, 2, SeenWord.Good), About(2, MarkKind.Corrected, 1, SeenWord.Good))).Seen.Count);

    [Fact]
    public void A_mark_of_another_kind_or_two_of_one_id_are_refused()
    {
        Assert.Throws<ArgumentException>(() => FoldSightings.Fold([Word(1, SeenWord.Good) with { Kind = MarkKind.Present }]));
        Assert.Throws<ArgumentException>(() => FoldSightings.Fold([Word(1, SeenWord.Good) with { Word = null }]));
        Assert.Throws<ArgumentException>(() => FoldSightings.Fold([Word(1, SeenWord.Good), Word(1, SeenWord.NotYet)]));
        Assert.Throws<ArgumentException>(() => FoldSightings.Fold([About(1, MarkKind.Corrected, 1) with { Replaces = null }]));
    }

    private static readonly Gen<SightingMark[]> Any =
        Gen.Select(Gen.Int[0, 9], Gen.Int[1, 3], Gen.Int[1, 8], Gen.Int[1, 3], Gen.Int[1, 10], Gen.Int[0, 3], Gen.Bool).Array[0, 9].Select(list =>
            list.Select((t, i) =>
            {
                var kind = t.Item1 switch { < 5 => MarkKind.Sighting, 5 => MarkKind.Cleared, 6 => MarkKind.Confirmed, 7 => MarkKind.Words, _ => MarkKind.Corrected };
                SeenWord? word = kind is MarkKind.Cleared or MarkKind.Confirmed || (kind == MarkKind.Corrected && t.Item6 == 0) ? null : (SeenWord)t.Item4;
                MarkId? about = kind is MarkKind.Cleared or MarkKind.Confirmed or MarkKind.Corrected || t.Item5 < 3 ? Ids.Mark(t.Item5) : null;
                return new SightingMark(Ids.Mark(i + 1), Ids.Device(t.Item2), t.Item3, Today.AddDays(t.Item6 / 2), kind, word, t.Item5 == 9, about, null, t.Item7);
            }).ToArray());

    [Fact]
    public void Every_order_of_arrival_gives_the_same_evenings() =>
        Gen.Select(Any, Gen.Int[0, int.MaxValue]).Sample((marks, seed) =>
            Same(FoldSightings.Fold(marks), FoldSightings.Fold([.. marks.OrderBy(m => HashCode.Combine(m.Id, seed)), .. marks.Take(2)])), iter: 3_000);

    [Fact]
    public void Every_fold_stands_before_the_check() =>
        Any.Sample(marks => FoldSightingsCheck.Objections(marks, FoldSightings.Fold(marks)).Count == 0, iter: 5_000);

    [Fact]
    public void A_word_more_of_somebody_without_the_right_never_changes_a_confirmed_evening() =>
        Gen.Select(Any, Gen.Int[1, 3], Gen.Int[1, 3]).Sample((marks, device, word) =>
        {
            var before = FoldSightings.Fold(marks);
            var after = FoldSightings.Fold([.. marks, Word(99, (SeenWord)word, device, confirms: false)]);
            return before.Where(e => e.Confirmed).All(e => after.Any(a => (a.On, a.Word, a.Confirmed, a.Settled) == (e.On, e.Word, e.Confirmed, e.Settled)));
        });

    [Fact]
    public void A_fold_that_is_wrong_is_objected_to() =>
        Any.Where(m => FoldSightings.Fold(m).Count > 0).Sample(marks =>
        {
            var good = FoldSightings.Fold(marks);
            var first = good[0];
            SeenEvening[] others =
            [
                first with { Word = first.Word == SeenWord.Good ? SeenWord.NotYet : SeenWord.Good }, first with { Confirmed = !first.Confirmed },
                first with { Seen = [.. first.Seen, SeenWord.Good] }, first with { On = first.On.AddDays(-90) },
            ];
            return others.All(o => FoldSightingsCheck.Objections(marks, [o, .. good.Skip(1)]).Count > 0)
                && FoldSightingsCheck.Objections(marks, [.. good.Skip(1)]).Count > 0;
        });

    private static bool Same(IReadOnlyList<SeenEvening> a, IReadOnlyList<SeenEvening> b) =>
        a.Count == b.Count && a.Zip(b).All(p => (p.First.On, p.First.Word, p.First.Confirmed, p.First.Settled) == (p.Second.On, p.Second.Word, p.Second.Confirmed, p.Second.Settled)
            && p.First.Seen.SequenceEqual(p.Second.Seen));
}
