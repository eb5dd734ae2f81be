using Keikocho.Core.Evening;
using Keikocho.Core.Safety;
using Keikocho.Store.Calendar;
using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;
using Keikocho.Store.Marks;
using Keikocho.Store.People;
using Keikocho.Store.Promotion;
using Keikocho.Store.Safety;
using Keikocho.Store.Syllabus;
using Keikocho.Testing;

namespace Keikocho.Store.Tests.People;

/// <summary>What is changed and read on one child's page, the same on both engines.</summary>
public abstract class OneChildSpecification(StoreHost host) : StoreSpecification(host)
{
    private static new readonly DateTimeOffset Now = new(2026, 3, 10, 19, 0, 0, TimeSpan.Zero);
    private static readonly DateOnly Day = new(2026, 3, 3);
    private static readonly AttendanceRules Rules = new();

    [Fact]
    public async Task A_contact_is_added_once_and_changed_in_its_place_and_its_email_stays()
    {
        await using var club = await MadeAsync();
        var id = club.NewId();
        var mother = new ContactDetails(id, club.Child, " Mara Hollis ", "mother", "01632 960001", Barred: false);
        Assert.True(await club.People.SaveContactAsync(mother, club.Head, club.Device, Cancel));
        await club.Writer.RunAsync(s => { s.Db.Contacts.Single(c => c.Id == id).Email = Keikocho.Store.Kernel.Seal.Close("mara@example.org"); s.Db.SaveChanges(); return true; }, Cancel);
        Assert.True(await club.People.SaveContactAsync(mother with { Phone = "01632 960002", Relation = " ", Barred = true }, club.Head, club.Device, Cancel));
        using var db = club.Engine.OpenDb();
        Assert.Equal(
            [(null, null, "07700 900001", false), ("Mara Hollis", null, "01632 960002", true)],
            club.File(club.Child).Contacts.Select(c => (c.Name, c.Relation, c.Phone, c.Barred)));
        Assert.NotNull(db.Contacts.Single(c => c.Id == id).Email);
        Assert.Equal(2, db.Trail.Count(t => t.Kind == TrailKind.PersonChanged && t.SubjectId == club.Child && t.ById == club.Head));
    }

    [Fact]
    public async Task A_contact_of_another_child_or_of_nobody_is_not_touched()
    {
        await using var club = await MadeAsync();
        var id = club.NewId();
        var contact = new ContactDetails(id, club.Child, "Mara", null, null, false);
        await club.People.SaveContactAsync(contact, club.Head, club.Device, Cancel);
        var other = await club.JoinAsync("Bram");
        Assert.False(await club.People.SaveContactAsync(contact with { PersonId = other, Name = "Else" }, club.Head, club.Device, Cancel));
        Assert.False(await club.People.SaveContactAsync(contact with { PersonId = club.NewId() }, club.Head, club.Device, Cancel));
        Assert.Equal("Mara", club.File(club.Child).Contacts[^1].Name);
        Assert.Single(club.File(other).Contacts);
    }

    [Fact]
    public async Task A_rank_moves_the_count_to_the_day_after_it_and_the_same_rank_of_the_same_day_is_there_already()
    {
        await using var club = await MadeAsync();
        var rank = new NewRank(club.Child, club.Ranks[1], new DateOnly(2026, 3, 7), AwardSource.Promoted);
        Assert.Equal(RankOutcome.Recorded, await club.People.RecordRankAsync(rank, club.Head, club.Device, Cancel));
        Assert.Equal(RankOutcome.AlreadyThere, await club.People.RecordRankAsync(rank, club.Head, club.Device, Cancel));
        using var db = club.Engine.OpenDb();
        Assert.Equal((club.Ranks[1], new DateOnly(2026, 3, 7), club.Head), db.Awards.Select(a => new ValueTuple<Guid, DateOnly?, Guid?>(a.RankId, a.On, a.ById)).Single());
        Assert.Equal(new DateOnly(2026, 3, 8), db.Enrolments.Single(e => e.PersonId == club.Child).CountsFrom);
    }

    [Fact]
    public async Task A_wrong_rank_is_replaced_and_the_count_goes_back()
    {
        await using var club = await MadeAsync();
        await club.People.RecordRankAsync(new NewRank(club.Child, club.Ranks[1], new DateOnly(2026, 3, 7), AwardSource.Promoted), club.Head, club.Device, Cancel);
        Guid wrong;
        using (var db = club.Engine.OpenDb()) wrong = db.Awards.Single().Id;
        var right = new NewRank(club.Child, club.Ranks[0], new DateOnly(2026, 2, 1), AwardSource.Transferred, wrong);
        Assert.Equal(RankOutcome.Recorded, await club.People.RecordRankAsync(right, club.Head, club.Device, Cancel));
        // What was replaced cannot be replaced again.
        Assert.Equal(RankOutcome.Unknown, await club.People.RecordRankAsync(right with { On = new DateOnly(2026, 2, 2) }, club.Head, club.Device, Cancel));
        using (var db = club.Engine.OpenDb())
        {
            Assert.Equal(2, db.Awards.Count());
            // Before the first lesson here: the first lesson counts again.
            Assert.Equal(Day, db.Enrolments.Single(e => e.PersonId == club.Child).CountsFrom);
        }
    }

