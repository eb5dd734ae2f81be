namespace Keikocho.Core.Syllabus;

/// <summary>What must be shown for one rank at one test, for every shape of a requirement.</summary>
public static class MakeSheet
{
    /// <summary>Makes the sheet.</summary>
    /// <exception cref="ArgumentException">The rank or unit is not in the edition, or the edition contradicts itself.</exception>
    public static RequirementSheet Make(SheetSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        return Make(snapshot, PreparedEdition.Of(snapshot.Edition));
    }

    /// <summary>Makes the sheet with an edition that was made ready before: the way for many sheets of one edition.</summary>
    /// <param name="snapshot">The question.</param>
    /// <param name="edition">The snapshot's own edition, made ready.</param>
    /// <exception cref="ArgumentException">As above, or another edition was made ready.</exception>
    public static RequirementSheet Make(SheetSnapshot snapshot, PreparedEdition edition)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        ArgumentNullException.ThrowIfNull(edition);
        if (!ReferenceEquals(snapshot.Edition, edition.Edition))
            throw new ArgumentException("Another edition was made ready than the one that is asked about.", nameof(edition));
        return new SheetInTheMaking(snapshot, edition).Finish();
    }
}
