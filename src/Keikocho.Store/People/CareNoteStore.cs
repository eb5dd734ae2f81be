using Keikocho.Core.Safety;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;
using Keikocho.Store.Kernel;
using Keikocho.Store.Sealing;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.People;

/// <summary>A care note as it is entered.</summary>
/// <param name="Heading">Under which heading.</param>
/// <param name="Text">The words; empty takes the note out.</param>
public sealed record NewCareNote(CareHeading Heading, string? Text);

/// <summary>A care note, opened.</summary>
/// <param name="Heading">Under which heading.</param>
/// <param name="Text">The words; null where the club's lock does not open it.</param>
/// <param name="ById">Who wrote it.</param>
/// <param name="MadeAt">When.</param>
public sealed record HeldCareNote(CareHeading Heading, string? Text, Guid ById, DateTimeOffset MadeAt);

/// <summary>How it stands with the care notes of a child, without a word of them.</summary>
/// <param name="PersonId">The child.</param>
/// <param name="AskedOn">When the family was last asked; null for never.</param>
/// <param name="HasNote">Whether there is a note: the plain mark.</param>
public sealed record CareStands(Guid PersonId, DateOnly? AskedOn, bool HasNote);

/// <summary>Care notes: stored only while the club's lock is open, and never plain.</summary>
public sealed class CareNoteStore(WriterQueue writer)
{
    /// <summary>
    /// Stores what the family said on a day: each heading that is given takes the place of the note before, an empty one takes it out. A
    /// note that did not open stays unless something is written in its place.
    /// </summary>
    /// <param name="person">The child.</param>
    /// <param name="notes">By heading; a heading that is not given stays as it is.</param>
    /// <param name="asked">The day on which the family was asked.</param>
    /// <param name="key">The open lock.</param>
    /// <param name="by">Who writes.</param>
    /// <param name="device">Where.</param>
    /// <param name="cancel">Counts only while it waits.</param>
    /// <returns>False when there is no such child, or a note is too long.</returns>
    /// <exception cref="ObjectDisposedException">The lock was shut in the meantime; nothing was stored.</exception>
    public Task<bool> EnterAsync(Guid person, IReadOnlyList<NewCareNote> notes, DateOnly asked, OpenedLock key, Guid by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        var db = session.Db;
        if (!db.People.Any(p => p.Id == person && p.ErasedAt == null)) return false;
        if (notes.Any(n => !Enum.IsDefined(n.Heading) || n.Text?.Length > CareHeadings.LongestNote)) return false;
        foreach (var note in notes)
        {
            var heading = (int)note.Heading;
            var row = db.CareNotes.FirstOrDefault(n => n.PersonId == person && n.Heading == heading);
            if (string.IsNullOrWhiteSpace(note.Text))
            {
                if (row is not null) db.CareNotes.Remove(row);
                continue;
            }

            if (row is null) db.CareNotes.Add(row = new CareNoteRow { Club = session.Club, Id = session.NewId(), PersonId = person, Heading = heading });
            // The same words again keep who wrote them and when.
            else if (Seal.Open(row.Text, key, new SealedAbout(person, row.Id)) == note.Text.Trim()) continue;
            row.Text = Seal.Close(note.Text.Trim(), key, new SealedAbout(person, row.Id));
            (row.ById, row.MadeAt) = (by, session.Now);
        }

        Ask(session, person, asked, by);
        db.SaveChanges();
        session.Note(TrailKind.CareNoteChanged, person, by, device);
        return true;
    }, cancel);

    /// <summary>Takes every care note of a child out, and that the family was asked. It needs no lock: nothing is read.</summary>
    /// <returns>False when there is nothing.</returns>
    public Task<bool> RemoveAsync(Guid person, Guid by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        var gone = session.Db.CareNotes.Where(n => n.PersonId == person).ExecuteDelete() + session.Db.CareAsked.Where(a => a.PersonId == person).ExecuteDelete();
        if (gone == 0) return false;
        session.Note(TrailKind.CareNoteChanged, person, by, device);
        return true;
    }, cancel);

    private static void Ask(WriteSession session, Guid person, DateOnly on, Guid by)
    {
        var row = session.Db.CareAsked.FirstOrDefault(a => a.PersonId == person);
        if (row is null) session.Db.CareAsked.Add(row = new CareAskedRow { Club = session.Club, PersonId = person });
        (row.On, row.ById) = (on, by);
    }
}

/// <summary>Reads care notes.</summary>
public static class CareNoteReader
{
    /// <summary>Of each of these children: when the family was asked, and whether there is a note. Without a word and without the lock.</summary>
    public static Dictionary<Guid, CareStands> Stands(ReadSession reading, IReadOnlyCollection<Guid> people)
    {
        ArgumentNullException.ThrowIfNull(reading);
        if (people.Count == 0) return [];
        var ids = new IdList([.. people.Distinct()]);
        return reading.Rows(
            $"""
            SELECT p."Id", a."On", (SELECT count(*) FROM "CareNotes" AS n WHERE n."Club" = p."Club" AND n."PersonId" = p."Id")
            FROM "People" AS p LEFT JOIN "CareAsked" AS a ON a."Club" = p."Club" AND a."PersonId" = p."Id"
            WHERE p."Club" = @club AND p."Id" IN ({ids.Names})
            """,
            row => new CareStands(row.Id(), row.DayIfAny(), row.Long() > 0), [.. ids.Values]).ToDictionary(r => r.PersonId);
    }

    /// <summary>Whether the club has any care note: then a red folder asks for the lock.</summary>
    public static bool Any(ReadSession reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return reading.Rows("""SELECT 1 FROM "CareNotes" WHERE "Club" = @club LIMIT 1""", row => row.Whole()).Count > 0;
    }

    /// <summary>The notes of each of these children, in the order of the headings; who has none is not there.</summary>
    /// <exception cref="ObjectDisposedException">The lock was shut in the meantime.</exception>
    public static Dictionary<Guid, IReadOnlyList<HeldCareNote>> Of(ReadSession reading, IReadOnlyCollection<Guid> people, OpenedLock key)
    {
        ArgumentNullException.ThrowIfNull(reading);
        if (people.Count == 0) return [];
        var ids = new IdList([.. people.Distinct()]);
        var rows = reading.Rows(
            $"""SELECT "Id", "PersonId", "Heading", "Text", "ById", "MadeAt" FROM "CareNotes" WHERE "Club" = @club AND "PersonId" IN ({ids.Names}) ORDER BY "PersonId", "Heading" """,
            row => (Id: row.Id(), Person: row.Id(), Heading: (CareHeading)row.Whole(), Text: new Sealed<string>(row.Bytes()), By: row.Id(), At: row.Instant()), [.. ids.Values]);
        return rows.GroupBy(r => r.Person).ToDictionary(
            own => own.Key,
            own => (IReadOnlyList<HeldCareNote>)[.. own.Select(r => new HeldCareNote(r.Heading, Seal.Open(r.Text, key, new SealedAbout(r.Person, r.Id)), r.By, r.At))]);
    }
}
