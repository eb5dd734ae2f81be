using System.Data.Common;
using Keikocho.Core.Evening;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping.Checking;
using Microsoft.Data.Sqlite;

namespace Keikocho.Store.Keeping;

/// <summary>Reads the whole club and says what is not as it should be. It changes nothing, and others may go on working.</summary>
public static class CheckClub
{
    private const int ReadersOfRest = 2;

    /// <summary>Runs every part of the check on one unchanging view of the club.</summary>
    /// <param name="engine">The club.</param>
    /// <param name="rulesOn">The rules of the fold on a day, from the club's settings.</param>
    /// <param name="thorough">
    /// True compares every index of a SQLite file with its table too: about ten times slower on a large club. False looks at every page
    /// and every row.
    /// </param>
    /// <param name="progress">Hears how far it is.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="StoreRefusal">There is no club to check, or it is of another version.</exception>
    public static async Task<CheckReport> RunAsync(
        Engine engine,
        Func<DateOnly, AttendanceRules> rulesOn,
        bool thorough = false,
        IProgress<CheckProgress>? progress = null,
        CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(engine);
        ArgumentNullException.ThrowIfNull(rulesOn);
        if (engine is SqliteEngine { File: var file } && !File.Exists(file)) throw new StoreRefusal($"{file} does not exist.");
        var view = await ReadSnapshot.OpenAsync(engine, ReadersOfRest, cancel, threadsBeside: 2, readersOfEach: CheckStates.Readers).ConfigureAwait(false);
        await using var disposal = view.ConfigureAwait(false);
        try
        {
            await KnownClub.RefuseOtherVersionAsync(view, engine, cancel).ConfigureAwait(false);
        }
        catch (SqliteException cause)
        {
            throw new StoreRefusal($"{engine.Place} is so damaged that it cannot be read: {cause.Message} Restore a copy.", cause);
        }

        // Who was there is the longest part: it goes in two halves, and everything else beside them. Each thread has findings of its own.
        var (ofPages, ofRest, ofLower, ofUpper) = (new Findings(), new Findings(), new Findings(), new Findings());
        var border = Guid.Empty;
        Part(CheckPart.Calendar, ofRest, progress, () => border = ReadForCheck.Middle(view, 0, engine.Club));
        var rules = OnceADay(rulesOn);
        var lower = Task.Run(() => Half(isUpper: false, ofLower), cancel);
        var rest = Task.Run(() => CheckRest(view, engine, ofRest, progress, cancel), cancel);
        var upper = Task.Run(() => Half(isUpper: true, ofUpper), cancel);
        var pages = Task.Run(() => CheckPages(engine, thorough, ofPages, progress, cancel), cancel);
        // The view is closed when all have ended, however they did.
        await Task.WhenAll(lower, rest, upper, pages).ConfigureAwait(false);
        var halves = await Task.WhenAll(lower, upper).ConfigureAwait(false);
        var (lines, opened) = await rest.ConfigureAwait(false);
        return new CheckReport(
            Findings.Together(ofPages, ofRest, ofLower, ofUpper), halves.Sum(h => h.Marks), halves.Sum(h => h.States), lines, opened, thorough);

        (long Marks, long States) Half(bool isUpper, Findings findings)
        {
            long marks = 0, states = 0;
            Part(CheckPart.States, findings, progress, () =>
            {
                var firstLane = ReadersOfRest + (isUpper ? CheckStates.Readers : 0);
                using var check = new CheckStates(view, firstLane, engine.Club, findings, rules, border, isUpper);
                check.Run(progress, cancel);
                (marks, states) = (check.MarksRead, check.StatesRead);
            });
            return (marks, states);
        }
    }

    /// <summary>Asks once for each day, and never two at a time.</summary>
    private static Func<DateOnly, AttendanceRules> OnceADay(Func<DateOnly, AttendanceRules> rulesOn)
    {
        var known = new Dictionary<DateOnly, AttendanceRules>();
        return day =>
        {
            lock (known)
            {
                if (!known.TryGetValue(day, out var rules)) known.Add(day, rules = rulesOn(day));
                return rules;
            }
        };
    }

    private static (long Lines, long Opened) CheckRest(ReadSnapshot view, Engine engine, Findings findings, IProgress<CheckProgress>? progress, CancellationToken cancel)
    {
        long lines = 0, opened = 0;
        var rows = new CheckRows(view, engine.Club, findings);
        Part(CheckPart.Links, findings, progress, () => rows.Links(cancel));
        Part(CheckPart.Trail, findings, progress, () => lines = rows.Trail(cancel));
        Part(CheckPart.Sealed, findings, progress, () => opened = rows.Sealed(cancel));
        Part(CheckPart.Calendar, findings, progress, rows.Calendar);
        Part(CheckPart.Marks, findings, progress, rows.Sequences);
        Part(CheckPart.States, findings, progress, () => new CheckEvidence(view, engine.Club, findings).Run(cancel));
        return (lines, opened);
    }

    private static void Part(CheckPart part, Findings findings, IProgress<CheckProgress>? progress, Action run)
    {
        progress?.Report(new CheckProgress(part, 0));
        try
        {
            run();
        }
        catch (Exception cause) when (cause is DbException or InvalidDataException or InvalidCastException or FormatException)
        {
            // A damaged part must not hide what is wrong with the others.
            findings.Add(part, $"{part} could not be read to the end: {cause.Message}");
        }
    }

    private static void CheckPages(Engine engine, bool thorough, Findings findings, IProgress<CheckProgress>? progress, CancellationToken cancel)
    {
        // PostgreSQL has no such question for everybody: it checks its pages as it reads them, and every row is read here.
        if (engine is not SqliteEngine sqlite) return;
        progress?.Report(new CheckProgress(CheckPart.Engine, 0));
        var text = new SqliteConnectionStringBuilder { DataSource = sqlite.File, Mode = SqliteOpenMode.ReadOnly, Pooling = false };
        using var connection = new SqliteConnection(text.ToString());
        connection.Open();
        using var stop = cancel.UnsafeRegister(_ => SQLitePCL.raw.sqlite3_interrupt(connection.Handle), null);
        using var command = connection.CreateCommand();
        command.CommandText = thorough ? "PRAGMA integrity_check(20)" : "PRAGMA quick_check(20)";
        try
        {
            using var reader = command.ExecuteReader();
            while (reader.Read())
            {
                if (reader.GetString(0) is var line && line != "ok") findings.Add(CheckPart.Engine, $"SQLite says: {line.ReplaceLineEndings(" ")}");
            }
        }
        catch (SqliteException cause)
        {
            cancel.ThrowIfCancellationRequested();
            findings.Add(CheckPart.Engine, $"SQLite cannot read the file: {cause.Message}");
        }
    }
}
