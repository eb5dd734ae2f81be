using System.Data.Common;
using System.Globalization;
using Keikocho.Core.Evening;
using Keikocho.Store.Calendar;
using Keikocho.Store.Engines;

namespace Keikocho.Store.Marks;

/// <summary>
/// The statements of a tap, written out: a mark goes in, the marks of that person at that lesson come out, the state that follows goes
/// in. The same text on both engines; the context would do the same with three times the work, and a tap happens forty times an evening
/// with a child waiting.
/// </summary>
internal static class TapStatements
{
    private const string InsertMark = """
        INSERT INTO "Marks" ("Club", "Id", "DeviceId", "Sequence", "LessonId", "PersonId", "ById", "MadeAt", "ReceivedAt", "Kind", "At", "ItemId", "Code", "Replaces")
        VALUES (@club, @id, @device,
            COALESCE(@sequence, (SELECT MAX("Sequence") FROM "Marks" WHERE "Club" = @club AND "DeviceId" = @device) + 1, 1),
            @lesson, @person, @by, @made, @received, @kind, @at, @item, @code, @replaces)
        ON CONFLICT ("Club", "Id") DO NOTHING
        """;

    private const string SelectLesson = """
        SELECT "ProgrammeId", "EveningId", "Date", "Start", "End", "UkemiFrom", "UkemiTo", "HalfTime", "ClosureId" FROM "Lessons"
        WHERE "Club" = @club AND "Id" = @lesson
        """;

    private const string SelectMarks = """
        SELECT "Id", "DeviceId", "Sequence", "ById", "MadeAt", "Kind", "At", "Code", "Replaces" FROM "Marks"
        WHERE "Club" = @club AND "LessonId" = @lesson AND "PersonId" = @person
        """;

    private const string UpsertState = """
        INSERT INTO "Attendances" ("Club", "LessonId", "PersonId", "ProgrammeId", "Date", "Word", "Arrived", "LeftAt", "Late", "Counts", "Ukemi", "LeftEarly", "Clash")
        VALUES (@club, @lesson, @person, @programme, @date, @word, @arrived, @left, @late, @counts, @ukemi, @early, @clash)
        ON CONFLICT ("Club", "LessonId", "PersonId") DO UPDATE SET "Word" = excluded."Word", "Arrived" = excluded."Arrived",
            "LeftAt" = excluded."LeftAt", "Late" = excluded."Late", "Counts" = excluded."Counts", "Ukemi" = excluded."Ukemi",
            "LeftEarly" = excluded."LeftEarly", "Clash" = excluded."Clash"
        """;

    private const string DeleteState = """
        DELETE FROM "Attendances" WHERE "Club" = @club AND "LessonId" = @lesson AND "PersonId" = @person
        """;

    /// <summary>Puts a mark in; false when its id is there already.</summary>
    /// <exception cref="DbException">There is no such lesson, person or device.</exception>
    public static bool Insert(WriteSession session, MarkRow mark, int? sequence)
    {
        var command = session.Command(
            InsertMark,
            ("@club", session.Club), ("@id", mark.Id), ("@device", mark.DeviceId), ("@sequence", sequence), ("@lesson", mark.LessonId),
            ("@person", mark.PersonId), ("@by", mark.ById), ("@made", mark.MadeAt), ("@received", mark.ReceivedAt), ("@kind", mark.Kind),
            ("@at", mark.At), ("@item", mark.ItemId), ("@code", mark.Code), ("@replaces", mark.Replaces));
        return command.ExecuteNonQuery() == 1;
    }

    /// <summary>The lesson as it is inside the transaction; null when there is none.</summary>
    public static LessonRow? Lesson(WriteSession session, Guid id)
    {
        var command = session.Command(SelectLesson, ("@club", session.Club), ("@lesson", id));
        using var reader = command.ExecuteReader();
        return reader.Read()
            ? new LessonRow
            {
                Club = session.Club,
                Id = id,
                ProgrammeId = session.ReadId(reader, 0),
                EveningId = session.ReadId(reader, 1),
                Date = reader.GetFieldValue<DateOnly>(2),
                Start = Time(reader, 3),
                End = Time(reader, 4),
                UkemiFrom = Time(reader, 5),
                UkemiTo = Time(reader, 6),
                HalfTime = Time(reader, 7),
                ClosureId = reader.IsDBNull(8) ? null : session.ReadId(reader, 8),
            }
            : null;
    }

    /// <summary>Whether there is such a person, and was not erased.</summary>
    public static bool Knows(WriteSession session, Guid person)
    {
        var command = session.Command(
            """SELECT 1 FROM "People" WHERE "Club" = @club AND "Id" = @person AND "ErasedAt" IS NULL""", ("@club", session.Club), ("@person", person));
        return command.ExecuteScalar() is not null;
    }

    /// <summary>Folds one person at one lesson again and stores the state.</summary>
    public static void StoreState(WriteSession session, LessonRow lesson, Guid person, AttendanceRules rules)
    {
        if (FoldMarks.Fold(lesson, person, Marks(session, lesson.Id, person), rules) is not { } state)
        {
            var delete = session.Command(DeleteState, ("@club", session.Club), ("@lesson", lesson.Id), ("@person", person));
            delete.ExecuteNonQuery();
            return;
        }

        var command = session.Command(
            UpsertState,
            ("@club", session.Club), ("@lesson", state.LessonId), ("@person", state.PersonId), ("@programme", state.ProgrammeId), ("@date", state.Date),
            ("@word", state.Word), ("@arrived", state.Arrived), ("@left", state.LeftAt), ("@late", state.Late), ("@counts", state.Counts),
            ("@ukemi", state.Ukemi), ("@early", state.LeftEarly), ("@clash", state.Clash));
        command.ExecuteNonQuery();
    }

    private static List<MarkRow> Marks(WriteSession session, Guid lesson, Guid person)
    {
        var command = session.Command(SelectMarks, ("@club", session.Club), ("@lesson", lesson), ("@person", person));
        using var reader = command.ExecuteReader();
        var marks = new List<MarkRow>();
        while (reader.Read())
        {
            marks.Add(new MarkRow
            {
                Club = session.Club,
                Id = session.ReadId(reader, 0),
                DeviceId = session.ReadId(reader, 1),
                Sequence = reader.GetInt32(2),
                LessonId = lesson,
                PersonId = person,
                ById = reader.IsDBNull(3) ? null : session.ReadId(reader, 3),
                MadeAt = DateTimeOffset.FromUnixTimeMilliseconds(reader.GetInt64(4)),
                Kind = (MarkKind)reader.GetInt32(5),
                At = reader.IsDBNull(6) ? null : Time(reader, 6),
                Code = reader.GetInt32(7),
                Replaces = reader.IsDBNull(8) ? null : session.ReadId(reader, 8),
            });
        }

        return marks;
    }

    private static TimeOnly Time(DbDataReader reader, int column)
    {
        var minutes = Convert.ToInt32(reader.GetValue(column), CultureInfo.InvariantCulture);
        return new TimeOnly(minutes / 60, minutes % 60);
    }
}
