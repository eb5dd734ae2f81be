using System.Diagnostics;
using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Keikocho.Testing;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.Tests.Engines;

/// <summary>The one writer, on both engines.</summary>
public abstract class WriterSpecification(StoreHost host) : StoreSpecification(host)
{
    [Fact]
    public async Task Works_that_wait_together_are_committed_together()
    {
        var engine = await Host.EmptyAsync();
        await using var writer = new WriterQueue(engine, TimeProvider.System);
        using var gate = new ManualResetEventSlim();
        var first = HoldUp(writer, gate);
        var transactions = Enumerable.Range(0, 20).Select(n => writer.RunAsync(s => { Add(s, $"Hall {n}"); return s.Transaction; }, Cancel)).ToList();
        gate.Set();
        await first;
        Assert.Single((await Task.WhenAll(transactions)).Distinct());
        Assert.Equal(20, await CountAsync(engine));
    }

    [Fact]
    public async Task One_work_that_fails_takes_nothing_with_it()
    {
        var engine = await Host.EmptyAsync();
        await using var writer = new WriterQueue(engine, TimeProvider.System);
        using var gate = new ManualResetEventSlim();
        var first = HoldUp(writer, gate);
        var before = writer.RunAsync(s => Add(s, "before"), Cancel);
        var failing = writer.RunAsync<int>(s => { Add(s, "failing"); throw new InvalidOperationException("mine"); }, Cancel);
        var refused = writer.RunAsync(s => { Add(s, "refused"); s.Db.Add(new Keikocho.Store.Calendar.EveningRow { Club = 1, Id = s.NewId(), HallId = s.NewId() }); s.Db.SaveChanges(); return 0; }, Cancel);
        var after = writer.RunAsync(s => Add(s, "after"), Cancel);
        gate.Set();
        await first;
        await before;
        await after;
        Assert.Equal("mine", (await Assert.ThrowsAsync<InvalidOperationException>(() => failing)).Message);
        await Assert.ThrowsAsync<DbUpdateException>(() => refused);
        using var db = engine.OpenDb();
        Assert.Equal(["after", "before"], await db.Halls.Select(h => h.Name).OrderBy(n => n).ToListAsync(Cancel));
    }

    [Fact]
    public async Task One_work_alone_that_fails_leaves_nothing()
    {
        var engine = await Host.EmptyAsync();
        await using var writer = new WriterQueue(engine, TimeProvider.System);
        await Assert.ThrowsAsync<InvalidOperationException>(() => writer.RunAsync<int>(s => { Add(s, "x"); throw new InvalidOperationException("mine"); }, Cancel));
        await writer.RunAsync(s => Add(s, "y"), Cancel);
        Assert.Equal(1, await CountAsync(engine));
    }

    [Fact]
    public async Task Who_gives_up_while_waiting_is_answered_at_once_and_nothing_is_done()
    {
        var engine = await Host.EmptyAsync();
        await using var writer = new WriterQueue(engine, TimeProvider.System);
        using var gate = new ManualResetEventSlim();
        var first = HoldUp(writer, gate);
        using var patience = new CancellationTokenSource();
        var given = writer.RunAsync(s => Add(s, "given up"), patience.Token);
        await patience.CancelAsync();
        // The writer is still held up.
        var cancelled = await Assert.ThrowsAnyAsync<OperationCanceledException>(() => given.WaitAsync(TimeSpan.FromSeconds(10), Cancel));
        Assert.Equal(patience.Token, cancelled.CancellationToken);
        gate.Set();
        await first;
        await writer.RunAsync(s => Add(s, "next"), Cancel);
        Assert.Equal(1, await CountAsync(engine));
    }

    [Fact]
    public async Task A_work_that_has_begun_is_done_whatever_its_caller_wants()
    {
        var engine = await Host.EmptyAsync();
        await using var writer = new WriterQueue(engine, TimeProvider.System);
        using var patience = new CancellationTokenSource();
        Assert.Equal(1, await writer.RunAsync(s => { patience.Cancel(); return Add(s, "begun"); }, patience.Token));
        Assert.Equal(1, await CountAsync(engine));
    }

    [Fact]
    public async Task The_time_of_a_write_has_whole_milliseconds()
    {
        var engine = await Host.EmptyAsync();
        await using var writer = new WriterQueue(engine, new FixedTime(Now.AddTicks(1234)));
        Assert.Equal(Now, await writer.RunAsync(s => s.Now, Cancel));
    }

    [Fact]
    public async Task Ending_does_what_still_waits_and_takes_no_more()
    {
        var engine = await Host.EmptyAsync();
        var writer = new WriterQueue(engine, TimeProvider.System);
        var works = Enumerable.Range(0, 200).Select(n => writer.RunAsync(s => Add(s, $"Hall {n}"), Cancel)).ToList();
        await writer.DisposeAsync();
        await Task.WhenAll(works);
        Assert.Equal(200, await CountAsync(engine));
        await Assert.ThrowsAsync<ObjectDisposedException>(() => writer.RunAsync(s => Add(s, "late"), Cancel));
    }

    [Fact]
    public async Task A_work_that_breaks_the_transaction_fails_for_everybody_of_its_group_and_the_writer_goes_on()
    {
        var engine = await Host.EmptyAsync();
        await using var writer = new WriterQueue(engine, TimeProvider.System);
        using var gate = new ManualResetEventSlim();
        var first = HoldUp(writer, gate);
        var before = writer.RunAsync(s => Add(s, "before"), Cancel);
        var breaking = writer.RunAsync(s => { s.Transaction.Rollback(); return 0; }, Cancel);
        gate.Set();
        await first;
        await Assert.ThrowsAnyAsync<Exception>(() => breaking);
        await Assert.ThrowsAnyAsync<Exception>(() => before);
        Assert.Equal(0, await CountAsync(engine));
        await writer.RunAsync(s => Add(s, "after"), Cancel).WaitAsync(TimeSpan.FromSeconds(30), Cancel);
        Assert.Equal(1, await CountAsync(engine));
    }

