using Keikocho.Core.Evening;
using Keikocho.Store.Book;
using Keikocho.Store.Demo;
using Keikocho.Store.Engines;
using Keikocho.Store.Kernel;
using Keikocho.Store.Marks;
using Keikocho.Testing;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.Tests.Book;

/// <summary>What the written statements read is what the context reads, row for row and property for property, on both engines.</summary>
public abstract class StatementsSpecification(StoreHost host) : StoreSpecification(host)
{
    [Fact]
    public async Task The_book_of_a_filled_club_has_the_rows_of_the_context()
    {
        var engine = await FilledAsync();
        using var db = engine.OpenDb();
        var middle = db.Lessons.Select(l => l.Date).ToList().Max();
        foreach (var from in new[] { new DateOnly(2000, 1, 1), middle, middle.AddDays(1), DateOnly.MaxValue }) Compare(engine, from);
    }

    [Fact]
    public async Task The_book_of_a_demo_club_has_the_rows_of_the_context()
    {
        var (engine, demo) = await DemoAsync();
        foreach (var from in new[] { new DateOnly(2000, 1, 1), demo.Today.AddDays(-100), demo.Today, demo.Today.AddYears(5) }) Compare(engine, from);
    }

    [Fact]
    public async Task Revisions_and_the_acting_adult_are_those_of_the_context()
    {
        var engine = await FilledAsync();
        using var db = engine.OpenDb();
        using var reading = engine.OpenReading();
        var club = db.Clubs.Single();
        var devices = db.Devices.AsNoTracking().ToList();
        Assert.Contains(devices, d => d.ActingAdultId is null);
        Assert.Contains(devices, d => d.ActingAdultId is not null);
        foreach (var device in devices)
            Assert.Equal(new Revisions(club.PeopleRevision, club.CalendarRevision, club.PastRevision, device.ActingAdultId), BookStore.ReadRevisions(reading, device.Id));
        Assert.Null(BookStore.ReadRevisions(reading, Guid.CreateVersion7(Now))!.ActingAdultId);
    }

    [Fact]
    public async Task An_empty_database_has_no_revisions()
    {
        using var reading = (await Host.EmptyAsync()).OpenReading();
        Assert.Null(BookStore.ReadRevisions(reading, Guid.CreateVersion7(Now)));
    }

    [Fact]
    public async Task States_of_lessons_are_those_of_the_context()
    {
        var (engine, demo) = await DemoAsync();
        using var db = engine.OpenDb();
        using var reading = engine.OpenReading();
        Guid[] lessons = [.. demo.Registers.TakeLast(3).Select(r => r.Lesson.Id)];
        var wanted = db.Attendances.AsNoTracking().Where(a => lessons.Contains(a.LessonId)).ToList();
        Assert.NotEmpty(wanted);
        Same(wanted, AttendanceReader.OfLessons(reading, lessons));
        Same(wanted.Where(a => a.LessonId == lessons[1]), AttendanceReader.OfLesson(reading, lessons[1]).Values);
        Assert.Empty(AttendanceReader.OfLessons(reading, []));
    }

    [Fact]
    public async Task States_of_a_filled_club_are_those_of_the_context()
    {
        var engine = await FilledAsync();
        using var db = engine.OpenDb();
        using var reading = engine.OpenReading();
        var wanted = db.Attendances.AsNoTracking().ToList();
        Same(wanted, AttendanceReader.OfLessons(reading, [.. wanted.Select(a => a.LessonId)]));
    }

