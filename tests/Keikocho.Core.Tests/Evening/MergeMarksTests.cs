using CsCheck;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Testing;

namespace Keikocho.Core.Tests.Evening;

public sealed class MergeMarksTests
{
    private static readonly DateOnly Tuesday = new(2026, 3, 3);
    private static readonly ItemId Throw = new(new Guid(6, 0, 0x7000, 0x80, 0, 0, 0, 0, 0, 0, 1));

    private static readonly MergeLesson[] Lessons =
    [
        new(Ids.Lesson(1), Tuesday, Marks.Times), new(Ids.Lesson(2), Tuesday.AddDays(2), Marks.Times),
    ];

    // Two children, then an instructor and a junior leader.
    private static readonly MergePerson[] People =
    [
        new(Ids.Person(1), "Ada"), new(Ids.Person(2), "Ben"), new(Ids.Person(8), "Anna", true), new(Ids.Person(9), "Leo"),
    ];

    private static TabletMark Mark(int id, int tablet, MarkKind kind, int child = 1, int by = 8, int lesson = 1, string made = "2026-03-03T18:05:00+00:00") => new(
        Ids.Mark(id), Ids.Device(tablet), id, Ids.Lesson(lesson), Ids.Person(child), Ids.Person(by), kind,
        DateTimeOffset.Parse(made, System.Globalization.CultureInfo.InvariantCulture));

    private static TabletMark Fall(int id, int tablet, bool clean, int stage = 3) =>
        Mark(id, tablet, MarkKind.Fall) with { Fall = new FallShown(FallDirection.Back, FallSide.None, stage, clean) };

    private static MergeResult Merge(params TabletMark[] marks)
    {
        var snapshot = new MergeSnapshot(Lessons, People, marks);
        var answer = MergeMarks.Merge(snapshot);
        Assert.Empty(MergeMarksCheck.Objections(snapshot, answer));
        return answer;
    }

    [Fact, Statement(85)]
    public void Two_tablets_differ_on_a_fall_the_worse_stands_and_both_are_shown()
    {
        var answer = Merge(Fall(1, 1, clean: true), Fall(2, 2, clean: false));
        var evening = Assert.Single(answer.Falls);
        Assert.False(evening.IsClean);
        Assert.Equal([true, false], evening.Seen.Select(f => f.Clean));
        var clash = Assert.Single(answer.Clashes);
        Assert.Equal(["tablet 1, Anna: stage 3 (standing) clean", "tablet 2, Anna: stage 3 (standing) head touched"], clash.Both);
        Assert.Equal("Head touched stands: the evening is not clean backward, whoever tapped first.", clash.Because.Sentence);
    }

    [Fact, Statement(96)]
    public void A_tablet_a_day_wrong_has_its_marks_on_the_evening_that_it_joined()
    {
        var answer = Merge(Mark(1, 1, MarkKind.Present, made: "2026-03-02T18:05:00+00:00") with { ReceivedAt = new DateTimeOffset(2026, 3, 4, 9, 0, 0, TimeSpan.Zero) });
        var line = Assert.Single(answer.Register);
        Assert.Equal((Tuesday, AttendanceWord.Present), (line.On, line.State.Word));
        Assert.Contains(answer.Reasons, r => r.Sentence == "By the clock of tablet 1, 1 mark is of another day; the evening that it joined holds, no clock does.");
    }

    [Theory]
    [InlineData(MarkKind.Present, MarkKind.Absent, AttendanceWord.Present, true)]
    [InlineData(MarkKind.Left, MarkKind.Present, AttendanceWord.Left, false)]
    [InlineData(MarkKind.Present, MarkKind.Excused, AttendanceWord.Present, true)]
    [InlineData(MarkKind.Excused, MarkKind.Absent, AttendanceWord.Excused, false)]
    public void Present_beats_absent_and_left_stands_after_present(MarkKind one, MarkKind two, AttendanceWord word, bool clash)
    {
        var answer = Merge(Mark(1, 1, one), Mark(2, 2, two));
        Assert.Equal(word, Assert.Single(answer.Register).State.Word);
        Assert.Equal(clash ? 1 : 0, answer.Clashes.Count);
    }

    [Fact]
    public void One_item_seen_by_two_on_one_evening_is_one_evening()
    {
        var seen = Mark(1, 1, MarkKind.Sighting) with { Item = Throw, Word = SeenWord.Good };
        var answer = Merge(seen, seen with { Id = Ids.Mark(2), Device = Ids.Device(2), Sequence = 2 });
        Assert.Single(Assert.Single(answer.Sightings).Evenings);
        Assert.Empty(answer.Clashes);
    }

    [Fact]
    public void Good_against_not_yet_counts_as_nothing_until_it_is_settled()
    {
        TabletMark[] two =
        [
            Mark(1, 1, MarkKind.Sighting) with { Item = Throw, Word = SeenWord.Good }, Mark(2, 2, MarkKind.Sighting) with { Item = Throw, Word = SeenWord.NotYet },
        ];
        Assert.Equal(["tablet 1, Anna: good", "tablet 2, Anna: not yet"], Assert.Single(Merge(two).Clashes).Both);
        Assert.Empty(Merge([.. two, Mark(3, 1, MarkKind.Corrected) with { Word = SeenWord.Prompted, Replaces = Ids.Mark(2) }]).Clashes);
    }

