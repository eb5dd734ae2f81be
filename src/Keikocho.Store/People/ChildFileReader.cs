using System.Globalization;
using Keikocho.Core.Evening;
using Keikocho.Core.Safety;
using Keikocho.Store.Engines;
using Keikocho.Store.Kernel;
using Keikocho.Store.Safety;

namespace Keikocho.Store.People;

/// <summary>Reads the file of one child: one statement, whatever is in it.</summary>
public static class ChildFileReader
{
    private const int Contact = 1, Registration = 2, Photo = 3, Sibling = 4, Apart = 5, Together = 6, Knock = 7, Line = 8, Lesson = 9;

    /// <summary>The file; an empty one of a child who does not exist.</summary>
    /// <param name="reading">The session.</param>
    /// <param name="person">The child.</param>
    /// <param name="programme">The programme whose lessons are asked for.</param>
    /// <param name="lessonsFrom">First day of these lessons; null for none of them.</param>
    /// <param name="today">The day on which the wishes hold.</param>
    public static ChildFile Of(ReadSession reading, Guid person, Guid programme, DateOnly? lessonsFrom, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(reading);
        var of = Read(reading, person, programme, lessonsFrom, today).ToLookup(r => r.What);
        // The newest word holds, and of one moment the later day.
        var registration = of[Registration].OrderBy(r => r.MadeAt).ThenBy(r => r.Day ?? DateOnly.MinValue).LastOrDefault();
        var photo = of[Photo].OrderByDescending(r => r.Day).ThenByDescending(r => r.MadeAt).ThenBy(r => r.Id).FirstOrDefault();
        var lines = of[Line].Select(r => new HeldKnockLine(r.Id, r.Other!.Value, (KnockLine)r.Number, r.Day, r.One, r.By!.Value, r.MadeAt));
        var knocks = of[Knock].Select(r => new HeldKnock(r.Id, person, r.Other!.Value, r.Day!.Value, (KnockActivity)r.Number, r.Yes, r.By, r.MadeAt, []));
        return new ChildFile(
            [.. of[Contact].OrderBy(r => r.Number).ThenBy(r => r.Id).Select(r => new OpenContact(r.Id, r.One, r.Two, r.Three, r.Yes))],
            registration is not null,
            registration?.Day,
            photo?.Yes,
            photo?.Day,
            [.. of[Sibling].Select(r => r.Id).Distinct().Order()],
            [.. Wishes(of[Apart], apart: true), .. Wishes(of[Together], apart: false)],
            KnockReader.InOrder(knocks, lines),
            [.. of[Lesson].Select(r => new LessonState(r.Id, (AttendanceWord)r.Number, r.Yes, r.Counts, r.Arrived, r.LeftAt))]);
    }

    private static IEnumerable<PairWish> Wishes(IEnumerable<Row> rows, bool apart) =>
        rows.Select(r => new PairWish(r.Id, r.Other!.Value, r.By!.Value, apart, r.Day!.Value, null)).OrderBy(w => w.From).ThenBy(w => w.Id);

    private static List<Row> Read(ReadSession reading, Guid person, Guid programme, DateOnly? lessonsFrom, DateOnly today) => reading.Rows(
        string.Create(CultureInfo.InvariantCulture, $"""
        SELECT {Contact}, "Id", CAST(NULL AS uuid), CAST(NULL AS uuid), CAST(NULL AS date), CAST(0 AS bigint), "Position", "BarredFromCollecting", FALSE,
                CAST(NULL AS smallint), CAST(NULL AS smallint), "Name", "Relation", "Phone"
            FROM "Contacts" WHERE "Club" = @club AND "PersonId" = @person
        UNION ALL SELECT {Registration}, "Id", NULL, NULL, "Expires", "MadeAt", 0, FALSE, FALSE, NULL, NULL, NULL, NULL, NULL
            FROM "Registrations" WHERE "Club" = @club AND "PersonId" = @person
        UNION ALL SELECT {Photo}, "Id", NULL, NULL, "On", "MadeAt", 0, "Given", FALSE, NULL, NULL, NULL, NULL, NULL
            FROM "Consents" WHERE "Club" = @club AND "PersonId" = @person AND "Use" = @photo
        UNION ALL SELECT {Sibling}, m."PersonId", NULL, NULL, NULL, 0, 0, FALSE, FALSE, NULL, NULL, NULL, NULL, NULL
            FROM "FamilyMembers" AS own JOIN "FamilyMembers" AS m ON m."Club" = own."Club" AND m."FamilyId" = own."FamilyId" AND m."PersonId" <> own."PersonId"
            WHERE own."Club" = @club AND own."PersonId" = @person
        UNION ALL SELECT {Apart}, "Id", "FirstId", "SecondId", "From", 0, 0, FALSE, FALSE, NULL, NULL, NULL, NULL, NULL
            FROM "KeepAparts" WHERE "Club" = @club AND ("FirstId" = @person OR "SecondId" = @person) AND "From" <= @today AND "To" IS NULL
        UNION ALL SELECT {Together}, "Id", "FirstId", "SecondId", "From", 0, 0, FALSE, FALSE, NULL, NULL, NULL, NULL, NULL
            FROM "KeepTogethers" WHERE "Club" = @club AND ("FirstId" = @person OR "SecondId" = @person) AND "From" <= @today AND "To" IS NULL
        UNION ALL SELECT {Knock}, k."Id", k."LessonId",
                (SELECT m."ById" FROM "Marks" AS m WHERE m."Club" = k."Club" AND m."Id" = k."Id" AND m."LessonId" = k."LessonId"),
                k."On", k."MadeAt", k."Activity", k."NearMiss", FALSE, NULL, NULL, NULL, NULL, NULL
            FROM "Knocks" AS k WHERE k."Club" = @club AND k."PersonId" = @person
        UNION ALL SELECT {Line}, l."Id", l."KnockId", l."ById", l."On", l."MadeAt", l."Kind", FALSE, FALSE, NULL, NULL, l."Words", NULL, NULL
            FROM "Knocks" AS k JOIN "KnockLines" AS l ON l."Club" = k."Club" AND l."KnockId" = k."Id" WHERE k."Club" = @club AND k."PersonId" = @person
        UNION ALL SELECT {Lesson}, "LessonId", NULL, NULL, NULL, 0, "Word", "Late", "Counts", "Arrived", "LeftAt", NULL, NULL, NULL
            FROM "Attendances" WHERE "Club" = @club AND "PersonId" = @person AND "ProgrammeId" = @programme AND "Date" >= @from
        """),
        row => new Row(
            row.Whole(), row.Id(), row.IdIfAny(), row.IdIfAny(), row.DayIfAny(), row.Instant(), row.Whole(), row.Yes(), row.Yes(), row.TimeIfAny(), row.TimeIfAny(),
            Seal.Open(row.SealedIfAny<string>()), Seal.Open(row.SealedIfAny<string>()), Seal.Open(row.SealedIfAny<string>())),
        ("@person", person), ("@programme", programme), ("@photo", ConsentUse.Photo), ("@today", today), ("@from", lessonsFrom ?? DateOnly.MaxValue));

    // One row for all kinds: what a kind has no use for is empty.
    private sealed record Row(
        int What, Guid Id, Guid? Other, Guid? By, DateOnly? Day, DateTimeOffset MadeAt, int Number, bool Yes, bool Counts, TimeOnly? Arrived, TimeOnly? LeftAt,
        string? One, string? Two, string? Three);
}
