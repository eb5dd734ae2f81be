using Keikocho.Store.Engines;

namespace Keikocho.Store.Sealing;

/// <summary>Reads the lock that a club has.</summary>
public static class LockReader
{
    /// <summary>The id of the club's lock; null where it has none. One statement over few rows.</summary>
    public static Guid? Id(ReadSession reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return reading.Rows("""SELECT "Id" FROM "Locks" WHERE "Club" = @club AND "EndedAt" IS NULL ORDER BY "MadeAt" DESC, "Id" DESC LIMIT 1""", row => (Guid?)row.Id()).FirstOrDefault();
    }

    /// <summary>The club's own id, which it keeps in every database; null before there is a club.</summary>
    internal static Guid? ClubId(ReadSession reading) => reading.Rows("""SELECT "Id" FROM "Clubs" WHERE "Club" = @club""", row => (Guid?)row.Id()).FirstOrDefault();

    internal static LockRow? Current(ReadSession reading) => reading.Rows(
        """
        SELECT "Id", "Form", "Salt", "MemoryKib", "Passes", "ByPassphrase", "RecoverySalt", "ByRecovery" FROM "Locks"
        WHERE "Club" = @club AND "EndedAt" IS NULL ORDER BY "MadeAt" DESC, "Id" DESC LIMIT 1
        """,
        row => new LockRow
        {
            Club = row.Club,
            Id = row.Id(),
            Form = row.Whole(),
            Salt = row.Bytes(),
            MemoryKib = row.Whole(),
            Passes = row.Whole(),
            ByPassphrase = row.Bytes(),
            RecoverySalt = row.Bytes(),
            ByRecovery = row.Bytes(),
        }).FirstOrDefault();
}
