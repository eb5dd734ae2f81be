using Keikocho.Store.Calendar;
using Keikocho.Store.Engines;
using Keikocho.Store.Syllabus;

namespace Keikocho.Store.Book;

/// <summary>The statements that read the published editions and what belongs to them for the book.</summary>
internal static class ReadSyllabus
{
    public static List<EditionRow> Editions(ReadSession reading) => reading.Rows(
        """
        SELECT "Id", "LadderId", "Name", "From", "Changeover", "PublishedAt", "PublishedById", "Document"
        FROM "Editions" WHERE "Club" = @club AND "PublishedAt" IS NOT NULL
        """,
        row => new EditionRow
        {
            Club = row.Club,
            Id = row.Id(),
            LadderId = row.Id(),
            Name = row.Text(),
            From = row.DayIfAny(),
            Changeover = row.DayIfAny(),
            PublishedAt = row.InstantIfAny(),
            PublishedById = row.IdIfAny(),
            Document = row.Text(),
        });

    public static List<TermUnitRow> TermUnits(ReadSession reading) => reading.Rows(
        """
        SELECT "TermId", "ProgrammeId", "UnitKey" FROM "TermUnits" WHERE "Club" = @club
        """,
        row => new TermUnitRow { Club = row.Club, TermId = row.Id(), ProgrammeId = row.Id(), UnitKey = row.Text() });

    public static List<AgeRuleRow> AgeRules(ReadSession reading) => reading.Rows(
        """
        SELECT "Id", "Document", "ById", "MadeAt", "EndedAt" FROM "AgeRules" WHERE "Club" = @club
        """,
        row => new AgeRuleRow
        {
            Club = row.Club,
            Id = row.Id(),
            Document = row.Text(),
            ById = row.IdIfAny(),
            MadeAt = row.Instant(),
            EndedAt = row.InstantIfAny(),
        });

    public static List<ItemRow> Items(ReadSession reading) => reading.Rows(
        """
        SELECT "Id", "Key", "Kind", "Name" FROM "Items" WHERE "Club" = @club
        """,
        row => new ItemRow { Club = row.Club, Id = row.Id(), Key = row.Text(), Kind = row.Whole(), Name = row.Text() });
}