    [Fact]
    public async Task Past_states_are_those_of_the_context()
    {
        var (engine, demo) = await DemoAsync();
        using var db = engine.OpenDb();
        using var reading = engine.OpenReading();
        var programme = demo.Programmes[0].Id;
        Guid[] people = [.. demo.Enrolments.Where(e => e.ProgrammeId == programme).Select(e => e.PersonId).Distinct().Take(25)];
        var (from, to) = (demo.Today.AddDays(-200), demo.Today.AddDays(-3));

        var states = db.Attendances.Where(a => people.Contains(a.PersonId) && a.ProgrammeId == programme && a.Date >= from && a.Date <= to)
            .Select(a => new PastState(a.PersonId, a.LessonId, a.Date, a.Word, a.Counts, a.Ukemi)).ToList();
        Assert.NotEmpty(states);
        Assert.Equal(states.OrderBy(s => s.LessonId).ThenBy(s => s.PersonId), PastStates.Read(reading, programme, people, from, to).OrderBy(s => s.LessonId).ThenBy(s => s.PersonId));
        Assert.Empty(PastStates.Read(reading, programme, [], from, to));

        var ever = db.Attendances.Where(a => people.Contains(a.PersonId) && a.Counts && a.Date <= to)
            .GroupBy(a => a.PersonId).Select(g => new { g.Key, Count = g.Count() }).ToDictionary(g => g.Key, g => g.Count);
        Assert.NotEmpty(ever);
        Assert.Equivalent(ever, PastStates.LessonsEver(reading, people, to), strict: true);
        Assert.Empty(PastStates.LessonsEver(reading, [], to));

        var before = db.Lessons.AsNoTracking().Where(l => l.ProgrammeId == programme && l.Date >= from && l.Date < to)
            .OrderBy(l => l.Date).ThenBy(l => l.Start).ToList();
        Assert.NotEmpty(before);
        Assert.Equal(before.Select(FilledRows.Said), PastStates.LessonsBefore(reading, programme, from, to).Select(FilledRows.Said));

        // Tomorrow's lessons have no states yet; one of the past was held without its register.
        var forgotten = before[^1].Id;
        await db.Lessons.Where(l => l.Id == forgotten).ExecuteUpdateAsync(l => l.SetProperty(r => r.RegisterMissing, true), Cancel);
        var until = demo.Today.AddDays(30);
        var missing = db.Lessons.Where(l => l.ProgrammeId == programme && l.Date >= from && l.Date <= until
                && (l.RegisterMissing || !db.Attendances.Any(a => a.LessonId == l.Id && a.Word != AttendanceWord.Untouched)))
            .Select(l => l.Id).ToHashSet();
        Assert.Contains(forgotten, missing);
        Assert.True(missing.Count > 1);
        Assert.Equal(missing.Order(), PastStates.WithoutRegister(reading, programme, from, until).Order());
    }

    private async Task<(Engine Engine, DemoRows Demo)> DemoAsync()
    {
        var engine = await Host.EmptyAsync();
        var demo = DemoClub.Make(new DateOnly(2026, 11, 25), 1, DemoSize.Small);
        await WriteDemo.WriteAsync(engine, demo, new DateTimeOffset(2026, 11, 25, 16, 0, 0, TimeSpan.Zero), Cancel);
        return (engine, demo);
    }

    internal static void Compare(Engine engine, DateOnly from)
    {
        using var db = engine.OpenDb();
        using var reading = engine.OpenReading();
        var rows = BookStore.Rows(reading, from);
        Same(db.Clubs.AsNoTracking(), [rows.Club]);
        Assert.Equal(db.Halls.AsNoTracking().OrderBy(h => h.Name).ThenBy(h => h.Id).AsEnumerable().Select(FilledRows.Said), rows.Halls.Select(FilledRows.Said));
        Same(db.Programmes.AsNoTracking(), rows.Programmes);
        Same(db.WeeklyHours.AsNoTracking(), rows.Hours);
        Same(db.Terms.AsNoTracking(), rows.Terms);
        Same(db.Closures.AsNoTracking(), rows.Closures);
        Same(db.PromotionTests.AsNoTracking(), rows.Tests);
        Same(db.Settings.AsNoTracking(), rows.Settings);
        Same(db.Duties.AsNoTracking(), rows.Duties);
        Same(db.Ranks.AsNoTracking(), rows.Ranks);
        Same(db.Editions.AsNoTracking().Where(e => e.PublishedAt != null), rows.Editions);
        Same(db.TermUnits.AsNoTracking(), rows.TermUnits);
        Same(db.AgeRules.AsNoTracking(), rows.AgeRules);
        Same(db.Items.AsNoTracking(), rows.Items);
        Same(db.Lessons.AsNoTracking().Where(l => l.Date >= from), rows.Lessons);
        Same(db.Evenings.AsNoTracking().Where(e => e.Date >= from), rows.Evenings);
        Same(db.Enrolments.AsNoTracking(), rows.Enrolments);
        Same(db.Awards.AsNoTracking().Where(a => db.Enrolments.Any(e => e.PersonId == a.PersonId && (e.To == null || e.To >= from))), rows.Awards);
        Same(db.Crossings.AsNoTracking().Where(c => db.Enrolments.Any(e => e.PersonId == c.PersonId && (e.To == null || e.To >= from))), rows.Crossings);
        Assert.Equal(
            db.People.AsNoTracking().AsEnumerable().Select(p => new BookPerson(
                p.Id, Seal.Open(p.Given) ?? "(erased)", Seal.Open(p.Family), Seal.Open(p.Called), Seal.Open(p.Born), p.AdultSeenOn is not null, p.ErasedAt is not null))
                .OrderBy(p => p.Id),
            rows.People.OrderBy(p => p.Id));
    }

    private static void Same<T>(IEnumerable<T> context, IEnumerable<T> statements)
        where T : class =>
        Assert.Equal(context.Select(FilledRows.Said).Order(StringComparer.Ordinal), statements.Select(FilledRows.Said).Order(StringComparer.Ordinal));
}

public sealed class StatementsOnSqlite() : StatementsSpecification(new SqliteHost());

public sealed class StatementsOnPostgres(PostgresDatabase database) : StatementsSpecification(new PostgresHost(database)), IClassFixture<PostgresDatabase>;