    [Fact]
    public async Task A_rank_or_person_that_nobody_knows_changes_nothing()
    {
        await using var club = await MadeAsync();
        Assert.Equal(RankOutcome.Unknown, await club.People.RecordRankAsync(new NewRank(club.Child, club.NewId(), Day, AwardSource.Promoted), club.Head, club.Device, Cancel));
        Assert.Equal(RankOutcome.Unknown, await club.People.RecordRankAsync(new NewRank(club.NewId(), club.Ranks[0], Day, AwardSource.Promoted), club.Head, club.Device, Cancel));
        using var db = club.Engine.OpenDb();
        Assert.False(db.Awards.Any());
    }

    [Fact]
    public async Task Papers_are_those_said_last_and_siblings_are_the_others_of_the_family()
    {
        await using var club = await MadeAsync();
        var sibling = await club.JoinAsync("Bram");
        var stranger = await club.JoinAsync("Ada");
        var nothing = club.File(club.Child);
        Assert.Equal((false, null, null, null), (nothing.IsRegistered, nothing.RegisteredUntil, nothing.Photo, nothing.PhotoSaidOn));
        Assert.Empty(nothing.Siblings);
        Assert.Empty(club.File(club.NewId()).Contacts);

        await club.Writer.RunAsync(s =>
        {
            foreach (var (days, until) in new[] { (2, new DateOnly(2027, 1, 1)), (1, new DateOnly(2028, 1, 1)) })
                s.Db.Registrations.Add(new RegistrationRow { Club = s.Club, Id = s.NewId(), PersonId = club.Child, Expires = until, MadeAt = s.Now.AddDays(-days) });
            foreach (var (day, given) in new[] { (5, false), (1, true) })
                s.Db.Consents.Add(new ConsentRow { Club = s.Club, Id = s.NewId(), PersonId = club.Child, Use = ConsentUse.Photo, Given = given, On = Day.AddDays(day), MadeAt = s.Now });
            foreach (var members in new[] { new[] { club.Child, sibling }, [sibling, stranger] })
            {
                var family = new FamilyRow { Club = s.Club, Id = s.NewId() };
                s.Db.Families.Add(family);
                s.Db.SaveChanges();
                foreach (var member in members) s.Db.FamilyMembers.Add(new FamilyMemberRow { Club = s.Club, FamilyId = family.Id, PersonId = member });
            }

            s.Db.SaveChanges();
            return true;
        }, Cancel);
        var papers = club.File(club.Child);
        Assert.Equal((true, new DateOnly(2028, 1, 1), false, Day.AddDays(5)), (papers.IsRegistered, papers.RegisteredUntil, papers.Photo, papers.PhotoSaidOn));
        Assert.Equal([sibling], papers.Siblings);
    }

