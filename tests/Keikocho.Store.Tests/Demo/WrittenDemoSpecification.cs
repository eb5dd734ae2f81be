using System.Reflection;
using System.Text.Json;
using System.Text.RegularExpressions;
using Keikocho.Core.Evening;
using Keikocho.Store.Demo;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;
using Keikocho.Store.Marks;
using Keikocho.Testing;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.Tests.Demo;

/// <summary>A written demo club, the same on both engines.</summary>
public abstract class WrittenDemoSpecification(StoreHost host) : StoreSpecification(host)
{
    private static new readonly DateTimeOffset Now = new(2026, 11, 25, 16, 0, 0, TimeSpan.Zero);
    private static readonly DemoRows Rows = DemoClub.Make(new DateOnly(2026, 11, 25), 5, DemoSize.Small);

    [Fact]
    public async Task What_is_written_is_read_back_through_the_context_row_for_row()
    {
        var engine = await Host.FreshAsync();
        var written = await WriteDemo.WriteAsync(engine, Rows, Now, Cancel);
        using var db = engine.OpenDb();
        Same([Rows.Club], await db.Clubs.ToListAsync(Cancel));
        Same(Rows.Halls, await db.Halls.ToListAsync(Cancel));
        Same(Rows.Devices, await db.Devices.ToListAsync(Cancel));
        Same(Rows.People, await db.People.ToListAsync(Cancel));
        Same(Rows.Families, await db.Families.ToListAsync(Cancel));
        Same(Rows.FamilyMembers, await db.FamilyMembers.ToListAsync(Cancel));
        Same(Rows.Contacts, await db.Contacts.ToListAsync(Cancel));
        Same(Rows.Registrations, await db.Registrations.ToListAsync(Cancel));
        Same(Rows.Consents, await db.Consents.ToListAsync(Cancel));
        Same(Rows.Duties, await db.Duties.ToListAsync(Cancel));
        Same(Rows.KeepAparts, await db.KeepAparts.ToListAsync(Cancel));
        Same(Rows.Ladders, await db.Ladders.ToListAsync(Cancel));
        Same(Rows.Ranks, await db.Ranks.ToListAsync(Cancel));
        Same(Rows.Editions, await db.Editions.ToListAsync(Cancel));
        Same(Rows.Items, await db.Items.ToListAsync(Cancel));
        Same(Rows.TermUnits, await db.TermUnits.ToListAsync(Cancel));
        Same(Rows.AgeRules, await db.AgeRules.ToListAsync(Cancel));
        Same(Rows.StandDowns, await db.StandDowns.ToListAsync(Cancel));
        Same(Rows.Adaptations, await db.Adaptations.ToListAsync(Cancel));
        Same(Rows.ChosenItems, await db.ChosenItems.ToListAsync(Cancel));
        Same(Rows.Overrules, await db.Overrules.ToListAsync(Cancel));
        Same(Rows.KeepTogethers, await db.KeepTogethers.ToListAsync(Cancel));
        Same(Rows.Obstacles, await db.Obstacles.ToListAsync(Cancel));
        Same(Rows.Showings, await db.Showings.ToListAsync(Cancel));
        Same(Rows.Togethers, await db.Togethers.ToListAsync(Cancel));
        Same(Rows.Knocks, await db.Knocks.ToListAsync(Cancel));
        Same(Rows.NearMisses, await db.NearMisses.ToListAsync(Cancel));
        Same(Rows.KnockLines, await db.KnockLines.ToListAsync(Cancel));
        Same(Rows.Programmes, await db.Programmes.ToListAsync(Cancel));
        Same(Rows.WeeklyHours, await db.WeeklyHours.ToListAsync(Cancel));
        Same(Rows.Terms, await db.Terms.ToListAsync(Cancel));
        Same(Rows.Closures, await db.Closures.ToListAsync(Cancel));
        Same(Rows.Evenings, await db.Evenings.ToListAsync(Cancel));
        Same(Rows.Lessons, await db.Lessons.ToListAsync(Cancel));
        Same(Rows.PromotionTests, await db.PromotionTests.ToListAsync(Cancel));
        Same(Rows.Enrolments, await db.Enrolments.ToListAsync(Cancel));
        Same(Rows.RegisterPlaces, await db.RegisterPlaces.ToListAsync(Cancel));
        Same(Rows.Crossings, await db.Crossings.ToListAsync(Cancel));
        Same(Rows.Awards, await db.Awards.ToListAsync(Cancel));
        var marks = Rows.Registers.SelectMany(r => r.Marks).ToList();
        Same(marks, await db.Marks.ToListAsync(Cancel));
        Assert.Equal((Rows.People.Count, Rows.Lessons.Count, marks.Count), (written.People, written.Lessons, written.Marks));
        Assert.True((await db.Clubs.SingleAsync(Cancel)).IsDemo);
    }

    [Fact]
    public async Task Every_state_equals_its_folded_marks()
    {
        var engine = await Host.FreshAsync();
        var written = await WriteDemo.WriteAsync(engine, Rows, Now, Cancel);
        using var db = engine.OpenDb();
        var lessons = await db.Lessons.ToDictionaryAsync(l => l.Id, Cancel);
        var folded = (await db.Marks.ToListAsync(Cancel)).GroupBy(m => (m.LessonId, m.PersonId))
            .Select(g => FoldMarks.Fold(lessons[g.Key.LessonId], g.Key.PersonId, [.. g], new AttendanceRules())!).ToList();
        Assert.Equal(written.States, folded.Count);
        Same(folded, await db.Attendances.ToListAsync(Cancel));
    }

