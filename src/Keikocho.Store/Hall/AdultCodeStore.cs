using System.Security.Cryptography;
using System.Text;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;
using Keikocho.Store.Marks;

namespace Keikocho.Store.Hall;

/// <summary>What came of setting a code.</summary>
public enum AdultCodeOutcome
{
    /// <summary>Stored; a code from before is worth nothing now.</summary>
    Stored,
    /// <summary>A code is six digits, and not six times the same.</summary>
    NoCode,
    /// <summary>Only an adult of 18 or over with a duty in the club has a code.</summary>
    NoAdult,
}

/// <summary>The codes by which adults open, for ten seconds, what only adults may see on a tablet.</summary>
public sealed class AdultCodeStore(WriterQueue writer)
{
    /// <summary>Digits of a code.</summary>
    public const int Digits = 6;

    private const int Rounds = 600_000;

    /// <summary>Sets an adult's code.</summary>
    /// <param name="person">The adult.</param>
    /// <param name="code">Six digits.</param>
    /// <param name="today">The day whose duties count.</param>
    /// <param name="by">Who enters it.</param>
    /// <param name="device">Where.</param>
    /// <param name="cancel">Counts only while it waits.</param>
    public Task<AdultCodeOutcome> SetAsync(Guid person, string? code, DateOnly today, Guid by, Guid device, CancellationToken cancel)
    {
        if (code is not { Length: Digits } || !code.All(char.IsAsciiDigit) || code.Distinct().Count() == 1) return Task.FromResult(AdultCodeOutcome.NoCode);
        var salt = RandomNumberGenerator.GetBytes(16);
        var digest = Of(code, salt);
        return writer.RunAsync(session =>
        {
            if (!EvidenceStatements.IsAdultOnDuty(session, person, today)) return AdultCodeOutcome.NoAdult;
            var row = session.Db.AdultCodes.FirstOrDefault(c => c.PersonId == person);
            if (row is null) session.Db.AdultCodes.Add(row = new AdultCodeRow { Club = session.Club, PersonId = person });
            (row.Salt, row.Digest, row.MadeAt) = (salt, digest, session.Now);
            session.Db.SaveChanges();
            session.Note(TrailKind.AdultCodeChanged, person, by, device);
            return AdultCodeOutcome.Stored;
        }, cancel);
    }

    /// <summary>Whether a code is an adult's; false too where that adult has none.</summary>
    public static bool Opens(ReadSession reading, Guid person, string? code)
    {
        ArgumentNullException.ThrowIfNull(reading);
        var rows = reading.Rows("""SELECT "Salt", "Digest" FROM "AdultCodes" WHERE "Club" = @club AND "PersonId" = @person""", row => (Salt: row.Bytes(), Digest: row.Bytes()), ("@person", person));
        // Digested even where there is none, so that time tells nothing.
        var (salt, digest) = rows.Count > 0 ? rows[0] : (new byte[16], []);
        return CryptographicOperations.FixedTimeEquals(Of(code ?? "", salt), digest);
    }

    /// <summary>Which adults have a code.</summary>
    public static IReadOnlyCollection<Guid> Having(ReadSession reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return reading.Rows("""SELECT "PersonId" FROM "AdultCodes" WHERE "Club" = @club""", row => row.Id()).ToHashSet();
    }

    private static byte[] Of(string code, byte[] salt) => Rfc2898DeriveBytes.Pbkdf2(Encoding.ASCII.GetBytes(code), salt, Rounds, HashAlgorithmName.SHA256, 32);
}