    [Fact]
    public void One_tablet_does_not_take_back_what_another_saw() =>
        Assert.Single(Merge(Fall(1, 1, clean: false), Mark(2, 2, MarkKind.Cleared) with { Replaces = Ids.Mark(1) }).Falls);

    [Fact]
    public void A_mark_that_comes_twice_counts_once()
    {
        var mark = Mark(1, 1, MarkKind.Present);
        var answer = Merge(mark, mark with { ReceivedAt = DateTimeOffset.UnixEpoch });
        Assert.Equal((1, 1), (answer.Kept, answer.Repeats));
    }

    [Fact]
    public void Knocks_are_never_merged() =>
        Assert.Equal(2, Merge(Mark(1, 1, MarkKind.Knock), Mark(2, 2, MarkKind.Knock)).Knocks.Count);

    [Theory]
    [InlineData(3, 1, "is of a lesson that is not among the lessons; add it.")]
    [InlineData(1, 7, "names somebody who is not among the people; add them.")]
    public void What_is_not_known_is_said(int lesson, int child, string sentence) =>
        Assert.Contains(sentence, Assert.Throws<ArgumentException>(() => Merge(Mark(1, 1, MarkKind.Present, child, lesson: lesson))).Message, StringComparison.Ordinal);

    [Fact]
    public void A_merge_that_is_wrong_is_found()
    {
        var snapshot = new MergeSnapshot(Lessons, People, [Fall(1, 1, clean: true), Fall(2, 2, clean: false)]);
        var answer = MergeMarks.Merge(snapshot);
        Assert.Contains("The worse stands on a fall.", MergeMarksCheck.Objections(snapshot, answer with { Falls = [answer.Falls[0] with { IsClean = true }] }));
        Assert.Contains("Tablets that differ on a fall are shown, both.", MergeMarksCheck.Objections(snapshot, answer with { Clashes = [] }));
    }

    private static readonly MarkKind[] Kinds =
    [
        MarkKind.Present, MarkKind.Left, MarkKind.Absent, MarkKind.Excused, MarkKind.Sighting, MarkKind.Fall, MarkKind.Cleared, MarkKind.Corrected, MarkKind.Confirmed, MarkKind.Knock,
    ];

    /// <summary>Up to a dozen marks of three tablets, two children, two evenings, an instructor and a leader, that take one another back at random.</summary>
    private static readonly Gen<TabletMark[]> Any =
        Gen.Select(Gen.Int[1, 3], Gen.Int[0, Kinds.Length - 1].Select(i => Kinds[i]), Gen.Int[1, 2], Gen.Int[8, 9], Gen.Int[1, 2], Gen.Int[1, 3], Gen.Int[0, 13], Gen.Bool).Array[1, 12]
            .Select(all => all.Select((draw, i) =>
            {
                var (tablet, kind, child, by, lesson, number, replaces, clean) = draw;
                var mark = Mark(i + 1, tablet, kind, child, by, lesson) with
                {
                    At = kind is MarkKind.Present or MarkKind.Left ? new TimeOnly(17, 30).AddMinutes(number * 20) : null,
                    Item = kind == MarkKind.Sighting ? Throw : null,
                    Word = kind == MarkKind.Sighting ? (SeenWord)number : null,
                    Fall = kind == MarkKind.Fall ? new FallShown(FallDirection.Back, FallSide.None, number, clean) : null,
                    Replaces = kind is MarkKind.Cleared or MarkKind.Corrected or MarkKind.Confirmed ? Ids.Mark(Math.Max(1, replaces)) : null,
                };
                if (kind != MarkKind.Corrected) return mark;
                // A correction says itself what it is about.
                return (i % 3) switch
                {
                    0 => mark with { CorrectedTo = MarkKind.Absent },
                    1 => mark with { Item = Throw, Word = SeenWord.Prompted },
                    _ => mark with { Fall = new FallShown(FallDirection.Back, FallSide.None, 2, clean) },
                };
            }).ToArray());

    [Fact]
    public void Any_marks_have_a_merge_that_the_check_accepts() => Any.Sample(
        marks =>
        {
            var snapshot = new MergeSnapshot(Lessons, People, marks);
            return MergeMarksCheck.Objections(snapshot, MergeMarks.Merge(snapshot)).Count == 0;
        },
        iter: 2_000);

    [Fact]
    public void Any_order_of_arrival_with_repeats_and_wrong_clocks_gives_the_same_answer() =>
        Gen.Select(Any, Gen.Int[0, 1_000_000]).Sample(
            (marks, seed) =>
            {
                var random = new Random(seed);
                TabletMark[] other = [.. marks.Concat(marks.Where(_ => random.Next(3) == 0)).Select(m => m with { ReceivedAt = DateTimeOffset.UnixEpoch.AddHours(random.Next(9_999)) })];
                random.Shuffle(other);
                // A clock is wrong for a whole tablet.
                var off = Enumerable.Range(0, 4).Select(_ => TimeSpan.FromMinutes(random.Next(-5_000, 5_000))).ToArray();
                other = [.. other.Select(m => m with { MadeAt = m.MadeAt + off[m.Device.Value.ToByteArray()[15]] })];
                return Said(marks) == Said(other);
            },
            iter: 2_000);

    private static string Said(TabletMark[] marks)
    {
        var answer = MergeMarks.Merge(new MergeSnapshot(Lessons, People, marks));
        return SumJson.Write(new { answer.Kept, answer.Register, answer.Sightings, answer.Falls, answer.Knocks, answer.Clashes });
    }
}
