using Keikocho.Store.Calendar;
using Keikocho.Store.Engines;
using Keikocho.Store.Hall;
using Keikocho.Store.Keeping;
using Keikocho.Store.Marks;
using Keikocho.Store.Starter;

namespace Keikocho.Store.Evening;

/// <summary>A note as a tablet hands it in, now or a day later.</summary>
/// <param name="Id">Made where it was tapped; the same id again changes nothing.</param>
/// <param name="LessonId">Which lesson of the evening that the tablet joined.</param>
/// <param name="PersonId">The child.</param>
/// <param name="By">Who acted on the tablet.</param>
/// <param name="MadeAt">By the tablet's clock, which may be wrong.</param>
/// <param name="Phrase">Key of the phrase.</param>
/// <param name="Replaces">The tablet's own note that this one takes back; null for a note.</param>
public sealed record HandedNote(Guid Id, Guid LessonId, Guid PersonId, Guid By, DateTimeOffset MadeAt, string Phrase, Guid? Replaces);

/// <summary>Notes by ready phrases: handed in by tablets, taken back, and erased when their time is over.</summary>
public sealed class PhraseNoteStore(WriterQueue writer)
{
    /// <summary>How many days a note stands where the lesson is in no term.</summary>
    public const int DaysWithoutTerm = 90;

    /// <summary>Takes a note back on the laptop; false where it is gone already, or where no adult on duty asks.</summary>
    public Task<bool> TakeBackAsync(Guid note, DateOnly today, Guid by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        if (!EvidenceStatements.IsAdultOnDuty(session, by, today)) return false;
        if (session.Db.PhraseNotes.FirstOrDefault(n => n.Id == note && n.TakenBackAt == null) is not { } row) return false;
        TakeBack(session, row, by, device);
        return true;
    }, cancel);

    /// <summary>One note of a tablet, inside the transaction of everything that it hands in; who may was asked before.</summary>
    internal static (HandInFate Fate, string? Why) Take(WriteSession session, HandedNote note, LessonRow lesson, Guid device)
    {
        var db = session.Db;
        if (note.Replaces is { } replaced)
        {
            if (db.PhraseNotes.FirstOrDefault(n => n.Id == replaced) is not { } known) return (HandInFate.Refused, "The note that it takes back never came.");
            if (known.DeviceId != device) return (HandInFate.Refused, "A tablet takes back its own notes only; take it back on the laptop.");
            if (known.PersonId != note.PersonId || known.LessonId != note.LessonId) return (HandInFate.Refused, "It takes back a note of something else.");
            if (known.TakenBackAt is not null) return (HandInFate.TakenBefore, null);
            TakeBack(session, known, note.By, device);
            return (HandInFate.Taken, null);
        }

        if (db.PhraseNotes.Any(n => n.Id == note.Id)) return (HandInFate.TakenBefore, null);
        if (StarterPhrases.Of(note.Phrase) is null) return (HandInFate.Refused, "That phrase is not in the list any more.");
        var term = db.Terms.Where(t => t.From <= lesson.Date && t.To >= lesson.Date).OrderBy(t => t.To).Select(t => (DateOnly?)t.To).FirstOrDefault();
        db.PhraseNotes.Add(new PhraseNoteRow
        {
            Club = session.Club,
            Id = note.Id,
            PersonId = note.PersonId,
            LessonId = note.LessonId,
            Phrase = note.Phrase,
            ById = note.By,
            DeviceId = device,
            MadeAt = note.MadeAt,
            ReceivedAt = session.Now,
            Until = term ?? lesson.Date.AddDays(DaysWithoutTerm),
        });
        db.SaveChanges();
        session.Note(TrailKind.PhraseNoteMade, note.Id, note.By, device);
        return (HandInFate.Taken, null);
    }

    /// <summary>Erases what stands no more, whether or not it was taken back.</summary>
    internal static void EndPast(WriteSession session, DateOnly today)
    {
        if (session.Command("""DELETE FROM "PhraseNotes" WHERE "Club" = @club AND "Until" < @today""", ("@club", session.Club), ("@today", today)).ExecuteNonQuery() > 0)
            session.Note(TrailKind.PhraseNotesEnded, null, null, null);
    }

    private static void TakeBack(WriteSession session, PhraseNoteRow row, Guid by, Guid device)
    {
        (row.TakenBackAt, row.TakenBackById) = (session.Now, by);
        session.Db.SaveChanges();
        session.Note(TrailKind.PhraseNoteTakenBack, row.Id, by, device);
    }
}
