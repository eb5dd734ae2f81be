using Keikocho.Core.Evening;
using Keikocho.Core.Safety;
using Keikocho.Store.Keeping;
using Keikocho.Store.Marks;
using Keikocho.Testing;

namespace Keikocho.Store.Tests.Marks;

/// <summary>What was seen is stored, folded, confirmed, corrected and taken back the same on both engines.</summary>
public abstract class EvidenceSpecification(StoreHost host) : StoreSpecification(host)
{
    private static readonly DateOnly Today = EvidenceClub.Today;

    [Fact]
    public async Task The_worked_example_of_the_fall_gate_is_shut_after_a_touched_head_until_two_clean_evenings()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        foreach (var (day, clean) in new[] { (3, true), (10, true), (17, false), (19, true) })
            Assert.Equal((EvidenceOutcome.Stored, 1, 0), Parts(await club.FallAsync(day, clean)));
        var standing = club.Gates().Of(EvidenceClub.Back).Stages[2];
        Assert.Equal((GateState.Shut, 1), (standing.State, standing.CleanEvenings));
        await club.FallAsync(24, clean: true);
        Assert.Equal(GateState.Open, club.Gates().Of(EvidenceClub.Back).Stages[2].State);
        await club.SoundAsync();
    }

    [Fact, Statement(20)]
    public async Task A_leaders_fall_opens_nothing_until_somebody_with_the_right_confirms_it()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        Assert.Equal((EvidenceOutcome.Stored, 1, 1), Parts(await club.FallAsync(17, true, by: club.Leader, device: club.Tablet)));
        Assert.Equal((EvidenceOutcome.Stored, 1, 1), Parts(await club.FallAsync(19, true, by: club.Leader, device: club.Tablet)));
        Assert.Equal(GateState.Shut, club.Gates().Of(EvidenceClub.Back).Stages[2].State);
        Assert.Equal(2, club.Evidence().Suggestions);
        var waiting = club.Marks().Select(m => m.Id).ToList();
        Assert.Equal(EvidenceOutcome.NoRight, (await club.Sightings.ConfirmAsync(club.NewId(), waiting, Today, club.Leader, club.Tablet, Cancel)).Outcome);
        Assert.Equal(EvidenceOutcome.NoRight, (await club.Sightings.ConfirmAsync(club.NewId(), waiting, Today, club.Helper, club.Tablet, Cancel)).Outcome);
        Assert.Equal(GateState.Shut, club.Gates().Of(EvidenceClub.Back).Stages[2].State);
        var command = club.NewId();
        Assert.Equal((EvidenceOutcome.Stored, 2), ((await club.Sightings.ConfirmAsync(command, waiting, Today, club.Head, club.Device, Cancel)) is var a ? a.Outcome : default, a.Marks));
        Assert.Equal(EvidenceOutcome.AlreadyStored, (await club.Sightings.ConfirmAsync(command, waiting, Today, club.Head, club.Device, Cancel)).Outcome);
        Assert.Equal(GateState.Open, club.Gates().Of(EvidenceClub.Back).Stages[2].State);
        Assert.Equal(4, club.Marks().Count);
        using (var db = club.Engine.OpenDb()) Assert.Equal(1, db.Trail.Count(t => t.Kind == TrailKind.SightingChanged && t.SubjectId == club.Wren));
        await club.SoundAsync();
    }

    [Fact]
    public async Task A_leaders_touched_head_shuts_at_once()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        await club.FallAsync(17, true);
        await club.FallAsync(19, true);
        Assert.Equal(GateState.Open, club.Gates().Of(EvidenceClub.Back).Stages[2].State);
        await club.FallAsync(24, false, by: club.Leader, device: club.Tablet);
        Assert.All(club.Gates().Of(EvidenceClub.Back).Stages, s => Assert.Equal((GateState.Shut, false), (s.State, s.MayBeTried)));
    }

    [Fact]
    public async Task A_leader_does_not_undo_a_touched_head_that_an_instructor_confirmed()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        await club.FallAsync(24, false, by: club.Leader, device: club.Tablet);
        var touch = Assert.Single(club.Marks());
        club.Later();
        Assert.Equal(EvidenceOutcome.Stored, (await club.Sightings.ConfirmAsync(club.NewId(), [touch.Id], Today, club.Head, club.Device, Cancel)).Outcome);
        club.Later();
        Assert.Empty(await club.Sightings.UndoAsync(club.NewId(), club.Lesson(24), Today, club.Leader, club.Tablet, Cancel));
        Assert.Equal(EvidenceOutcome.NoRight, (await club.Sightings.CorrectAsync(club.NewId(), touch.Id, 0, Today, club.Leader, club.Tablet, Cancel)).Outcome);
        Assert.Equal((false, true), (Assert.Single(club.Evidence().Falls).Clean, Assert.Single(club.Evidence().Falls).Confirmed));
        Assert.Equal([club.Wren], await club.Sightings.UndoAsync(club.NewId(), club.Lesson(24), Today, club.Head, club.Tablet, Cancel));
        Assert.Empty(club.Evidence().Falls);
        await club.SoundAsync();
    }

    [Fact]
    public async Task A_mark_of_a_lesson_to_come_is_refused()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        Assert.Equal(EvidenceOutcome.Unknown, (await club.FallAsync(26, true)).Outcome);
        var place = EvidenceCode.OfFall(EvidenceClub.Back, 3, clean: true);
        Assert.Equal(EvidenceOutcome.Unknown, (await club.Sightings.SetAsync(
            club.NewId(), club.Lesson(26), [new SeenCell(club.Wren, MarkCode.Falls, MarkKind.Fall, place, place)], Today, club.Head, club.Device, Cancel)).Outcome);
        Assert.Empty(club.Marks());
    }

    [Fact]
    public async Task The_same_mark_sent_twice_is_stored_once()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        var tap = SeenTap.OfItem(club.NewId(), club.Lesson(17), club.Wren, club.Items[0], SeenWord.Good);
        Assert.Equal(EvidenceOutcome.Stored, (await club.Sightings.AddAsync([tap, tap], Today, club.Head, club.Device, Cancel)).Outcome);
        Assert.Equal(EvidenceOutcome.AlreadyStored, (await club.Sightings.AddAsync([tap with { Code = 3 }], Today, club.Head, club.Device, Cancel)).Outcome);
        Assert.Single(club.Marks());
        Assert.Equal([SeenWord.Good], club.Evidence().Items[club.Items[0]].Select(e => e.Word!.Value));
    }

    [Fact]
    public async Task One_bad_mark_among_many_changes_nothing()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        var good = SeenTap.OfItem(club.NewId(), club.Lesson(17), club.Wren, club.Items[0], SeenWord.Good);
        foreach (var bad in new[]
        {
            good with { Id = club.NewId(), LessonId = club.NewId() },
            good with { Id = club.NewId(), PersonId = club.NewId() },
            good with { Id = club.NewId(), ItemId = club.NewId() },
            good with { Id = club.NewId(), Code = 9 },
            good with { Id = club.NewId(), ItemId = MarkCode.Falls },
            good with { Id = club.NewId(), Kind = MarkKind.Present },
            SeenTap.OfFall(club.NewId(), club.Lesson(17), club.Wren, EvidenceClub.Back, 7, true),
            SeenTap.OfFall(club.NewId(), club.Lesson(17), club.Wren, new FallWay(FallDirection.Back, FallSide.Left), 3, true),
            SeenTap.OfFall(club.NewId(), club.Lesson(17), club.Wren, new FallWay(FallDirection.Rolling, FallSide.None), 3, true),
        })
            Assert.Equal(EvidenceOutcome.Unknown, (await club.Sightings.AddAsync([good, bad], Today, club.Head, club.Device, Cancel)).Outcome);
        Assert.Empty(club.Marks());
        await club.SoundAsync();
    }

    [Fact]
    public async Task A_grid_is_stored_as_one_corrects_what_it_changes_and_is_undone_as_one()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        var lesson = club.Lesson(19);
        SeenCell Cell(Guid child, int item, SeenWord? word) => new(child, club.Items[item], item == 2 ? MarkKind.Words : MarkKind.Sighting, word is { } some ? EvidenceCode.OfWord(some) : 0);
        SeenCell[] cells = [Cell(club.Wren, 0, SeenWord.Good), Cell(club.Wren, 1, SeenWord.Prompted), Cell(club.Bram, 0, SeenWord.Good), Cell(club.Bram, 2, SeenWord.NotYet)];
        var command = club.NewId();
        Assert.Equal((EvidenceOutcome.Stored, 4, 0), Parts(await club.Sightings.SetAsync(command, lesson, cells, Today, club.Head, club.Device, Cancel)));
        Assert.Equal(EvidenceOutcome.AlreadyStored, (await club.Sightings.SetAsync(command, lesson, cells, Today, club.Head, club.Device, Cancel)).Outcome);
        club.Later();
        Assert.Equal((EvidenceOutcome.Stored, 2, 0), Parts(await club.Sightings.SetAsync(
            club.NewId(), lesson, [Cell(club.Wren, 0, SeenWord.NotYet), Cell(club.Wren, 1, null), Cell(club.Bram, 0, SeenWord.Good)], Today, club.Assistant, club.Tablet, Cancel)));
        Assert.Equal([SeenWord.NotYet], club.Evidence().Items[club.Items[0]].Select(e => e.Word!.Value));
        Assert.False(club.Evidence().Items.ContainsKey(club.Items[1]));
        await club.SoundAsync();

        var undo = club.NewId();
        Assert.Equal([club.Wren], await club.Sightings.UndoAsync(undo, lesson, Today, club.Assistant, club.Tablet, Cancel));
        Assert.Empty(await club.Sightings.UndoAsync(undo, lesson, Today, club.Assistant, club.Tablet, Cancel));
        Assert.Equal([SeenWord.Good], club.Evidence().Items[club.Items[0]].Select(e => e.Word!.Value));
        Assert.Equal([SeenWord.Prompted], club.Evidence().Items[club.Items[1]].Select(e => e.Word!.Value));
        Assert.Equal([club.Wren, club.Bram], await club.Sightings.UndoAsync(club.NewId(), lesson, Today, club.Head, club.Device, Cancel));
        Assert.Empty(club.Evidence().Items);
        Assert.Empty(await club.Sightings.UndoAsync(club.NewId(), lesson, Today, club.Head, club.Device, Cancel));
        using (var db = club.Engine.OpenDb()) Assert.False(db.ItemStates.Any());
        await club.SoundAsync();
    }

    [Fact]
    public async Task Two_adults_who_disagree_count_as_nothing_until_one_of_them_settles_it()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        await club.SeeAsync(17, SeenWord.Good);
        await club.SeeAsync(17, SeenWord.NotYet, by: club.Assistant, device: club.Tablet);
        var evening = Assert.Single(club.Evidence().Items[club.Items[0]]);
        Assert.Null(evening.Word);
        Assert.Equal(2, evening.Seen.Count);
        club.Later();
        await club.Sightings.SetAsync(club.NewId(), club.Lesson(17), [new SeenCell(club.Wren, club.Items[0], MarkKind.Sighting, EvidenceCode.OfWord(SeenWord.Good))], Today, club.Head, club.Device, Cancel);
        Assert.Equal(SeenWord.Good, Assert.Single(club.Evidence().Items[club.Items[0]]).Word);
        await club.SoundAsync();
    }

    [Fact]
    public async Task Whoever_may_not_sign_off_changes_only_marks_of_their_own()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        await club.SeeAsync(17, SeenWord.NotYet);
        var heads = Assert.Single(club.Marks());
        Assert.Equal(EvidenceOutcome.NoRight, (await club.Sightings.CorrectAsync(club.NewId(), heads.Id, EvidenceCode.OfWord(SeenWord.Good), Today, club.Leader, club.Device, Cancel)).Outcome);
        club.Later();
        Assert.Equal((EvidenceOutcome.Stored, 1, 1), Parts(await club.Sightings.SetAsync(
            club.NewId(), club.Lesson(17), [new SeenCell(club.Wren, club.Items[0], MarkKind.Sighting, EvidenceCode.OfWord(SeenWord.Good))], Today, club.Leader, club.Device, Cancel)));
        Assert.Equal(SeenWord.NotYet, Assert.Single(club.Evidence().Items[club.Items[0]]).Word);
        var own = club.Marks().Single(m => m.ById == club.Leader);
        Assert.Equal(EvidenceOutcome.Stored, (await club.Sightings.CorrectAsync(club.NewId(), own.Id, 0, Today, club.Leader, club.Device, Cancel)).Outcome);
        Assert.Equal([SeenWord.NotYet], Assert.Single(club.Evidence().Items[club.Items[0]]).Seen);
        await club.SoundAsync();
    }

    [Fact]
    public async Task A_clean_fall_beside_a_touched_head_of_the_same_evening_takes_nothing_back()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        await club.FallAsync(19, false);
        club.Later();
        var place = EvidenceCode.OfFall(EvidenceClub.Back, 3, clean: true);
        await club.Sightings.SetAsync(club.NewId(), club.Lesson(19), [new SeenCell(club.Wren, MarkCode.Falls, MarkKind.Fall, place, place)], Today, club.Head, club.Device, Cancel);
        Assert.Equal([true, false], club.Evidence().Falls.Select(f => f.Clean).OrderDescending());
        Assert.Equal(0, club.Gates().Of(EvidenceClub.Back).Stages[2].CleanEvenings);
        // Marked by mistake: with trace, by somebody with the right.
        var wrong = club.Marks().Single(m => (m.Code & MarkCode.HeadTouched) != 0);
        Assert.Equal(EvidenceOutcome.NoRight, (await club.Sightings.CorrectAsync(club.NewId(), wrong.Id, 0, Today, club.Helper, club.Device, Cancel)).Outcome);
        Assert.Equal(EvidenceOutcome.Stored, (await club.Sightings.CorrectAsync(club.NewId(), wrong.Id, 0, Today, club.Head, club.Tablet, Cancel)).Outcome);
        Assert.Equal([true], club.Evidence().Falls.Select(f => f.Clean));
        await club.SoundAsync();
    }

    [Fact]
    public async Task A_mark_of_a_file_without_a_hand_counts_for_items_and_never_for_falls()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        await club.Sightings.AddAsync(
            [SeenTap.OfItem(club.NewId(), club.Lesson(17), club.Wren, club.Items[0], SeenWord.Good), SeenTap.OfFall(club.NewId(), club.Lesson(17), club.Wren, EvidenceClub.Back, 3, true)],
            Today, null, club.Device, Cancel);
        Assert.True(Assert.Single(club.Evidence().Items[club.Items[0]]).Confirmed);
        Assert.False(Assert.Single(club.Evidence().Falls).Confirmed);
    }

    [Fact]
    public async Task The_right_is_that_of_the_day_and_stays_when_duties_change()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        await club.FallAsync(17, true, by: club.Assistant);
        await club.Writer.RunAsync(s => { s.Db.Duties.Single(d => d.PersonId == club.Assistant).To = new DateOnly(2026, 3, 18); s.Db.SaveChanges(); return true; }, Cancel);
        // A tablet that was without a network hands in a fall of the 17th, and one of the 19th, when the duty was over.
        await club.FallAsync(17, true, stage: 2, by: club.Assistant, device: club.Tablet);
        await club.FallAsync(19, true, by: club.Assistant, device: club.Tablet);
        Assert.Equal([true, true, false], club.Evidence().Falls.OrderBy(f => f.On).Select(f => f.Confirmed));
        await club.SoundAsync();
    }

    [Fact]
    public async Task Days_on_the_mat_are_lessons_attended()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        Assert.Equal([3, 5, 10, 12, 17, 19], club.Evidence().OnTheMat.Select(d => d.Day));
        using var reading = club.Engine.OpenReading();
        Assert.Equal([12, 17], EvidenceReader.Of(reading, [club.Wren, club.Bram], new DateOnly(2026, 3, 11), new DateOnly(2026, 3, 17))[club.Bram].OnTheMat.Select(d => d.Day));
        // Evidence whose days on the mat were cut says so: an absence before the cut is not in it.
        Assert.Equal(new DateOnly(2026, 3, 11), EvidenceReader.Of(reading, [club.Bram], new DateOnly(2026, 3, 11), Today)[club.Bram].MatCutAt);
        Assert.Null(club.Evidence().MatCutAt);
    }

    [Fact]
    public async Task An_agreed_way_holds_until_another_is_agreed_or_the_usual_one_comes_back()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        var id = club.NewId();
        for (var sent = 0; sent < 2; sent++) Assert.True(await club.Ways.AgreeAsync(id, club.Wren, club.Items[0], " sitting instead of standing ", Today.AddDays(-2), club.Head, club.Device, Cancel));
        Assert.Equal([(club.Items[0], "sitting instead of standing")], club.Evidence().Ways.Select(w => (w.ItemId, w.Wording)));
        Assert.True(await club.Ways.AgreeAsync(club.NewId(), club.Wren, club.Items[0], "with the left hand only", Today.AddDays(-1), club.Head, club.Device, Cancel));
        Assert.Equal(["with the left hand only"], club.Evidence().Ways.Select(w => w.Wording));
        Assert.True(await club.Ways.AgreeAsync(club.NewId(), club.Wren, club.Items[0], null, Today, club.Head, club.Device, Cancel));
        Assert.Empty(club.Evidence().Ways);
        Assert.False(await club.Ways.AgreeAsync(club.NewId(), club.Wren, club.NewId(), "x", Today, club.Head, club.Device, Cancel));
        Assert.False(await club.Ways.AgreeAsync(club.NewId(), club.NewId(), club.Items[0], "x", Today, club.Head, club.Device, Cancel));
        using var db = club.Engine.OpenDb();
        Assert.Equal((3, 3), (db.Adaptations.Count(), db.Trail.Count(t => t.Kind == TrailKind.AdaptationChanged)));
    }

    [Theory]
    [InlineData("UPDATE \"ItemStates\" SET \"Evenings\" = '20260317.3.3'", "is not what the marks say")]
    [InlineData("DELETE FROM \"ItemStates\"", "and no state")]
    [InlineData("UPDATE \"ItemStates\" SET \"PersonId\" = (SELECT \"PersonId\" FROM \"Duties\" LIMIT 1)", "has no mark behind it")]
    [InlineData("UPDATE \"FallStates\" SET \"Falls\" = '20260317.1.0.3c.0.1'", "is not what the marks say")]
    [InlineData("DELETE FROM \"FallStates\"", "There are marks of the falls of")]
    [InlineData("UPDATE \"FallStates\" SET \"PersonId\" = (SELECT \"PersonId\" FROM \"Duties\" LIMIT 1)", "has no mark behind it")]
    public async Task A_state_that_is_not_what_the_marks_say_is_found(string damage, string says)
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        await club.SeeAsync(17, SeenWord.Good);
        await club.FallAsync(19, false);
        await club.SoundAsync();
        Execute(club.Engine, damage);
        var report = await CheckClub.RunAsync(club.Engine, _ => new AttendanceRules(), cancel: Cancel);
        Assert.Contains(report.Problems, p => p.Part == CheckPart.States && p.Sentence.Contains(says, StringComparison.Ordinal));
        Assert.All(report.Problems, p => Assert.Equal(CheckPart.States, p.Part));
    }

    private static (EvidenceOutcome, int, int) Parts(EvidenceAnswer answer) => (answer.Outcome, answer.Marks, answer.Suggestions);
}

public sealed class EvidenceInSqlite() : EvidenceSpecification(new SqliteHost());

public sealed class EvidenceInPostgres(PostgresDatabase database) : EvidenceSpecification(new PostgresHost(database)), IClassFixture<PostgresDatabase>;