    [Fact]
    public async Task The_file_of_a_child_holds_wishes_knocks_and_lessons_of_this_child_alone()
    {
        await using var club = await MadeAsync();
        var (bram, ada) = (await club.JoinAsync("Bram"), await club.JoinAsync("Ada", new TimeOnly(17, 56)));
        var wishes = new PairWishStore(club.Writer);
        Assert.True(await wishes.EnterAsync(club.Child, bram, apart: false, Day.AddDays(-3), club.Head, club.Device, Cancel));
        Assert.True(await wishes.EnterAsync(ada, club.Child, apart: true, Day, club.Head, club.Device, Cancel));
        Assert.True(await wishes.EnterAsync(ada, bram, apart: true, Day, club.Head, club.Device, Cancel));
        var knock = club.NewId();
        await club.Writer.RunAsync(s =>
        {
            s.Db.Knocks.Add(new KnockRow { Club = s.Club, Id = knock, PersonId = ada, LessonId = club.Lesson, On = Day, Activity = (int)KnockActivity.Game, MadeAt = s.Now });
            s.Db.SaveChanges();
            foreach (var (kind, minutes) in new[] { (KnockLine.HandedOver, 2), (KnockLine.Seen, 1) })
                s.Db.KnockLines.Add(new KnockLineRow { Club = s.Club, Id = s.NewId(), KnockId = knock, Kind = kind, Words = Keikocho.Store.Kernel.Seal.Close($"{kind}"), ById = club.Head, DeviceId = club.Device, MadeAt = s.Now.AddMinutes(minutes) });
            s.Db.SaveChanges();
            return true;
        }, Cancel);

        var own = club.File(club.Child);
        Assert.Equal([(ada, club.Child, true), (club.Child, bram, false)], own.Wishes.Select(w => (w.OneId, w.OtherId, w.Apart)));
        Assert.Empty(own.Knocks);
        Assert.Empty(own.Lessons);
        var other = club.File(ada, Day);
        Assert.Equal([true, true], other.Wishes.Select(w => w.Apart));
        var held = Assert.Single(other.Knocks);
        Assert.Equal((knock, ada, club.Lesson, Day, KnockActivity.Game, false), (held.Id, held.PersonId, held.LessonId, held.On, held.Activity, held.SlipIsOpen));
        Assert.Equal([(KnockLine.Seen, "Seen"), (KnockLine.HandedOver, "HandedOver")], held.Lines.Select(l => (l.Kind, l.Words)));
        Assert.Equal(new LessonState(club.Lesson, AttendanceWord.Present, true, true, new TimeOnly(17, 56), null), Assert.Single(other.Lessons));
        Assert.Empty(club.File(ada, Day.AddDays(1)).Lessons);
        using var reading = club.Engine.OpenReading();
        Assert.Equal([true, true, false], PairWishReader.On(reading, Day).Select(w => w.Apart));
        Assert.Equal([false], PairWishReader.On(reading, Day.AddDays(-1)).Select(w => w.Apart));
        Assert.Equal(held with { Lines = [] }, KnockReader.One(reading, knock)! with { Lines = [] });
    }

    [Theory]
    [InlineData(MarkKind.Absent, null)]
    [InlineData(MarkKind.Present, 17 * 60 + 56)]
    [InlineData(MarkKind.Left, 18 * 60 + 20)]
    public async Task A_correction_to_left_keeps_the_arrival_and_every_mark(MarkKind marked, int? minutes)
    {
        await using var club = await MadeAsync();
        var child = await club.JoinAsync("Bram", new TimeOnly(17, 56));
        TimeOnly? at = minutes is { } m ? new TimeOnly(m / 60, m % 60) : null;
        await club.Marks.TapAsync(new Tap(club.NewId(), club.Device, null, club.Lesson, child, club.Head, Now, marked, at), Day, Rules, Cancel);
        var id = club.NewId();
        for (var sent = 0; sent < 2; sent++)
            Assert.True(await club.Marks.CorrectAsync(id, club.Lesson, child, MarkKind.Left, new TimeOnly(18, 30), Day, Rules, club.Head, club.Device, Cancel));
        using var db = club.Engine.OpenDb();
        var state = db.Attendances.Single(a => a.PersonId == child);
        // "Absent" said after an arrival is taken back, and the arrival speaks again.
        Assert.Equal((AttendanceWord.Left, new TimeOnly(17, 56), new TimeOnly(18, 30), false), (state.Word, state.Arrived, state.LeftAt, state.Ukemi));
        var trail = TrailReader.MarkedBy(db, club.Lesson);
        Assert.Equal([club.Head], trail);
        Assert.Equal(2, db.Marks.Count(mark => mark.PersonId == child && mark.Replaces == null && mark.Id != id));
        Assert.Equal(DeviceKind.Laptop, TrailReader.KindsOf(db, [club.Device])[club.Device]);
    }

    [Fact]
    public async Task A_tap_by_its_own_statements_is_read_back_by_the_context_value_for_value()
    {
        await using var club = await MadeAsync();
        var tap = new Tap(club.NewId(), club.Device, null, club.Lesson, club.Child, club.Head, Now.AddMinutes(-3), MarkKind.Left, new TimeOnly(18, 20));
        Assert.Equal(TapOutcome.Stored, await club.Marks.TapAsync(tap, Day, Rules, Cancel));
        Assert.Equal(TapOutcome.AlreadyStored, await club.Marks.TapAsync(tap with { Kind = MarkKind.Absent, At = null }, Day, Rules, Cancel));
        Assert.Equal(TapOutcome.Unknown, await club.Marks.TapAsync(tap with { Id = club.NewId(), LessonId = club.NewId() }, Day, Rules, Cancel));
        Assert.Equal(TapOutcome.Unknown, await club.Marks.TapAsync(tap with { Id = club.NewId(), PersonId = club.NewId() }, Day, Rules, Cancel));
        using var db = club.Engine.OpenDb();
        var mark = db.Marks.Single(m => m.Id == tap.Id);
        Assert.Equal(
            (tap.Device, tap.LessonId, tap.PersonId, (Guid?)tap.By, tap.MadeAt, Now, MarkKind.Left, tap.At, (Guid?)null, 0, (Guid?)null),
            (mark.DeviceId, mark.LessonId, mark.PersonId, mark.ById, mark.MadeAt, mark.ReceivedAt, mark.Kind, mark.At, mark.ItemId, mark.Code, mark.Replaces));
        var all = db.Marks.Where(m => m.LessonId == tap.LessonId && m.PersonId == tap.PersonId).ToList();
        Assert.Equal(Enumerable.Range(1, db.Marks.Count(m => m.DeviceId == club.Device)), db.Marks.Where(m => m.DeviceId == club.Device).Select(m => m.Sequence).OrderBy(n => n).ToList());
        var folded = FoldMarks.Fold(db.Lessons.Single(l => l.Id == tap.LessonId), tap.PersonId, all, Rules)!;
        var state = db.Attendances.Single(a => a.LessonId == tap.LessonId && a.PersonId == tap.PersonId);
        foreach (var property in typeof(AttendanceRow).GetProperties())
            Assert.Equal(property.GetValue(folded), property.GetValue(state));
    }