    /// <summary>Keeps the writer busy until the gate opens, so that what comes meanwhile waits together.</summary>
    protected static Task<int> HoldUp(WriterQueue writer, ManualResetEventSlim gate, Action<WriteSession>? before = null)
    {
        ArgumentNullException.ThrowIfNull(writer);
        using var started = new ManualResetEventSlim();
        var held = writer.RunAsync(
            session =>
            {
                before?.Invoke(session);
                started.Set();
                gate.Wait(Cancel);
                return 0;
            },
            Cancel);
        started.Wait(Cancel);
        return held;
    }

    protected static int Add(WriteSession session, string name)
    {
        ArgumentNullException.ThrowIfNull(session);
        session.Db.Halls.Add(new HallRow { Club = session.Club, Id = session.NewId(), Name = name });
        return session.Db.SaveChanges();
    }

    protected static async Task<int> CountAsync(Engine engine)
    {
        ArgumentNullException.ThrowIfNull(engine);
        using var db = engine.OpenDb();
        return await db.Halls.CountAsync(Cancel);
    }
}

public sealed class WriterOnPostgres(PostgresDatabase database) : WriterSpecification(new PostgresHost(database)), IClassFixture<PostgresDatabase>;

public sealed class WriterOnSqlite() : WriterSpecification(new SqliteHost())
{
    [Fact]
    public async Task A_full_disk_is_said_to_everybody_and_the_writer_goes_on_when_there_is_room()
    {
        var engine = await Host.EmptyAsync();
        await using var writer = new WriterQueue(engine, TimeProvider.System);
        await writer.RunAsync(s => Add(s, "kept"), Cancel);
        using var gate = new ManualResetEventSlim();
        var first = HoldUp(writer, gate, Limit);
        var full = Enumerable.Range(0, 4).Select(_ => writer.RunAsync(s => Add(s, new string('x', 200_000)), Cancel)).ToList();
        gate.Set();
        await first;
        foreach (var work in full)
        {
            var cause = await Assert.ThrowsAnyAsync<Exception>(() => work);
            Assert.Contains("full", (cause.InnerException ?? cause).Message, StringComparison.Ordinal);
        }

        // A new connection has no limit: there is room again.
        Assert.Equal(1, await writer.RunAsync(s => Add(s, "after"), Cancel).WaitAsync(TimeSpan.FromSeconds(30), Cancel));
        using var db = engine.OpenDb();
        Assert.Equal(["after", "kept"], await db.Halls.Select(h => h.Name).OrderBy(n => n).ToListAsync(Cancel));
    }

    [Fact]
    public async Task A_process_killed_in_the_middle_of_taps_loses_none_that_it_answered()
    {
        using var folder = new TempFolder();
        var file = folder.File("club.keikocho");
        var answered = new List<Guid>();
        using (var child = Process.Start(ThisProgram(TappingChild.Verb, file))!)
        {
            while (answered.Count < 300 && await child.StandardOutput.ReadLineAsync(Cancel) is { } line) answered.Add(Guid.Parse(line.Split(' ')[0]));
            // SIGKILL: nothing of the process runs after it.
            child.Kill(entireProcessTree: true);
            while (await child.StandardOutput.ReadLineAsync(Cancel) is { } line) if (Guid.TryParse(line.Split(' ')[0], out var id)) answered.Add(id);
            await child.WaitForExitAsync(Cancel);
        }

        Assert.True(answered.Count >= 300, $"The child answered only {answered.Count} taps.");
        var engine = new SqliteEngine(file);
        await engine.UpgradeAsync(Now, Cancel);
        using (var db = engine.OpenDb())
        {
            var kept = (await db.Marks.Select(m => m.Id).ToListAsync(Cancel)).ToHashSet();
            Assert.DoesNotContain(answered, id => !kept.Contains(id));
            Assert.Equal(1, await db.Attendances.CountAsync(Cancel));
        }

        var report = await Keikocho.Store.Keeping.CheckClub.RunAsync(engine, _ => new Keikocho.Core.Evening.AttendanceRules(), thorough: true, cancel: Cancel);
        Assert.Empty(report.Problems);
        engine.Release();
    }

    /// <summary>This test program again, whether it was started by itself or as <c>dotnet exec</c>.</summary>
    private static ProcessStartInfo ThisProgram(params string[] arguments)
    {
        var isRuntime = Path.GetFileNameWithoutExtension(Environment.ProcessPath) == "dotnet";
        string[] program = isRuntime ? ["exec", typeof(TappingChild).Assembly.Location] : [];
        return new ProcessStartInfo(Environment.ProcessPath!, [.. program, .. arguments]) { RedirectStandardOutput = true };
    }

    private static void Limit(WriteSession session)
    {
        using var command = session.Db.Database.GetDbConnection().CreateCommand();
        command.Transaction = session.Transaction;
        command.CommandText = "PRAGMA page_count";
        var pages = Convert.ToInt64(command.ExecuteScalar(), System.Globalization.CultureInfo.InvariantCulture);
        command.CommandText = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"PRAGMA max_page_count={pages + 2}");
        command.ExecuteNonQuery();
    }
}
