using Keikocho.Core.Kernel;
using Keikocho.Store.Calendar;
using Keikocho.Store.Engines;
using Keikocho.Store.Kernel;
using Keikocho.Store.People;
using Keikocho.Store.Promotion;
using Keikocho.Store.Syllabus;

namespace Keikocho.Store.Book;

/// <summary>The statements that read people, their registers and their ranks for the book.</summary>
internal static class ReadPeople
{
    /// <summary>Of those who are on a register or were after a day.</summary>
    private const string StillThere = """
        EXISTS (SELECT 1 FROM "Enrolments" AS e WHERE e."Club" = @club AND e."PersonId" = x."PersonId" AND (e."To" IS NULL OR e."To" >= @from))
        """;

    public static List<BookPerson> People(ReadSession reading) => reading.Rows(
        """
        SELECT "Id", "Given", "Family", "Called", "Born", "AdultSeenOn", "ErasedAt" FROM "People" WHERE "Club" = @club
        """,
        row => new BookPerson(
            row.Id(),
            Seal.Open(row.SealedIfAny<string>()) ?? "(erased)",
            Seal.Open(row.SealedIfAny<string>()),
            Seal.Open(row.SealedIfAny<string>()),
            Seal.Open(row.SealedIfAny<DateOnly>()),
            row.DayIfAny() is not null,
            row.InstantIfAny() is not null));

    public static List<DutyRow> Duties(ReadSession reading) => reading.Rows(
        """
        SELECT "Id", "PersonId", "Kind", "From", "To", "VettedUntil", "FirstAidUntil", "MayConfirmFalls" FROM "Duties" WHERE "Club" = @club
        """,
        row => new DutyRow
        {
            Club = row.Club,
            Id = row.Id(),
            PersonId = row.Id(),
            Kind = (DutyKind)row.Whole(),
            From = row.Day(),
            To = row.DayIfAny(),
            VettedUntil = row.DayIfAny(),
            FirstAidUntil = row.DayIfAny(),
            MayConfirmFalls = row.Yes(),
        });

    public static List<EnrolmentRow> Enrolments(ReadSession reading) => reading.Rows(
        """
        SELECT "Id", "PersonId", "ProgrammeId", "From", "To", "Position", "CountsFrom" FROM "Enrolments" WHERE "Club" = @club
        """,
        row => new EnrolmentRow
        {
            Club = row.Club,
            Id = row.Id(),
            PersonId = row.Id(),
            ProgrammeId = row.Id(),
            From = row.Day(),
            To = row.DayIfAny(),
            Position = row.Whole(),
            CountsFrom = row.Day(),
        });

    public static List<CrossingRow> Crossings(ReadSession reading, DateOnly from) => reading.Rows(
        $"""
        SELECT x."Id", x."PersonId", x."ProgrammeId", x."End", x."On", x."LessonId", x."ById", x."MadeAt"
        FROM "Crossings" AS x WHERE x."Club" = @club AND {StillThere}
        """,
        row => new CrossingRow
        {
            Club = row.Club,
            Id = row.Id(),
            PersonId = row.Id(),
            ProgrammeId = row.Id(),
            End = (MatEnd)row.Whole(),
            On = row.Day(),
            LessonId = row.IdIfAny(),
            ById = row.IdIfAny(),
            MadeAt = row.Instant(),
        },
        ("@from", from));

    public static List<RankRow> Ranks(ReadSession reading) => reading.Rows(
        """
        SELECT "Id", "LadderId", "Key", "Name", "Cloth", "Tips", "Position" FROM "Ranks" WHERE "Club" = @club
        """,
        row => new RankRow
        {
            Club = row.Club,
            Id = row.Id(),
            LadderId = row.Id(),
            Key = row.Text(),
            Name = row.Text(),
            Cloth = row.TextIfAny(),
            Tips = row.Whole(),
            Position = row.Whole(),
        });

    public static List<AwardRow> Awards(ReadSession reading, DateOnly from) => reading.Rows(
        $"""
        SELECT x."Id", x."PersonId", x."LadderId", x."RankId", x."On", x."Source", x."TestId", x."ById", x."CertificateNumber", x."Replaces", x."MadeAt"
        FROM "Awards" AS x WHERE x."Club" = @club AND {StillThere}
        """,
        row => new AwardRow
        {
            Club = row.Club,
            Id = row.Id(),
            PersonId = row.Id(),
            LadderId = row.Id(),
            RankId = row.Id(),
            On = row.DayIfAny(),
            Source = (AwardSource)row.Whole(),
            TestId = row.IdIfAny(),
            ById = row.IdIfAny(),
            CertificateNumber = row.SealedIfAny<string>(),
            Replaces = row.IdIfAny(),
            MadeAt = row.Instant(),
        },
        ("@from", from));

    public static List<HeldTimeOff> TimeOffs(ReadSession reading) => reading.Rows(
        """
        SELECT "Id", "PersonId", "RankId", "Percent", "Why", "On", "ById", "MadeAt" FROM "TimeOffs" WHERE "Club" = @club
        """,
        row => new HeldTimeOff(row.Id(), row.Id(), row.Id(), row.Whole(), Seal.Open(row.SealedIfAny<string>()) ?? "", row.Day(), row.Id(), row.Instant()));
}
