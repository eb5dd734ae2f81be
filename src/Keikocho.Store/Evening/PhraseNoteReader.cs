using Keikocho.Store.Engines;

namespace Keikocho.Store.Evening;

/// <summary>A note that stands.</summary>
/// <param name="Id">Its id.</param>
/// <param name="PersonId">The child.</param>
/// <param name="LessonId">The lesson.</param>
/// <param name="On">Its day.</param>
/// <param name="Phrase">Key of the phrase.</param>
/// <param name="ById">Who made it.</param>
/// <param name="Until">Last day on which it stands.</param>
public sealed record HeldPhraseNote(Guid Id, Guid PersonId, Guid LessonId, DateOnly On, string Phrase, Guid ById, DateOnly Until);

/// <summary>Reads notes by ready phrases that stand: one statement each.</summary>
public static class PhraseNoteReader
{
    private const string Notes = """
        SELECT n."Id", n."PersonId", n."LessonId", l."Date", n."Phrase", n."ById", n."Until" FROM "PhraseNotes" AS n
        JOIN "Lessons" AS l ON l."Club" = n."Club" AND l."Id" = n."LessonId"
        WHERE n."Club" = @club AND n."TakenBackAt" IS NULL AND n."Until" >= @today AND n.
        """;

    private const string InOrder = """ ORDER BY l."Date" DESC, n."ReceivedAt", n."Id" """;

    /// <summary>Those of one child, the last evening first.</summary>
    public static IReadOnlyList<HeldPhraseNote> OfPerson(ReadSession reading, Guid person, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return reading.Rows($"""{Notes}"PersonId" = @person{InOrder}""", Row, ("@today", today), ("@person", person));
    }

    /// <summary>Those of lessons: of an evening, give all its lessons.</summary>
    public static IReadOnlyList<HeldPhraseNote> OfLessons(ReadSession reading, IReadOnlyCollection<Guid> lessons, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(reading);
        if (lessons.Count == 0) return [];
        var ids = new IdList([.. lessons.Distinct()]);
        return reading.Rows($"""{Notes}"LessonId" IN ({ids.Names}){InOrder}""", Row, [("@today", today), .. ids.Values]);
    }

    private static HeldPhraseNote Row(StoredRow row) => new(row.Id(), row.Id(), row.Id(), row.Day(), row.Text(), row.Id(), row.Day());
}
