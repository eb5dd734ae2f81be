using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;

namespace Keikocho.Core.Readiness;

/// <summary>
/// What stand-downs leave of the lessons before the test. Each of the three days is the last one on which nothing of that kind can be
/// shown; the greatest day there is where no review is set, because a stand-down never lapses by itself.
/// </summary>
internal sealed record Blocks(IReadOnlyList<StandDown> Standing, DateOnly MatUntil, DateOnly ContactUntil, DateOnly FallsUntil)
{
    private static readonly Blocks None = new([], DateOnly.MinValue, DateOnly.MinValue, DateOnly.MinValue);

    /// <summary>Falls are forbidden now.</summary>
    public bool NoFalls => FallsUntil > DateOnly.MinValue;

    /// <summary>Items that load the neck are forbidden.</summary>
    public bool SparesTheNeck => Standing.Any(s => s.Scope == StandDownScope.SpareTheNeck);

    public static Blocks Of(IReadOnlyList<StandDown> all, DateOnly asOf, DateOnly testOn)
    {
        if (all.Count == 0)
            return None;

        // One that begins later but before the test is treated as standing: shut wins.
        StandDown[] standing =
        [
            .. all.Where(s => s.From <= testOn && (StandDowns.LiftCountsFrom(s) is not { } lifted || lifted > asOf))
                .OrderBy(s => s.From).ThenBy(s => s.Scope).ThenBy(s => s.ReviewOn ?? DateOnly.MaxValue).ThenBy(s => s.WhoseWord, StringComparer.Ordinal),
        ];
        if (standing.Length == 0)
            return None;
        DateOnly Last(params ReadOnlySpan<StandDownScope> scopes)
        {
            var last = DateOnly.MinValue;
            foreach (var s in standing)
            {
                if (scopes.Contains(s.Scope) && Until(s, asOf) is var until && until > last)
                    last = until;
            }

            return last;
        }

        var mat = Last(StandDownScope.OffTheMat);
        var contact = Last(StandDownScope.OffTheMat, StandDownScope.NoContact);
        return new Blocks(standing, mat, contact, Last(StandDownScope.OffTheMat, StandDownScope.NoContact, StandDownScope.NoFalls));
    }

    /// <summary>The last day on which it certainly stands; a review that is due may lift it from the next lesson on.</summary>
    public static DateOnly Until(StandDown standDown, DateOnly asOf)
    {
        var day = StandDowns.LiftCountsFrom(standDown) is { } lifted ? lifted.AddDays(-1) : standDown.ReviewOn ?? DateOnly.MaxValue;
        return day > asOf ? day : asOf;
    }

    /// <summary>The last day on which an item of this kind cannot be shown.</summary>
    public DateOnly Of(ItemKind kind) => kind switch
    {
        ItemKind.Fall => FallsUntil,
        ItemKind.Etiquette or ItemKind.Word or ItemKind.Question => MatUntil,
        _ => ContactUntil,
    };
}
