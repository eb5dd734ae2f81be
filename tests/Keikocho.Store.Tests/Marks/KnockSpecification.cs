using Keikocho.Core.Evening;
using Keikocho.Core.Safety;
using Keikocho.Store.Club;
using Keikocho.Store.Keeping;
using Keikocho.Store.Kernel;
using Keikocho.Store.Marks;
using Keikocho.Store.Safety;
using Keikocho.Testing;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.Tests.Marks;

/// <summary>A knock takes a child off the mat, its record only grows, and its stand-down is lifted on the same terms on both engines.</summary>
public abstract class KnockSpecification(StoreHost host) : StoreSpecification(host)
{
    private static readonly DateOnly Today = EvidenceClub.Today;

    private static DateOnly March(int day) => new(2026, 3, day);

    private static async Task<Guid> KnockAsync(EvidenceClub club, int day = 3, Guid? child = null)
    {
        var id = club.NewId();
        Assert.Equal(KnockOutcome.Stored, await new KnockStore(club.Writer).MarkAsync(new NewKnock(id, club.Lesson(day), child ?? club.Wren, KnockActivity.Game), March(day), club.Head, club.Device, Cancel));
        return id;
    }

    private static async Task<KnockOutcome> AddAsync(EvidenceClub club, Guid knock, KnockLine kind, DateOnly? on, string? words, DateOnly? today = null, Guid? by = null)
    {
        club.Later();
        return await new KnockStore(club.Writer).AddAsync(new NewKnockLine(club.NewId(), knock, kind, on, words), today ?? Today, by ?? club.Head, club.Device, Cancel);
    }

    private static Task<StandDownOutcome> LiftAsync(EvidenceClub club, Guid standDown, DateOnly on, DateOnly? today = null) =>
        club.StandDowns.LiftAsync(standDown, club.Wren, club.Head, on, "letter seen", today ?? Today, club.Head, club.Device, Cancel);

    private static HeldKnock One(EvidenceClub club, Guid id)
    {
        using var reading = club.Engine.OpenReading();
        return KnockReader.One(reading, id)!;
    }

    [Fact, Statement(24)]
    public async Task A_knock_entered_on_the_laptop_takes_the_child_off_the_mat_and_undo_does_not_bring_it_back()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        var marks = new MarksStore(club.Writer);
        await marks.TapAsync(new Tap(club.NewId(), club.Device, null, club.Lesson(24), club.Wren, club.Head, DateTimeOffset.UnixEpoch, MarkKind.Present, null), Today, new AttendanceRules(), Cancel);
        var id = await KnockAsync(club, 24);
        var asked = new NewKnock(id, club.Lesson(24), club.Bram, KnockActivity.Falls);
        Assert.Equal(KnockOutcome.AlreadyStored, await new KnockStore(club.Writer).MarkAsync(asked, Today, club.Head, club.Device, Cancel));
        Assert.Equal(KnockOutcome.Unknown, await new KnockStore(club.Writer).MarkAsync(asked with { Id = club.NewId(), PersonId = club.NewId() }, Today, club.Head, club.Device, Cancel));
        Assert.Equal(KnockOutcome.NotSaid, await new KnockStore(club.Writer).MarkAsync(asked with { Id = club.NewId() }, Today.AddDays(-1), club.Head, club.Device, Cancel));

