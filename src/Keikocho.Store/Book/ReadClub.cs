using Keikocho.Store.Club;
using Keikocho.Store.Engines;

namespace Keikocho.Store.Book;

/// <summary>The statements that read the club itself for the book.</summary>
internal static class ReadClub
{
    public static Revisions? Revisions(ReadSession reading, Guid device) => reading.Rows(
        """
        SELECT "PeopleRevision", "CalendarRevision", "PastRevision",
            (SELECT "ActingAdultId" FROM "Devices" WHERE "Club" = @club AND "Id" = @device)
        FROM "Clubs" WHERE "Club" = @club
        """,
        row => new Revisions(row.Long(), row.Long(), row.Long(), row.IdIfAny()),
        ("@device", device)).FirstOrDefault();

    public static ClubRow Club(ReadSession reading) => reading.Rows(
        """
        SELECT "Id", "Name", "Zone", "Paper", "Units", "IsDemo", "PeopleRevision", "CalendarRevision", "PastRevision", "Salt", "MadeAt", "Welfare"
        FROM "Clubs" WHERE "Club" = @club
        """,
        row => new ClubRow
        {
            Club = row.Club,
            Id = row.Id(),
            Name = row.Text(),
            Zone = row.Text(),
            Paper = (PaperChoice)row.Whole(),
            Units = (UnitChoice)row.Whole(),
            IsDemo = row.Yes(),
            PeopleRevision = row.Long(),
            CalendarRevision = row.Long(),
            PastRevision = row.Long(),
            Salt = row.Bytes(),
            MadeAt = row.Instant(),
            Welfare = row.SealedIfAny<string>(),
        }).Single();

    public static List<HallRow> Halls(ReadSession reading) => reading.Rows(
        """
        SELECT "Id", "Name", "MatLengthCm", "MatWidthCm", "StripCm", "Address", "Entrance", "Hospital" FROM "Halls" WHERE "Club" = @club ORDER BY "Name", "Id"
        """,
        row => new HallRow
        {
            Club = row.Club,
            Id = row.Id(),
            Name = row.Text(),
            MatLengthCm = row.WholeIfAny(),
            MatWidthCm = row.WholeIfAny(),
            StripCm = row.WholeIfAny(),
            Address = row.TextIfAny(),
            Entrance = row.TextIfAny(),
            Hospital = row.TextIfAny(),
        });

    public static List<SettingRow> Settings(ReadSession reading) => reading.Rows(
        """
        SELECT "Id", "Key", "Value", "From", "ById", "Why", "MadeAt" FROM "Settings" WHERE "Club" = @club
        """,
        row => new SettingRow
        {
            Club = row.Club,
            Id = row.Id(),
            Key = row.Text(),
            Value = row.Text(),
            From = row.Day(),
            ById = row.IdIfAny(),
            Why = row.SealedIfAny<string>(),
            MadeAt = row.Instant(),
        });
}
