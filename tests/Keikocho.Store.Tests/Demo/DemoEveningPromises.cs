using Keikocho.Core.Evening;
using Keikocho.Core.Safety;
using Keikocho.Store.Kernel;
using Keikocho.Store.Safety;

namespace Keikocho.Store.Tests.Demo;

/// <summary>What the demo's evenings left behind: showings, pairs, wishes, knocks, a pillar.</summary>
public sealed class DemoEveningPromises
{
    private static void Always(Action<Made> claim)
    {
        foreach (var made in Made.Samples) claim(made);
    }

    [Fact]
    public void Each_end_worked_on_something_at_every_lesson_of_this_term_and_the_one_before() => Always(made =>
    {
        var kept = made.Registers.Select(r => r.Lesson).Where(l => l.ProgrammeId == made.Rows.Programmes[0].Id && l.ClosureId is null && l.Date >= made.Rows.Terms[^2].From).ToList();
        var shown = made.Rows.Showings.ToLookup(s => (s.LessonId, s.End));
        Assert.All(kept, l => Assert.All(new[] { 0, 1 }, end => Assert.Equal([1, 2], shown[(l.Id, end)].Select(s => s.Slot).Order())));
        Assert.All(made.Rows.Showings, s => Assert.True(s.MadeAt.UtcDateTime < made.Today.ToDateTime(TimeOnly.MinValue)));
        Assert.All(made.Rows.Showings, s => Assert.Contains(made.Rows.Items, i => i.Id == s.ItemId));
    });

    [Fact]
    public void Pairs_of_the_last_eight_lessons_were_there_and_nobody_is_in_two_of_one_round() => Always(made =>
    {
        var there = made.States.Where(s => s.Word is AttendanceWord.Present or AttendanceWord.Left).Select(s => (s.LessonId, s.PersonId)).ToHashSet();
        Assert.Equal(8, made.Rows.Togethers.Select(t => t.LessonId).Distinct().Count());
        Assert.All(made.Rows.Togethers, t => Assert.True(there.Contains((t.LessonId, t.OneId)) && there.Contains((t.LessonId, t.OtherId)) && t.OneId.CompareTo(t.OtherId) < 0));
        Assert.All(made.Rows.Togethers.GroupBy(t => t.LessonId), l => Assert.Distinct(l.SelectMany(t => new[] { t.OneId, t.OtherId })));
    });

    [Fact]
    public void One_knock_was_recovered_from_by_the_rule_and_one_child_is_still_off_the_mat() => Always(made =>
    {
        Assert.Equal(2, made.Rows.Knocks.Count);
        Assert.True(Assert.Single(made.Rows.NearMisses).On < made.Today);
        Assert.All(made.Rows.Knocks, k =>
        {
            var mark = Assert.Single(made.Registers.SelectMany(r => r.Marks), m => m.Id == k.Id);
            Assert.Equal((MarkKind.Knock, k.PersonId, k.LessonId, k.Activity), (mark.Kind, mark.PersonId, mark.LessonId, mark.Code));
            // The slip went home the same evening, and the child came to nothing while it was off the mat.
            Assert.Contains(made.Rows.KnockLines, l => l.KnockId == k.Id && l.Kind == KnockLine.HandedOver && DateOnly.FromDateTime(l.MadeAt.UtcDateTime) == k.On);
            var off = made.Rows.StandDowns.Single(s => s.Id == KnockStandDowns.OffTheMat(k.Id));
            Assert.DoesNotContain(made.Registers.Where(r => r.Lesson.Date > k.On && !(r.Lesson.Date >= off.LiftedOn)).SelectMany(r => r.Marks), m => m.PersonId == k.PersonId && m.Kind is MarkKind.Present or MarkKind.Fall or MarkKind.Sighting);
        });
        foreach (var knock in made.Rows.Knocks)
        {
            var lines = made.Rows.KnockLines.Where(l => l.KnockId == knock.Id)
                .Select(l => new HeldKnockLine(l.Id, l.KnockId, l.Kind, l.On, Seal.Open(l.Words), l.ById, l.MadeAt));
            var held = new HeldKnock(knock.Id, knock.PersonId, knock.LessonId, knock.On, (KnockActivity)knock.Activity, false, null, knock.MadeAt, [.. lines]);
            var off = made.Rows.StandDowns.Single(s => s.Id == KnockStandDowns.OffTheMat(knock.Id));
            var day = off.LiftedOn ?? made.Today;
            var before = new HeldStandDown(off.Id, off.PersonId, (StandDownScope)off.Scope, off.From, null, null, off.ById, off.MadeAt, null, null, null, null);
            var answer = HeadKnock.Reckon(KnockQuestion.Of([held], [before], day, new KnockRule(), [day], [], _ => "Ruth")!);
            Assert.Equal(off.LiftedOn is not null, answer.FallsAndContact <= day && answer.Advice is not null);
        }
    });

    [Fact]
    public void One_wish_is_apart_one_together_and_a_pillar_stands_at_the_first_mat() => Always(made =>
    {
        Assert.Single(made.Rows.KeepAparts);
        var wish = Assert.Single(made.Rows.KeepTogethers);
        Assert.All(new[] { wish.FirstId, wish.SecondId }, id => Assert.Contains(made.Now(made.Juniors), e => e.PersonId == id));
        Assert.Equal("Pillar", Assert.Single(made.Rows.Obstacles).Name);
    });
}
