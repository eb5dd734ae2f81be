using Keikocho.Core.Evening;
using Keikocho.Store.Book;
using Keikocho.Store.Calendar;
using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Keikocho.Store.Marks;
using Keikocho.Store.People;
using Keikocho.Testing;

namespace Keikocho.Store.Tests.Calendar;

public sealed class WeeklyHourTests : IAsyncLifetime
{
    private static readonly DateOnly Today = new(2026, 11, 25);
    private static readonly LessonTimes Times = new(new(17, 30), new(18, 45), new(17, 45), new(17, 55), new(18, 7));
    private readonly string folder = Directory.CreateTempSubdirectory("keikocho-test-").FullName;
    private readonly FixedTime time = FixedTime.At("2026-11-25T17:00");
    private SqliteEngine engine = default!;
    private WriterQueue writer = default!;
    private Guid device;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        engine = new SqliteEngine(Path.Combine(folder, "club.keikocho"));
        await engine.UpgradeAsync(time.GetUtcNow(), Stop);
        writer = new WriterQueue(engine, time);
        device = Guid.CreateVersion7(time.GetUtcNow());
        await new ClubStore(writer).MakeAsync(new NewClub("Weir", "Maren", "", "Juniors", "Europe/London", PaperChoice.A4), device, Today, Stop);
        var book = Read();
        await Calendar.AddTermAsync("Autumn", new(2026, 11, 1), new(2026, 12, 20), null, device, Stop);
        await Calendar.AddHourAsync(new NewHour(book.Programmes[0].Id, book.Halls[0].Id, DayOfWeek.Wednesday, Times, new(2026, 11, 1)), null, device, Stop);
    }

    public async ValueTask DisposeAsync()
    {
        await writer.DisposeAsync();
        engine.Release();
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task Other_falls_and_half_time_reach_lessons_from_the_day_on_that_nobody_has_marked()
    {
        var marked = Read().LessonsOn(new(2026, 12, 2)).Single();
        var child = Guid.CreateVersion7(time.GetUtcNow());
        await new PeopleStore(writer).AddNewTonightAsync(new NewTonight(child, "Wren", "", "", marked.Id, null), new AttendanceRules(), Head, device, Stop);
        var hour = Read().Hours.Single();
        Assert.True(await Calendar.ChangeHourAsync(hour.Id, new(17, 40), new(17, 50), new(18, 10), Today, null, device, Stop));
        var lessons = Read().LessonsOf(hour.ProgrammeId);
        Assert.Equal(
            ["4 Nov 18:07", "11 Nov 18:07", "18 Nov 18:07", "25 Nov 18:10", "2 Dec 18:07", "9 Dec 18:10", "16 Dec 18:10"],
            lessons.Select(l => FormattableString.Invariant($"{l.Date:d MMM} {l.HalfTime:HH\\:mm}")));
        Assert.Equal(new TimeOnly(17, 40), Read().Hours.Single().UkemiFrom);
    }

    [Fact]
    public async Task Times_out_of_order_are_misuse_and_change_nothing()
    {
        var hour = Read().Hours.Single();
        await Assert.ThrowsAsync<ArgumentException>(() => Calendar.ChangeHourAsync(hour.Id, new(17, 40), new(17, 50), new(18, 50), Today, null, device, Stop));
        Assert.Equal(Times.HalfTime, Read().Hours.Single().HalfTime);
        Assert.False(await Calendar.ChangeHourAsync(device, new(17, 40), new(17, 50), new(18, 0), Today, null, device, Stop));
    }

    [Fact]
    public async Task Of_two_values_of_one_day_the_history_has_the_later_with_its_words()
    {
        var club = new ClubStore(writer);
        await club.SetAsync("a.b", "1", Today, "first", Head, device, Stop);
        time.Step(TimeSpan.FromSeconds(1));
        await club.SetAsync("a.b", "2", Today, " second ", Head, device, Stop);
        await club.SetAsync("a.b", "3", Today.AddDays(-1), null, null, device, Stop);
        await club.SetAsync("other", "4", Today, null, null, device, Stop);
        Assert.Equal([new SettingEntry("3", Today.AddDays(-1), null, null), new SettingEntry("2", Today, Head, "second")], SettingHistory.Of(Read(), "a.b"));
    }

    [Fact]
    public async Task The_readers_of_a_lesson_say_who_made_its_marks_and_how_many_were_there()
    {
        var lesson = Read().LessonsOn(Today).Single();
        var people = new PeopleStore(writer);
        var (here, gone) = (Guid.CreateVersion7(time.GetUtcNow()), Guid.CreateVersion7(time.GetUtcNow()));
        foreach (var child in new[] { here, gone })
            await people.AddNewTonightAsync(new NewTonight(child, "Wren", "", "", lesson.Id, null), new AttendanceRules(), Head, device, Stop);
        await new MarksStore(writer).CorrectAsync(
            Guid.CreateVersion7(time.GetUtcNow()), lesson.Id, gone, MarkKind.Absent, null, Today, new AttendanceRules(), Head, device, Stop);
        using var db = engine.OpenDb();
        Assert.Equal(3, AttendanceReader.MarksByHand(db, lesson.Id).Count);
        Assert.Equal([new PersonMark(here), new(gone), new(gone)], AttendanceReader.MarksByHand(db, lesson.Id).OrderBy(m => m.Sequence).Select(m => new PersonMark(m.PersonId)));
        Assert.Equal(1, Assert.Single(AttendanceReader.HereAt(db, [lesson.Id, device])).Value);
        Assert.Empty(PeopleReader.WithSomebodyBarred(db));
        Assert.Empty(PeopleReader.WithARegistration(db));
        db.Contacts.Add(new ContactRow { Club = 1, Id = Guid.CreateVersion7(time.GetUtcNow()), PersonId = here, Position = 1, BarredFromCollecting = true });
        db.Contacts.Add(new ContactRow { Club = 1, Id = Guid.CreateVersion7(time.GetUtcNow()), PersonId = gone, Position = 1 });
        db.Registrations.Add(new RegistrationRow { Club = 1, Id = Guid.CreateVersion7(time.GetUtcNow()), PersonId = gone, MadeAt = time.GetUtcNow() });
        db.SaveChanges();
        Assert.Equal([here], PeopleReader.WithSomebodyBarred(db));
        Assert.Equal([gone], PeopleReader.WithARegistration(db));
    }

    private sealed record PersonMark(Guid Person);

    private CalendarStore Calendar => new(writer);

    private Guid Head => Read().Duties.Single().PersonId;

    private ClubBook Read()
    {
        using var reading = engine.OpenReading();
        return BookStore.Read(reading, new(2020, 1, 1));
    }
}