    [Fact]
    public async Task The_check_of_the_whole_club_finds_nothing()
    {
        var engine = await Host.FreshAsync();
        await WriteDemo.WriteAsync(engine, Rows, Now, Cancel);
        var report = await CheckClub.RunAsync(engine, _ => new AttendanceRules(), cancel: Cancel);
        Assert.Empty(report.Problems);
        using var db = engine.OpenDb();
        Assert.True(await db.ItemStates.CountAsync(Cancel) > 500);
        Assert.True(await db.FallStates.CountAsync(Cancel) > 40);
    }

    [Fact]
    public async Task The_trail_is_a_chain_without_a_gap_and_says_last_when_the_demo_came_in()
    {
        var engine = await Host.FreshAsync();
        await WriteDemo.WriteAsync(engine, Rows, Now, Cancel);
        using var db = engine.OpenDb();
        var trail = await db.Trail.OrderBy(t => t.Number).ToListAsync(Cancel);
        byte[] before = [];
        for (var i = 0; i < trail.Count; i++)
        {
            Assert.Equal(i + 1, trail[i].Number);
            Assert.Equal(TrailChain.HashOf(trail[i], before), trail[i].Hash);
            if (i > 0) Assert.True(trail[i - 1].At <= trail[i].At);
            before = trail[i].Hash;
        }

        Assert.Equal((TrailKind.ClubMade, TrailKind.Restored, Now), (trail[0].Kind, trail[^1].Kind, trail[^1].At));
        Assert.Contains(trail, t => t.Kind == TrailKind.MarkCorrected);
    }

    [Fact]
    public async Task A_second_demo_is_refused_and_changes_nothing()
    {
        var engine = await Host.FreshAsync();
        var written = await WriteDemo.WriteAsync(engine, Rows, Now, Cancel);
        await Assert.ThrowsAsync<StoreRefusal>(() => WriteDemo.WriteAsync(engine, DemoClub.Make(Rows.Today, 6, DemoSize.Small), Now, Cancel));
        using var db = engine.OpenDb();
        Assert.Equal(written.Marks, await db.Marks.CountAsync(Cancel));
        Assert.Equal(written.People, await db.People.CountAsync(Cancel));
    }

    [Fact]
    public async Task Writing_before_the_demos_last_event_is_refused()
    {
        var engine = await Host.FreshAsync();
        await Assert.ThrowsAsync<ArgumentException>(() => WriteDemo.WriteAsync(engine, Rows, Now.AddYears(-1), Cancel));
    }

    [Fact]
    public async Task A_mark_of_a_lesson_that_does_not_exist_takes_everything_back()
    {
        var engine = await Host.FreshAsync();
        var good = DemoClub.Make(Rows.Today, 5, DemoSize.Small);
        var lessons = good.Lessons.ToList();
        lessons.RemoveAt(0);
        var broken = Without(good, lessons);
        await Assert.ThrowsAnyAsync<System.Data.Common.DbException>(() => WriteDemo.WriteAsync(engine, broken, Now, Cancel));
        using var db = engine.OpenDb();
        Assert.False(await db.Clubs.AnyAsync(Cancel));
        Assert.False(await db.People.AnyAsync(Cancel));
    }

    private static DemoRows Without(DemoRows rows, IReadOnlyList<Keikocho.Store.Calendar.LessonRow> lessons)
    {
        typeof(DemoRows).GetProperty(nameof(DemoRows.Lessons), BindingFlags.Instance | BindingFlags.Public)!.SetValue(rows, lessons);
        return rows;
    }

    private static void Same<TRow>(IEnumerable<TRow> expected, IEnumerable<TRow> read) where TRow : notnull
    {
        // The rows take the number of the engine's club.
        static string Line(TRow row) => Regex.Replace(JsonSerializer.Serialize(row), "\"Club\":[0-9]+", "\"Club\":0");
        var left = expected.Select(Line).Order(StringComparer.Ordinal).ToList();
        var right = read.Select(Line).Order(StringComparer.Ordinal).ToList();
        Assert.Equal(left.Count, right.Count);
        for (var i = 0; i < left.Count; i++) Assert.Equal(left[i], right[i]);
    }
}

/// <summary>In a SQLite file.</summary>
public sealed class DemoInSqlite() : WrittenDemoSpecification(new SqliteHost())
{
    [Fact]
    public async Task The_file_passes_the_check_of_its_foreign_keys_and_keeps_no_long_log()
    {
        var engine = (SqliteEngine)await Host.FreshAsync();
        var rows = DemoClub.Make(new DateOnly(2028, 2, 29), 5, DemoSize.Small);
        await WriteDemo.WriteAsync(engine, rows, new DateTimeOffset(2028, 2, 29, 12, 0, 0, TimeSpan.Zero), TestContext.Current.CancellationToken);
        using var connection = engine.OpenConnection();
        using var command = connection.CreateCommand();
        command.CommandText = "PRAGMA foreign_keys";
        Assert.Equal(1L, command.ExecuteScalar());
        command.CommandText = "PRAGMA foreign_key_check";
        using (var reader = command.ExecuteReader()) Assert.False(reader.Read());
        command.CommandText = "PRAGMA cache_size";
        Assert.Equal(-8000L, command.ExecuteScalar());
        Assert.Equal(0, new FileInfo(engine.File + "-wal").Length);
    }
}

public sealed class DemoInPostgres(PostgresDatabase database) : WrittenDemoSpecification(new PostgresHost(database)), IClassFixture<PostgresDatabase>;
