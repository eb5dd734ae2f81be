using System.Data.Common;
using Keikocho.Core.Evening;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;
using Keikocho.Store.Marks;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.Demo;

/// <summary>What was written.</summary>
/// <param name="People">Adults, leaders and children.</param>
/// <param name="Lessons">Lessons, held, closed and still to come.</param>
/// <param name="Marks">Marks.</param>
/// <param name="States">States of a person at a lesson, folded from the marks.</param>
public sealed record WrittenDemo(int People, int Lessons, int Marks, int States);

/// <summary>Writes a demo club into an empty database, all or nothing.</summary>
public static class WriteDemo
{
    /// <summary>Marks that are held in memory at once.</summary>
    private const int MarksAtOnce = 20_000;

    /// <summary>Brings the database to this version's shape and writes the club in one transaction.</summary>
    /// <param name="engine">Where to; the rows take its club number.</param>
    /// <param name="rows">The club.</param>
    /// <param name="now">The instant of writing, in the trail's last line; not before the last thing that happens in the demo.</param>
    /// <param name="cancel">Stops the writing; nothing is kept then.</param>
    /// <exception cref="StoreRefusal">There is a club already; nothing was changed.</exception>
    /// <exception cref="ArgumentException">The instant lies before the demo's last line.</exception>
    public static async Task<WrittenDemo> WriteAsync(Engine engine, DemoRows rows, DateTimeOffset now, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(engine);
        ArgumentNullException.ThrowIfNull(rows);
        now = DateTimeOffset.FromUnixTimeMilliseconds(now.ToUnixTimeMilliseconds());
        if (now < rows.Trail[^1].At) throw new ArgumentException($"The demo for {rows.Today:yyyy-MM-dd} cannot be written at {now:u}: it holds later events.", nameof(now));
        await engine.UpgradeAsync(now, cancel).ConfigureAwait(false);
        // Both drivers do this work faster without asynchronous calls; the caller's thread is kept free.
        return await Task.Run(() => Write(engine, rows, now, cancel), cancel).ConfigureAwait(false);
    }

    private static WrittenDemo Write(Engine engine, DemoRows rows, DateTimeOffset now, CancellationToken cancel)
    {
        using var connection = engine.OpenConnection();
        if (connection is SqliteConnection) Set(connection, "PRAGMA cache_size=-64000");
        WrittenDemo written;
        using (var transaction = engine.BeginWriting(connection))
        {
            using var db = engine.OpenDb(connection);
            db.Database.UseTransaction(transaction);
            if (db.Clubs.Any()) throw new StoreRefusal($"There is a club in {engine.Place} already. Name another place for the demo; nothing was changed.");
            using (var writer = BulkWriter.For(db, connection, transaction))
            {
                WriteClub(writer, rows, now);
                written = WriteRegisters(writer, rows, cancel);
            }

            transaction.Commit();
        }

        if (connection is SqliteConnection)
        {
            // The log is as long as the whole club; the next reader should not have to walk through it.
            Set(connection, "PRAGMA wal_checkpoint(TRUNCATE)");
            Set(connection, SqlitePragmas.Text);
        }

        return written;
    }

