#pragma warning disable EF1002, EF1003 // Only names of the model's own tables are put into statements.
using Keikocho.Store.Book;
using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Keikocho.Store.Marks;
using Keikocho.Store.Tests.Book;
using Keikocho.Testing;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace Keikocho.Store.Tests.Engines;

/// <summary>Two clubs in one PostgreSQL database.</summary>
public sealed class ClubsApartTests(PostgresDatabase database) : IClassFixture<PostgresDatabase>
{
    private static readonly DateTimeOffset Now = new(2026, 3, 3, 17, 30, 0, TimeSpan.Zero);
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_context_sees_only_its_own_club_even_as_superuser()
    {
        var text = await TwoClubsAsync();
        foreach (var club in new[] { 1, 2, 1 })
        {
            await using var engine = new PostgresEngine(text, club);
            using var db = engine.OpenDb();
            Assert.Equal(club, (await db.Clubs.SingleAsync(Cancel)).Club);
            Assert.All(await db.People.ToListAsync(Cancel), p => Assert.Equal(club, p.Club));
            Assert.Equal(2, await db.People.CountAsync(Cancel));
        }
    }

    [Fact]
    public async Task Written_statements_see_only_their_own_club_even_as_superuser()
    {
        var text = await TwoClubsAsync();
        var from = new DateOnly(2000, 1, 1);
        foreach (var club in new[] { 1, 2 })
        {
            await using var engine = new PostgresEngine(text, club);
            using var db = engine.OpenDb();
            // What would show the other club's rows twice: the ids are the same in both.
            StatementsOnPostgres.Compare(engine, from);
            using var reading = engine.OpenReading();
            var states = await db.Attendances.ToListAsync(Cancel);
            Assert.Equal(2, states.Count);
            Assert.Equal(2, AttendanceReader.OfLessons(reading, [.. states.Select(s => s.LessonId)]).Count);
            var state = states[0];
            Assert.Single(PastStates.Read(reading, state.ProgrammeId, [state.PersonId], from, DateOnly.MaxValue));
            Assert.Equal(1, PastStates.LessonsEver(reading, [state.PersonId], DateOnly.MaxValue)[state.PersonId]);
            var lesson = await db.Lessons.FirstAsync(Cancel);
            Assert.Single(PastStates.LessonsBefore(reading, lesson.ProgrammeId, lesson.Date, lesson.Date.AddDays(1)));
            Assert.NotNull(BookStore.ReadRevisions(reading, Guid.Empty));
        }
    }

    [Fact]
    public async Task A_role_held_to_club_1_sees_nothing_of_club_2_by_raw_SQL()
    {
        var text = await TwoClubsAsync();
        await using var engine = new PostgresEngine(await RoleAsync(text), 1);
        using var db = engine.OpenDb();
        await db.Database.OpenConnectionAsync(Cancel);
        foreach (var table in db.Model.GetEntityTypes().Select(t => t.GetTableName()))
        {
            var seen = await db.Database.SqlQueryRaw<int>($"SELECT DISTINCT \"Club\" AS \"Value\" FROM \"{table}\"").ToListAsync(Cancel);
            Assert.Equal([1], seen);
        }
    }

    [Fact]
    public async Task A_role_held_to_club_1_can_neither_change_nor_add_rows_of_club_2()
    {
        var text = await TwoClubsAsync();
        await using var engine = new PostgresEngine(await RoleAsync(text), 1);
        using var db = engine.OpenDb();
        Assert.Equal(0, await db.Database.ExecuteSqlRawAsync("UPDATE \"Halls\" SET \"Name\" = 'x' WHERE \"Club\" = 2", Cancel));
        Assert.Equal(2, await db.Database.ExecuteSqlRawAsync("UPDATE \"Halls\" SET \"Name\" = 'x'", Cancel));
        db.Halls.Add(new HallRow { Club = 2, Id = Guid.CreateVersion7(Now), Name = "Theirs" });
        var refusal = await Assert.ThrowsAsync<DbUpdateException>(() => db.SaveChangesAsync(Cancel));
        Assert.Contains("row-level security", refusal.InnerException!.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_connection_without_a_club_sees_nothing()
    {
        var text = await RoleAsync(await TwoClubsAsync());
        await using var source = NpgsqlDataSource.Create(text);
        await using var command = source.CreateCommand("SELECT count(*) FROM \"People\"");
        Assert.Equal(0L, await command.ExecuteScalarAsync(Cancel));
    }

    [Fact]
    public async Task The_place_says_no_password()
    {
        await using var engine = new PostgresEngine("Host=db.example;Username=club;Password=hajime;Database=clubs");
        Assert.Equal("the PostgreSQL database clubs on db.example", engine.Place);
    }

    [Fact]
    public async Task A_server_that_is_not_there_is_refused_in_words()
    {
        await using var engine = new PostgresEngine("Host=127.0.0.1;Port=1;Username=club;Database=clubs;Timeout=2");
        var refusal = await Assert.ThrowsAsync<StoreRefusal>(() => engine.UpgradeAsync(Now, Cancel));
        Assert.StartsWith("the PostgreSQL database clubs on 127.0.0.1 could not be opened", refusal.Message, StringComparison.Ordinal);
    }

    private async Task<string> TwoClubsAsync()
    {
        var text = await database.AnotherAsync();
        foreach (var club in new[] { 1, 2 })
        {
            await using var engine = new PostgresEngine(text, club);
            await engine.UpgradeAsync(Now, Cancel);
            using var db = engine.OpenDb();
            // The same ids in both clubs: only the club tells them apart.
            db.AddRange(FilledRows.Of(db, club));
            await db.SaveChangesAsync(Cancel);
        }

        return text;
    }

    /// <summary>A role as a club's server should have: no superuser, and no way round row-level security.</summary>
    private static async Task<string> RoleAsync(string text)
    {
        var role = $"role_{Guid.CreateVersion7(DateTimeOffset.UtcNow):N}";
        await using var source = NpgsqlDataSource.Create(text);
        await using var command = source.CreateCommand(
            $"CREATE ROLE {role} LOGIN PASSWORD 'hajime' NOSUPERUSER NOBYPASSRLS; "
            + $"GRANT SELECT, INSERT, UPDATE, DELETE ON ALL TABLES IN SCHEMA public TO {role}");
        await command.ExecuteNonQueryAsync(Cancel);
        return new NpgsqlConnectionStringBuilder(text) { Username = role, Password = "hajime" }.ConnectionString;
    }
}