    private async Task<MadeClub> MadeAsync()
    {
        var engine = await Host.FreshAsync();
        await engine.UpgradeAsync(Now, Cancel);
        var club = new MadeClub(engine);
        await club.FillAsync();
        return club;
    }

    /// <summary>A small club with one lesson, one ladder and one child.</summary>
    private sealed class MadeClub(Engine engine) : IAsyncDisposable
    {
        private readonly FixedTime time = new(Now);
        private long made;
        private Guid programme;

        public Engine Engine => engine;

        public WriterQueue Writer { get; } = new(engine, new FixedTime(Now));

        public PeopleStore People => new(Writer);

        public MarksStore Marks => new(Writer);

        public Guid Device { get; private set; }

        public Guid Head { get; private set; }

        public Guid Lesson { get; private set; }

        public Guid Child { get; private set; }

        public Guid[] Ranks { get; private set; } = [];

        public Guid NewId() => Guid.CreateVersion7(time.GetUtcNow().AddMilliseconds(made++));

        public async Task FillAsync()
        {
            Device = NewId();
            await new ClubStore(Writer).MakeAsync(new NewClub("Larkwater", "Ruth", "Aldersey", "Juniors", "Europe/London", PaperChoice.A4), Device, Day, Cancel);
            using var db = engine.OpenDb();
            programme = db.Programmes.Single().Id;
            var hall = db.Halls.Single().Id;
            Head = db.Duties.Single().PersonId;
            var calendar = new CalendarStore(Writer);
            var times = new LessonTimes(new TimeOnly(17, 30), new TimeOnly(18, 45), new TimeOnly(17, 45), new TimeOnly(17, 55), new TimeOnly(18, 7));
            await calendar.AddHourAsync(new NewHour(programme, hall, Day.DayOfWeek, times, Day), Head, Device, Cancel);
            await calendar.AddTermAsync("Spring", Day, Day.AddDays(20), Head, Device, Cancel);
            Lesson = db.Lessons.Single(l => l.Date == Day).Id;
            Ranks = [NewId(), NewId()];
            await Writer.RunAsync(s =>
            {
                var ladder = new LadderRow { Club = s.Club, Id = s.NewId(), Name = "Juniors" };
                s.Db.Ladders.Add(ladder);
                s.Db.SaveChanges();
                for (var i = 0; i < Ranks.Length; i++) s.Db.Ranks.Add(new RankRow { Club = s.Club, Id = Ranks[i], LadderId = ladder.Id, Name = $"Rank {i}", Position = i + 1 });
                s.Db.Programmes.Single().LadderId = ladder.Id;
                s.Db.SaveChanges();
                return true;
            }, Cancel);
            Child = await JoinAsync("Wren");
        }

        public ChildFile File(Guid child, DateOnly? lessonsFrom = null)
        {
            using var reading = engine.OpenReading();
            return ChildFileReader.Of(reading, child, programme, lessonsFrom, Day);
        }

        public async Task<Guid> JoinAsync(string given, TimeOnly? at = null)
        {
            var id = NewId();
            Assert.True(await People.AddNewTonightAsync(new NewTonight(id, given, "Hollis", "07700 900001", Lesson, at), Rules, Head, Device, Cancel));
            return id;
        }

        public ValueTask DisposeAsync() => Writer.DisposeAsync();
    }
}

public sealed class OneChildInSqlite() : OneChildSpecification(new SqliteHost());

public sealed class OneChildInPostgres(PostgresDatabase database) : OneChildSpecification(new PostgresHost(database)), IClassFixture<PostgresDatabase>;