    private static void WriteClub(BulkWriter writer, DemoRows rows, DateTimeOffset now)
    {
        // Each kind after those that it points to: foreign keys are checked as rows come.
        writer.Write([rows.Club]);
        writer.Write(rows.Halls);
        writer.Write(rows.Devices);
        writer.Write(rows.People);
        writer.Write(rows.Families);
        writer.Write(rows.FamilyMembers);
        writer.Write(rows.Contacts);
        writer.Write(rows.Registrations);
        writer.Write(rows.Consents);
        writer.Write(rows.Duties);
        writer.Write(rows.KeepAparts);
        writer.Write(rows.Ladders);
        writer.Write(rows.Ranks);
        writer.Write(rows.Editions);
        writer.Write(rows.Items);
        writer.Write(rows.AgeRules);
        writer.Write(rows.Programmes);
        writer.Write(rows.WeeklyHours);
        writer.Write(rows.Terms);
        writer.Write(rows.TermUnits);
        writer.Write(rows.Closures);
        writer.Write(rows.Evenings);
        writer.Write(rows.Lessons);
        writer.Write(rows.PromotionTests);
        writer.Write(rows.Enrolments);
        writer.Write(rows.RegisterPlaces);
        writer.Write(rows.Crossings);
        writer.Write(rows.Awards);
        writer.Write(rows.StandDowns);
        writer.Write(rows.Adaptations);
        writer.Write(rows.ChosenItems);
        writer.Write(rows.Overrules);
        writer.Write(rows.KeepTogethers);
        writer.Write(rows.Obstacles);
        writer.Write(rows.Showings);
        writer.Write(rows.Togethers);
        writer.Write(rows.Knocks);
        writer.Write(rows.KnockLines);
        writer.Write(rows.NearMisses);
        writer.Write(rows.Trail);
        // The history before is the demo's; this line says when it came in.
        var arrival = new TrailRow { Club = rows.Club.Club, Number = rows.Trail[^1].Number + 1, At = now, Kind = TrailKind.Restored, SubjectId = rows.Club.Id };
        arrival.Hash = TrailChain.HashOf(arrival, rows.Trail[^1].Hash);
        writer.Write([arrival]);
    }

    private static WrittenDemo WriteRegisters(BulkWriter writer, DemoRows rows, CancellationToken cancel)
    {
        var rules = new AttendanceRules();
        var marks = new List<MarkRow>(MarksAtOnce + 200);
        var states = new List<AttendanceRow>(MarksAtOnce + 200);
        int marksWritten = 0, statesWritten = 0;
        void Flush()
        {
            cancel.ThrowIfCancellationRequested();
            writer.Write(marks);
            writer.Write(states);
            marksWritten += marks.Count;
            statesWritten += states.Count;
            marks.Clear();
            states.Clear();
        }

        var seen = new Dictionary<(Guid Person, Guid Item), List<DatedMark>>();
        foreach (var (lesson, made) in rows.Registers)
        {
            marks.AddRange(made);
            foreach (var mark in made)
            {
                if (mark.ItemId is not { } item) continue;
                if (!seen.TryGetValue((mark.PersonId, item), out var own)) seen.Add((mark.PersonId, item), own = []);
                own.Add(new DatedMark(mark, lesson.Date));
            }

            foreach (var own in made.GroupBy(m => m.PersonId))
                if (FoldMarks.Fold(lesson, own.Key, [.. own], rules) is { } state) states.Add(state);
            if (marks.Count >= MarksAtOnce) Flush();
        }

        Flush();
        WriteSeen(writer, rows.Club.Club, seen);
        return new WrittenDemo(rows.People.Count, rows.Lessons.Count, marksWritten, statesWritten);
    }

    /// <summary>The states of what was seen: each folded once, when all its marks are there.</summary>
    private static void WriteSeen(BulkWriter writer, int club, Dictionary<(Guid Person, Guid Item), List<DatedMark>> seen)
    {
        var items = new List<ItemStateRow>();
        var falls = new List<FallStateRow>();
        foreach (var ((person, item), marks) in seen.OrderBy(s => s.Key.Person).ThenBy(s => s.Key.Item))
        {
            if (item == MarkCode.Falls)
            {
                if (FoldEvidence.Falls(marks) is { Length: > 0 } packed) falls.Add(new FallStateRow { Club = club, PersonId = person, Falls = packed });
            }
            else if (FoldEvidence.Evenings(marks) is { Length: > 0 } packed)
            {
                items.Add(new ItemStateRow { Club = club, PersonId = person, ItemId = item, Evenings = packed });
            }
        }

        writer.Write(items);
        writer.Write(falls);
    }

    private static void Set(DbConnection connection, string pragma)
    {
        using var command = connection.CreateCommand();
#pragma warning disable CA2100 // Constants of this class and of the engine.
        command.CommandText = pragma;
#pragma warning restore CA2100
        command.ExecuteNonQuery();
    }
}
