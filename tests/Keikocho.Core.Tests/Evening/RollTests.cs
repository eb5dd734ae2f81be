using CsCheck;
using Keikocho.Core.Evening;
using Keikocho.Testing;
using static Keikocho.Core.Tests.Evening.Marks;

namespace Keikocho.Core.Tests.Evening;

public sealed class RollTests
{
    private static readonly AttendanceState Here = new(AttendanceWord.Present, At("17:30"), Counts: true);

    private static AttendanceState Left(string? at) =>
        new(AttendanceWord.Left, At("17:30"), at is null ? null : At(at), Counts: true);

    private static RollPerson Person(int id, params (string Start, AttendanceState State)[] lessons) =>
        new(Ids.Person(id), id >= 100, [.. lessons.Select(l => new RollLesson(At(l.Start), l.State))]);

    private static RollAnswer Take(string now, params RollPerson[] people)
    {
        var snapshot = new RollSnapshot(At(now), people);
        var answer = Roll.Take(snapshot);
        Assert.Empty(RollCheck.Objections(snapshot, answer));
        return answer;
    }

    [Fact, Statement(8)]
    public void The_roll_has_children_and_adults_in_register_order()
    {
        var answer = Take("18:00", Person(1, ("17:30", Here)), Person(100, ("17:30", Here)), Person(2, ("17:30", AttendanceState.Untouched)));
        Assert.Equal([Ids.Person(1), Ids.Person(100)], answer.Here.Select(p => p.Person));
        Assert.Equal((1, 1, 1), (answer.ChildrenHere, answer.AdultsHere, answer.NotMarked));
        Assert.Equal(
            "At 18:00 1 child and 1 adult of 3 people are on the premises; 0 have left. Nobody has marked 1 of the 3: look for them too.",
            answer.Reasons[0].Sentence);
    }

    [Fact, Statement(9)]
    public void A_child_collected_early_is_not_on_the_roll()
    {
        var answer = Take("18:30", Person(1, ("17:30", Left("18:15"))), Person(2, ("17:30", Here)));
        Assert.Equal([Ids.Person(2)], answer.Here.Select(p => p.Person));
        Assert.Equal(At("18:15"), Assert.Single(answer.Gone).At);
        Assert.Equal("Left the 17:30 lesson at 18:15.", answer.Gone[0].Because.Sentence);
    }

    [Fact]
    public void Left_at_an_unknown_time_is_gone() => Assert.Empty(Take("18:30", Person(1, ("17:30", Left(null)))).Here);

    [Fact]
    public void Left_one_lesson_and_here_at_a_later_one_is_on_the_roll()
    {
        var answer = Take("19:10", Person(1, ("17:30", Left("18:45")), ("19:00", Here with { Arrived = At("19:00") })));
        Assert.Equal("Left the 17:30 lesson at 18:45, but marked here at the 19:00 lesson.", Assert.Single(answer.Here).Because.Sentence);
        Assert.Empty(answer.Gone);
    }

    [Fact]
    public void Left_the_later_lesson_has_gone_though_the_earlier_was_never_closed() =>
        Assert.Empty(Take("20:30", Person(1, ("17:30", Here), ("19:00", Left("20:15")))).Here);

    [Fact]
    public void Here_after_the_leaving_of_a_later_lesson_is_on_the_roll() =>
        Assert.Single(Take("20:30", Person(1, ("17:30", Here with { Arrived = At("20:20") }), ("19:00", Left("20:15")))).Here);

    [Fact]
    public void A_leaving_still_to_come_does_not_hold_yet()
    {
        Assert.Equal(
            "The leaving is marked for 18:15, which is still to come.",
            Assert.Single(Take("18:00", Person(1, ("17:30", Left("18:15")))).Here).Because.Sentence);
        Assert.Empty(Take("18:15", Person(1, ("17:30", Left("18:15")))).Here);
    }

    [Fact]
    public void One_person_twice_is_refused() =>
        Assert.Throws<ArgumentException>(() => Take("18:00", Person(1, ("17:30", Here)), Person(1, ("17:30", Here))));

    private static readonly Gen<RollSnapshot> AnyEvening =
        Gen.Select(
            Gen.Int[0, 150],
            Gen.Select(Gen.Int[0, 4], Gen.Int[-1, 140], Gen.Int[-1, 150], Gen.Int[0, 2]).Array[0, 3].Array[0, 6],
            (now, people) => new RollSnapshot(
                At("17:30").AddMinutes(now),
                [.. people.Select((lessons, i) => new RollPerson(Ids.Person(i), i % 3 == 0, [.. lessons.Select(l => new RollLesson(
                    At("17:30").AddMinutes(45 * l.Item4),
                    new AttendanceState(
                        (AttendanceWord)l.Item1,
                        l.Item2 < 0 ? null : At("17:30").AddMinutes(l.Item2),
                        l.Item3 < 0 || l.Item1 != 2 ? null : At("17:30").AddMinutes(l.Item3))))]))]));

    [Fact]
    public void Every_roll_stands_before_the_check() =>
        AnyEvening.Sample(evening => RollCheck.Objections(evening, Roll.Take(evening)).Count == 0);

    [Fact]
    public void A_roll_with_one_person_too_few_is_objected_to() =>
        AnyEvening.Where(e => Roll.Take(e).Here.Count > 0).Sample(evening =>
        {
            var answer = Roll.Take(evening);
            return RollCheck.Objections(evening, answer with { Here = [.. answer.Here.Skip(1)] }).Count > 0;
        });
}
