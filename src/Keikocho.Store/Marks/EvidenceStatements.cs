using System.Data.Common;
using Keikocho.Core.Evening;
using Keikocho.Store.Engines;
using Keikocho.Store.Kernel;
using Keikocho.Store.People;

namespace Keikocho.Store.Marks;

/// <summary>A mark with the day of its lesson.</summary>
internal sealed record DatedMark(MarkRow Mark, DateOnly On);

/// <summary>The statements of what was seen, written out: the same text on both engines.</summary>
internal static class EvidenceStatements
{
    /// <summary>The columns of a mark of something seen, with the day of its lesson.</summary>
    public const string Columns = """
        m."Id", m."DeviceId", m."Sequence", m."LessonId", m."PersonId", m."ById", m."MadeAt", m."Kind", m."ItemId", m."Code", m."Replaces", l."Date"
        """;

    private const string From = """
        FROM "Marks" AS m JOIN "Lessons" AS l ON l."Club" = m."Club" AND l."Id" = m."LessonId" WHERE m."Club" = @club
        """;

    private const string UpsertItem = """
        INSERT INTO "ItemStates" ("Club", "PersonId", "ItemId", "Evenings") VALUES (@club, @person, @item, @evenings)
        ON CONFLICT ("Club", "PersonId", "ItemId") DO UPDATE SET "Evenings" = excluded."Evenings"
        """;

    private const string UpsertFalls = """
        INSERT INTO "FallStates" ("Club", "PersonId", "Falls") VALUES (@club, @person, @falls)
        ON CONFLICT ("Club", "PersonId") DO UPDATE SET "Falls" = excluded."Falls"
        """;

    /// <summary>All marks of one child and one item, of every lesson.</summary>
    public static List<DatedMark> OfItem(WriteSession session, Guid person, Guid item) =>
        Read(session, session.Command($"SELECT {Columns} {From} AND m.\"PersonId\" = @person AND m.\"ItemId\" = @item", ("@club", session.Club), ("@person", person), ("@item", item)));

    /// <summary>All marks of something seen at one lesson.</summary>
    public static List<DatedMark> OfLesson(WriteSession session, Guid lesson) =>
        Read(session, session.Command($"SELECT {Columns} {From} AND m.\"LessonId\" = @lesson AND m.\"ItemId\" IS NOT NULL", ("@club", session.Club), ("@lesson", lesson)));

    /// <summary>One mark; null when there is none of something seen.</summary>
    public static DatedMark? One(WriteSession session, Guid mark) =>
        Read(session, session.Command($"SELECT {Columns} {From} AND m.\"Id\" = @mark AND m.\"ItemId\" IS NOT NULL", ("@club", session.Club), ("@mark", mark))).FirstOrDefault();

    /// <summary>Folds one child and one item again and stores the state; the falls where the item is that of all falls.</summary>
    public static void StoreState(WriteSession session, Guid person, Guid item)
    {
        var marks = OfItem(session, person, item);
        if (item == MarkCode.Falls)
        {
            var falls = FoldEvidence.Falls(marks);
            if (falls.Length == 0)
                session.Command("""DELETE FROM "FallStates" WHERE "Club" = @club AND "PersonId" = @person""", ("@club", session.Club), ("@person", person)).ExecuteNonQuery();
            else
                session.Command(UpsertFalls, ("@club", session.Club), ("@person", person), ("@falls", falls)).ExecuteNonQuery();
            return;
        }

        var evenings = FoldEvidence.Evenings(marks);
        if (evenings.Length == 0)
            session.Command("""DELETE FROM "ItemStates" WHERE "Club" = @club AND "PersonId" = @person AND "ItemId" = @item""", ("@club", session.Club), ("@person", person), ("@item", item)).ExecuteNonQuery();
        else
            session.Command(UpsertItem, ("@club", session.Club), ("@person", person), ("@item", item), ("@evenings", evenings)).ExecuteNonQuery();
    }

    /// <summary>Whether there is such an item.</summary>
    public static bool KnowsItem(WriteSession session, Guid item) =>
        session.Command("""SELECT 1 FROM "Items" WHERE "Club" = @club AND "Id" = @item""", ("@club", session.Club), ("@item", item)).ExecuteScalar() is not null;

    /// <summary>What somebody may sign off on a day, as the file says inside the transaction.</summary>
    public static SignOff SignOffOf(WriteSession session, Guid? by, DateOnly day) =>
        by is { } person && Adult(session, person) is { } adult ? SignOff.Of(adult.Duties, adult.Born, adult.Seen, day) : default;

    /// <summary>Whether somebody is 18 or over and has a duty on a day.</summary>
    public static bool IsAdultOnDuty(WriteSession session, Guid person, DateOnly day) =>
        Adult(session, person) is { } adult && SignOff.IsAdult(adult.Born, adult.Seen, day) && adult.Duties.Any(d => d.From <= day && (d.To is null || d.To >= day));

    /// <summary>Whether somebody is 18 or over on a day.</summary>
    public static bool IsAdult(WriteSession session, Guid person, DateOnly day) => Adult(session, person) is { } adult && SignOff.IsAdult(adult.Born, adult.Seen, day);

    private static (DateOnly? Born, bool Seen, List<DutyRow> Duties)? Adult(WriteSession session, Guid person)
    {
        DateOnly? born = null;
        var seen = false;
        var command = session.Command("""SELECT "Born", "AdultSeenOn" FROM "People" WHERE "Club" = @club AND "Id" = @person""", ("@club", session.Club), ("@person", person));
        using (var reader = command.ExecuteReader())
        {
            if (!reader.Read()) return null;
            if (!reader.IsDBNull(0)) born = Seal.Open(new Sealed<DateOnly>(reader.GetFieldValue<byte[]>(0)));
            seen = !reader.IsDBNull(1);
        }

        var duties = new List<DutyRow>();
        command = session.Command("""SELECT "Kind", "From", "To", "MayConfirmFalls" FROM "Duties" WHERE "Club" = @club AND "PersonId" = @person""", ("@club", session.Club), ("@person", person));
        using (var reader = command.ExecuteReader())
        {
            while (reader.Read())
            {
                duties.Add(new DutyRow
                {
                    Kind = (DutyKind)reader.GetInt32(0),
                    From = reader.GetFieldValue<DateOnly>(1),
                    To = reader.IsDBNull(2) ? null : reader.GetFieldValue<DateOnly>(2),
                    MayConfirmFalls = reader.GetBoolean(3),
                });
            }
        }

        return (born, seen, duties);
    }

    /// <summary>Reads the <see cref="Columns"/>.</summary>
    public static DatedMark Row(StoredRow row) => new(
        new MarkRow
        {
            Club = row.Club,
            Id = row.Id(),
            DeviceId = row.Id(),
            Sequence = row.Whole(),
            LessonId = row.Id(),
            PersonId = row.Id(),
            ById = row.IdIfAny(),
            MadeAt = row.Instant(),
            Kind = (MarkKind)row.Whole(),
            ItemId = row.IdIfAny(),
            Code = row.Whole(),
            Replaces = row.IdIfAny(),
        },
        row.Day());

    private static List<DatedMark> Read(WriteSession session, DbCommand command)
    {
        using var reader = command.ExecuteReader();
        var row = session.Stored(reader);
        var marks = new List<DatedMark>();
        while (row.Next()) marks.Add(Row(row));
        return marks;
    }
}
