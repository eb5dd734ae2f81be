using System.Buffers.Text;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace Keikocho.App.Hall;

/// <summary>Lets one tablet in, once, within a few minutes: by the square on the laptop's screen or by four digits.</summary>
/// <param name="Token">What the square says: 128 bits of chance.</param>
/// <param name="Digits">Four digits.</param>
/// <param name="PersonId">Who will act on the tablet.</param>
/// <param name="Date">The evening's date.</param>
/// <param name="HallId">The evening's hall.</param>
/// <param name="EndsAt">When the tablet's time is over.</param>
/// <param name="By">Who lets it in.</param>
/// <param name="Until">Until when it can be used.</param>
public sealed record Invitation(string Token, string Digits, Guid PersonId, DateOnly Date, Guid HallId, DateTimeOffset EndsAt, Guid By, DateTimeOffset Until);

/// <summary>What came of an invitation that was shown.</summary>
public enum InvitationOutcome
{
    /// <summary>It was good, and is used up now.</summary>
    Taken,
    /// <summary>There is none like it, or its time is over.</summary>
    Unknown,
    /// <summary>Too many wrong digits: no digits are taken until the laptop makes new ones.</summary>
    TooMany,
}

/// <summary>
/// The invitations that are open now. They live in this process only. Four digits are few: after five wrong tries, from whatever
/// tablets, the digits of all open invitations are worth nothing, and only the squares remain.
/// </summary>
public sealed class Invitations(TimeProvider time)
{
    /// <summary>Wrong digits until all digits are worth nothing.</summary>
    public const int MostWrong = 5;

    /// <summary>How long an invitation can be used.</summary>
    public static readonly TimeSpan Life = TimeSpan.FromMinutes(3);

    private readonly Lock _lock = new();
    private readonly List<Invitation> _open = [];
    private int _wrong;

    /// <summary>Makes one. Whoever was invited for the same person before is not any more.</summary>
    public Invitation Make(Guid person, DateOnly date, Guid hall, DateTimeOffset endsAt, Guid by)
    {
        lock (_lock)
        {
            Tidy();
            _open.RemoveAll(i => i.PersonId == person);
            if (_open.Count == 0 || _wrong >= MostWrong)
            {
                // New digits for a new start: the old ones were guessed at.
                _open.Clear();
                _wrong = 0;
            }

            string digits;
            do digits = RandomNumberGenerator.GetInt32(10_000).ToString("0000", CultureInfo.InvariantCulture);
            while (_open.Any(i => i.Digits == digits));
            var made = new Invitation(
                Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(16)), digits, person, date, hall, endsAt, by, time.GetUtcNow() + Life);
            _open.Add(made);
            return made;
        }
    }

    /// <summary>The open invitation for a person; null when there is none.</summary>
    public Invitation? For(Guid person)
    {
        lock (_lock)
        {
            Tidy();
            return _open.FirstOrDefault(i => i.PersonId == person);
        }
    }

    /// <summary>Whom a square lets in, without using it; null when it is worth nothing.</summary>
    public Invitation? Peek(string token)
    {
        lock (_lock)
        {
            Tidy();
            return _open.FirstOrDefault(i => Same(i.Token, token));
        }
    }

    /// <summary>Uses a square.</summary>
    public (Invitation? Invitation, InvitationOutcome Outcome) TakeSquare(string token)
    {
        lock (_lock)
        {
            Tidy();
            if (_open.FirstOrDefault(i => Same(i.Token, token)) is not { } found) return (null, InvitationOutcome.Unknown);
            _open.Remove(found);
            return (found, InvitationOutcome.Taken);
        }
    }

    /// <summary>Uses four digits.</summary>
    public (Invitation? Invitation, InvitationOutcome Outcome) TakeDigits(string digits)
    {
        lock (_lock)
        {
            Tidy();
            if (_wrong >= MostWrong) return (null, InvitationOutcome.TooMany);
            if (_open.FirstOrDefault(i => Same(i.Digits, digits)) is not { } found)
            {
                _wrong++;
                return (null, _wrong >= MostWrong ? InvitationOutcome.TooMany : InvitationOutcome.Unknown);
            }

            _open.Remove(found);
            return (found, InvitationOutcome.Taken);
        }
    }

    private void Tidy() => _open.RemoveAll(i => i.Until <= time.GetUtcNow());

    private static bool Same(string one, string other) =>
        CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(one), Encoding.UTF8.GetBytes(other));
}
