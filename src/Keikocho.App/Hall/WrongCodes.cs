namespace Keikocho.App.Hall;

/// <summary>
/// Slows guessing down: after five wrong codes in a row for one adult, none of that adult's is looked at for a minute, whichever tablet
/// it comes from. It lives in this process only.
/// </summary>
public sealed class WrongCodes(TimeProvider time)
{
    /// <summary>Wrong codes until the pause.</summary>
    public const int Most = 5;

    /// <summary>The pause.</summary>
    public static readonly TimeSpan Pause = TimeSpan.FromMinutes(1);

    private readonly Lock _lock = new();
    private readonly Dictionary<Guid, (int Wrong, DateTimeOffset Until)> _of = [];

    /// <summary>Whether a code may be looked at now. Counts it as wrong until <see cref="Right"/> says otherwise, so that many at once gain nothing.</summary>
    public bool MayTry(Guid adult)
    {
        lock (_lock)
        {
            var (wrong, until) = _of.GetValueOrDefault(adult);
            var now = time.GetUtcNow();
            if (until > now) return false;
            wrong = wrong >= Most ? 1 : wrong + 1;
            _of[adult] = (wrong, wrong >= Most ? now + Pause : default);
            return true;
        }
    }

    /// <summary>It was the right one.</summary>
    public void Right(Guid adult)
    {
        lock (_lock) _of.Remove(adult);
    }
}