        bool OnTheMat() => StandDowns.Read(new StandDownsSnapshot(Today, [.. club.Evidence().StandDowns.Select(s => s.ToStandDown(_ => "Ruth"))])).MayBeOnTheMat;
        Assert.False(OnTheMat());
        Assert.Equal([club.Wren], await marks.UndoAsync(club.NewId(), club.Lesson(24), Today, new AttendanceRules(), club.Head, club.Device, Cancel));
        Assert.Empty(await marks.UndoAsync(club.NewId(), club.Lesson(24), Today, new AttendanceRules(), club.Head, club.Device, Cancel));
        Assert.False(OnTheMat());
        var held = One(club, id);
        Assert.Equal((club.Wren, KnockActivity.Game, (Guid?)club.Head, Today), (held.PersonId, held.Activity, held.ById, held.On));
        Assert.Equal(StandDownOutcome.KnockNotYet, await LiftAsync(club, KnockStandDowns.OffTheMat(id), Today));
        await club.SoundAsync();
    }

    [Fact, Statement(28)]
    public async Task Its_stand_down_is_lifted_only_when_the_day_has_come_and_advice_counts()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        var id = await KnockAsync(club);
        var off = KnockStandDowns.OffTheMat(id);
        Assert.Equal(StandDownOutcome.KnockNotYet, await LiftAsync(club, off, Today));
        Assert.Equal(KnockOutcome.Stored, await AddAsync(club, id, KnockLine.FreeFrom, March(9), null));
        Assert.Equal(StandDownOutcome.KnockNotYet, await LiftAsync(club, off, Today));
        Assert.Equal(KnockOutcome.Stored, await AddAsync(club, id, KnockLine.Advice, March(8), "Dr Hale"));
        Assert.Equal(StandDownOutcome.KnockNotYet, await LiftAsync(club, off, Today));
        Assert.Equal(KnockOutcome.Stored, await AddAsync(club, id, KnockLine.Advice, March(20), "Dr Hale"));
        // The day has not come, is said to have come before it did, or is still to come.
        Assert.Equal(StandDownOutcome.KnockNotYet, await LiftAsync(club, off, March(23), March(23)));
        Assert.Equal(StandDownOutcome.KnockNotYet, await LiftAsync(club, off, March(10)));
        Assert.Equal(StandDownOutcome.KnockNotYet, await LiftAsync(club, off, March(25)));
        Assert.Equal(StandDownOutcome.Stored, await LiftAsync(club, off, March(24)));
        Assert.Equal((DateOnly?)March(24), Assert.Single(club.Evidence().StandDowns).LiftedOn);
    }

    [Fact, Statement(28)]
    public async Task The_stricter_rule_that_a_club_has_set_holds_for_the_lifting()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        await new ClubStore(club.Writer).SetAsync("knock.alsoProtocol", "day-23", March(1), null, club.Head, club.Device, Cancel);
        var id = await KnockAsync(club);
        await AddAsync(club, id, KnockLine.FreeFrom, March(3), null);
        await AddAsync(club, id, KnockLine.Advice, March(20), "Dr Hale");
        Assert.Equal(StandDownOutcome.KnockNotYet, await LiftAsync(club, KnockStandDowns.OffTheMat(id), March(25), March(25)));
        Assert.Equal(StandDownOutcome.Stored, await LiftAsync(club, KnockStandDowns.OffTheMat(id), March(26), March(26)));
    }

    [Fact]
    public async Task A_stand_down_that_no_knock_brought_is_lifted_as_ever()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        await KnockAsync(club);
        var id = club.NewId();
        await club.StandDowns.EnterAsync(new NewStandDown(id, club.Wren, StandDownScope.NoContact, March(3), null, null), club.Head, club.Device, Cancel);
        Assert.Equal(StandDownOutcome.Stored, await LiftAsync(club, id, Today));
    }

    [Fact, Statement(27)]
    public async Task Symptoms_again_after_the_lifting_put_the_child_off_the_mat_again()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        var id = await KnockAsync(club);
        await AddAsync(club, id, KnockLine.FreeFrom, March(9), null);
        await AddAsync(club, id, KnockLine.Advice, March(20), "Dr Hale");
        Assert.Equal(StandDownOutcome.Stored, await LiftAsync(club, KnockStandDowns.OffTheMat(id), March(24)));
        Assert.Equal(KnockOutcome.Stored, await AddAsync(club, id, KnockLine.SymptomsAgain, March(24), null, by: club.Leader));
        var again = Assert.Single(club.Evidence().StandDowns, s => s.LiftedOn is null);
        Assert.Equal((StandDownScope.OffTheMat, Today), (again.Scope, again.From));
        Assert.Equal(KnockOutcome.Stored, await AddAsync(club, id, KnockLine.FreeFrom, March(25), null, March(25)));
        Assert.Equal(StandDownOutcome.KnockNotYet, await LiftAsync(club, again.Id, new DateOnly(2026, 4, 8), new DateOnly(2026, 4, 8)));
        Assert.Equal(KnockOutcome.Stored, await AddAsync(club, id, KnockLine.Advice, new DateOnly(2026, 4, 7), "Dr Hale", new DateOnly(2026, 4, 8)));
        Assert.Equal(StandDownOutcome.Stored, await LiftAsync(club, again.Id, new DateOnly(2026, 4, 8), new DateOnly(2026, 4, 8)));
    }

    [Fact, Statement(27)]
    public async Task A_further_knock_before_the_lifting_is_a_new_day_0_for_every_stand_down()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        var id = await KnockAsync(club);
        await AddAsync(club, id, KnockLine.FreeFrom, March(9), null);
        await AddAsync(club, id, KnockLine.Advice, March(20), "Dr Hale");
        var further = await KnockAsync(club, 19);
        foreach (var one in new[] { id, further })
            Assert.Equal(StandDownOutcome.KnockNotYet, await LiftAsync(club, KnockStandDowns.OffTheMat(one), March(24)));
    }

    [Fact]
    public async Task From_the_earliest_day_of_drills_no_contact_takes_the_place_of_off_the_mat_and_is_lifted_on_the_later_day()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        var store = new KnockStore(club.Writer);
        var id = await KnockAsync(club);
        await AddAsync(club, id, KnockLine.FreeFrom, March(9), null);
        Assert.Equal(KnockOutcome.NotYet, await store.EaseAsync(id, March(12), club.Head, club.Device, Cancel));
        await AddAsync(club, id, KnockLine.Advice, March(10), "Dr Hale");
        Assert.Equal(KnockOutcome.NotYet, await store.EaseAsync(id, March(11), club.Head, club.Device, Cancel));
        Assert.Equal(KnockOutcome.NoAdult, await store.EaseAsync(id, March(12), club.Leader, club.Device, Cancel));
        Assert.Equal(KnockOutcome.Stored, await store.EaseAsync(id, March(12), club.Head, club.Device, Cancel));
        Assert.Equal(KnockOutcome.Unknown, await store.EaseAsync(id, March(12), club.Head, club.Device, Cancel));
        var left = Assert.Single(club.Evidence().StandDowns, s => s.LiftedOn is null);
        Assert.Equal((StandDownScope.NoContact, March(12)), (left.Scope, left.From));
        Assert.Equal(StandDownOutcome.KnockNotYet, await LiftAsync(club, left.Id, March(23), March(23)));
        Assert.Equal(StandDownOutcome.Stored, await LiftAsync(club, left.Id, March(24)));
        using var reading = club.Engine.OpenReading();
        var knocks = KnockReader.OfPerson(reading, club.Wren);
        var question = KnockQuestion.Of(knocks, club.Evidence().StandDowns, Today, new KnockRule(), [], [], _ => "Ruth")!;
        Assert.Equal(new KnockLifting(March(24), "Ruth"), question.Lifted);
        Assert.All(HeadKnock.Reckon(question).Steps, s => Assert.False(s.IsShut));
    }

    [Fact, Statement(30)]
    public async Task A_saved_record_only_grows_and_every_line_has_its_name_and_time()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        var id = await KnockAsync(club);
        Assert.Equal(KnockOutcome.Stored, await AddAsync(club, id, KnockLine.Seen, null, "ran into another child, right side of the head"));
        Assert.Equal(KnockOutcome.Stored, await AddAsync(club, id, KnockLine.Added, null, "it was the left side", by: club.Assistant));
        var lines = One(club, id).Lines;
        Assert.Equal(["ran into another child, right side of the head", "it was the left side"], lines.Select(l => l.Words));
        Assert.Equal([club.Head, club.Assistant], lines.Select(l => l.ById));
        Assert.True(lines[0].MadeAt < lines[1].MadeAt);
        using (var db = club.Engine.OpenDb())
        {
            await Assert.ThrowsAnyAsync<Exception>(() => db.KnockLines.ExecuteUpdateAsync(c => c.SetProperty(l => l.Words, (Sealed<string>?)null), Cancel));
        }

        using (var db = club.Engine.OpenDb())
        {
            await Assert.ThrowsAnyAsync<Exception>(() => db.KnockLines.ExecuteDeleteAsync(Cancel));
            Assert.Equal([TrailKind.KnockMade, TrailKind.KnockLineAdded, TrailKind.KnockLineAdded], db.Trail.Where(t => t.SubjectId == id).OrderBy(t => t.Number).Select(t => t.Kind).ToList());
        }

        Assert.Equal(2, One(club, id).Lines.Length);
        await club.SoundAsync();
    }

    [Fact]
    public async Task A_line_without_its_words_or_its_day_is_refused_and_an_adult_stands_behind_what_opens()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        var id = await KnockAsync(club);
        foreach (var (kind, on, words) in new (KnockLine, DateOnly?, string?)[]
        {
            (KnockLine.Seen, null, " "), (KnockLine.HandedOver, null, null), (KnockLine.ToldByPhone, null, ""), (KnockLine.FreeFrom, null, "yes"),
            (KnockLine.FreeFrom, March(2), null), (KnockLine.FreeFrom, March(25), null), (KnockLine.Advice, March(9), " "), (KnockLine.Advice, null, "Dr Hale"),
            ((KnockLine)99, March(9), "x"), (KnockLine.Seen, null, new string('x', KnockStore.LongestLine + 1)),
        })
            Assert.Equal(KnockOutcome.NotSaid, await AddAsync(club, id, kind, on, words));
        foreach (var kind in new[] { KnockLine.Advice, KnockLine.FreeFrom, KnockLine.HandedOver, KnockLine.ToldByPhone })
            Assert.Equal(KnockOutcome.NoAdult, await AddAsync(club, id, kind, March(9), "Dr Hale", by: club.Leader));
        Assert.Equal(KnockOutcome.Unknown, await AddAsync(club, club.NewId(), KnockLine.Seen, null, "x"));
        Assert.Empty(One(club, id).Lines);
    }

    [Theory, Statement(25)]
    [InlineData(KnockLine.HandedOver)]
    [InlineData(KnockLine.ToldByPhone)]
    public async Task A_slip_is_open_until_it_was_handed_over_or_told_by_phone(KnockLine told)
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        var (one, other) = (await KnockAsync(club), await KnockAsync(club, 3, club.Bram));
        IReadOnlyList<KnockSlip> Open()
        {
            using var reading = club.Engine.OpenReading();
            return KnockSlips.OpenOf(reading, [club.Lesson(3), club.Lesson(5)]);
        }

        Assert.Equal(new[] { one, other }.Order(), Open().Select(s => s.KnockId).Order());
        await AddAsync(club, one, KnockLine.Seen, null, "bumped heads");
        Assert.Equal(2, Open().Count);
        await AddAsync(club, one, told, null, "his mother");
        Assert.Equal(new KnockSlip(other, club.Bram, club.Lesson(3), March(3), KnockActivity.Game, false, false), Assert.Single(Open()));
        await AddAsync(club, other, told, null, "her father");
        Assert.Empty(Open());
        Assert.False(One(club, one).SlipIsOpen);
    }

    [Fact]
    public async Task A_knock_entered_for_the_wrong_child_stays_in_the_record_and_counts_no_more_on_an_instructors_word()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        var id = await KnockAsync(club, 24);
        Assert.Equal(KnockOutcome.NoAdult, await AddAsync(club, id, KnockLine.WrongChild, null, "it was Bram", by: club.Helper));
        Assert.Equal(KnockOutcome.NotSaid, await AddAsync(club, id, KnockLine.WrongChild, null, " "));
        Assert.Equal(StandDownOutcome.KnockNotYet, await LiftAsync(club, KnockStandDowns.OffTheMat(id), Today));
        Assert.Equal(KnockOutcome.Stored, await AddAsync(club, id, KnockLine.WrongChild, null, "it was Bram"));
        using var reading = club.Engine.OpenReading();
        Assert.Empty(KnockSlips.OpenOf(reading, [club.Lesson(24)]));
        Assert.Empty(KnockSlips.Between(reading, Today, Today));
        Assert.Null(KnockQuestion.Of(KnockReader.OfPerson(reading, club.Wren), club.Evidence().StandDowns, Today, new KnockRule(), [], [], _ => "Ruth"));
        Assert.Null(Assert.Single(club.Evidence().StandDowns).LiftedOn);
        Assert.Equal(StandDownOutcome.Stored, await LiftAsync(club, KnockStandDowns.OffTheMat(id), Today));
        Assert.Equal("it was Bram", Assert.Single(One(club, id).Lines).Words);
    }

    [Fact]
    public void Open_slips_are_said_in_words()
    {
        Assert.Equal("", KnockSlips.Words([]));
        Assert.Equal("A slip for Finn waits to be handed over.", KnockSlips.Words(["Finn"]));
        Assert.Equal("Slips for Finn, Wren and Bram wait to be handed over.", KnockSlips.Words(["Finn", "Wren", "Bram"]));
    }

    [Fact]
    public async Task A_knock_a_year_after_the_lifting_is_a_story_of_its_own()
    {
        await using var club = await EvidenceClub.MakeAsync(await Host.EmptyAsync());
        var id = await KnockAsync(club);
        await AddAsync(club, id, KnockLine.FreeFrom, March(3), null);
        await AddAsync(club, id, KnockLine.Advice, March(20), "Dr Hale");
        await LiftAsync(club, KnockStandDowns.OffTheMat(id), March(24));
        var next = await KnockAsync(club, 31);
        using var reading = club.Engine.OpenReading();
        var question = KnockQuestion.Of(KnockReader.OfPerson(reading, club.Wren), club.Evidence().StandDowns, March(31), new KnockRule(), [], [], _ => "Ruth")!;
        Assert.Equal(March(31), question.On);
        Assert.Empty(question.FurtherKnocks);
        Assert.Empty(question.Advice);
        Assert.Null(question.Lifted);
        Assert.Equal(next, KnockReader.OfLessons(reading, [club.Lesson(31)])[0].Id);
    }
}

public sealed class KnocksInSqlite() : KnockSpecification(new SqliteHost());

public sealed class KnocksInPostgres(PostgresDatabase database) : KnockSpecification(new PostgresHost(database)), IClassFixture<PostgresDatabase>;
