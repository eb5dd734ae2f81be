namespace Keikocho.App.Shared;

/// <summary>What somebody is in the club, for what they may see.</summary>
[Flags]
public enum Role
{
    /// <summary>Nobody.</summary>
    None = 0,

    /// <summary>The head instructor, or an instructor who stands in.</summary>
    Instructor = 1,

    /// <summary>An adult who runs an end of the mat: no weights, no welfare.</summary>
    Assistant = 2,

    /// <summary>A teenager who helps: no medical word, no contacts, no friends' marks, no weights.</summary>
    JuniorLeader = 4,

    /// <summary>Who keeps registrations and certificates: no welfare.</summary>
    Registrar = 8,

    /// <summary>A parent or carer: their own child only.</summary>
    Family = 16,

    /// <summary>Who tests for a rank: the candidates' sheets, no past marks.</summary>
    Examiner = 32,

    /// <summary>The adults who teach.</summary>
    Teaching = Instructor | Assistant,

    /// <summary>Whoever comes: it holds nothing of anybody.</summary>
    Anyone = Instructor | Assistant | JuniorLeader | Registrar | Family | Examiner,
}
