using Keikocho.Store.Engines;

namespace Keikocho.Store.Hall;

/// <summary>Reads which tablets are in.</summary>
public static class JoinReader
{
    private const string Columns = """
        SELECT "Id", "DeviceId", "PersonId", "Role", "Date", "HallId", "Number", "JoinedAt", "EndsAt", "LetInById", "PutOutAt", "PutOutById" FROM "Joins"
        """;

    /// <summary>The last time a tablet was let in; null where it never was. One statement over an index.</summary>
    public static JoinRow? Last(ReadSession reading, Guid device)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return reading.Rows(
            $"""{Columns} WHERE "Club" = @club AND "DeviceId" = @device ORDER BY "JoinedAt" DESC, "Id" DESC LIMIT 1""", Row, ("@device", device)).FirstOrDefault();
    }

    /// <summary>The last time a tablet was let in for a date, however that ended; null where it never was.</summary>
    public static JoinRow? On(ReadSession reading, Guid device, DateOnly date)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return reading.Rows(
            $"""{Columns} WHERE "Club" = @club AND "DeviceId" = @device AND "Date" = @date ORDER BY "JoinedAt" DESC, "Id" DESC LIMIT 1""",
            Row, ("@device", device), ("@date", date)).FirstOrDefault();
    }

    /// <summary>The tablets of an evening: of each the last time it was let in, by number.</summary>
    public static IReadOnlyList<JoinRow> OfEvening(ReadSession reading, DateOnly date, Guid hall)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return
        [
            .. reading.Rows($"""{Columns} WHERE "Club" = @club AND "Date" = @date AND "HallId" = @hall ORDER BY "JoinedAt", "Id" """, Row, ("@date", date), ("@hall", hall))
                .GroupBy(j => j.DeviceId).Select(own => own.Last()).OrderBy(j => j.Number),
        ];
    }

    /// <summary>The highest count of a device among the marks that are stored; 0 where there is none. One look at an index.</summary>
    public static int LastSequence(ReadSession reading, Guid device)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return reading.Rows("""SELECT MAX("Sequence") FROM "Marks" WHERE "Club" = @club AND "DeviceId" = @device""", row => row.WholeIfAny() ?? 0, ("@device", device))[0];
    }

    private static JoinRow Row(StoredRow row) => new()
    {
        Club = row.Club,
        Id = row.Id(),
        DeviceId = row.Id(),
        PersonId = row.Id(),
        Role = (JoinRole)row.Whole(),
        Date = row.Day(),
        HallId = row.Id(),
        Number = row.Whole(),
        JoinedAt = row.Instant(),
        EndsAt = row.Instant(),
        LetInById = row.Id(),
        PutOutAt = row.InstantIfAny(),
        PutOutById = row.IdIfAny(),
    };
}
