namespace Keikocho.Store.Keeping.OpenArchive;

/// <summary>How a column's values are written in the archive.</summary>
internal enum CellKind
{
    /// <summary>A GUID in lower case.</summary>
    Id,
    /// <summary>A whole number, or the number of a code.</summary>
    Whole,
    /// <summary><c>true</c> or <c>false</c>.</summary>
    Flag,
    /// <summary><c>2026-03-03</c>.</summary>
    Date,
    /// <summary><c>17:30</c>.</summary>
    Time,
    /// <summary><c>2026-03-03T17:30:00.000Z</c>.</summary>
    Instant,
    /// <summary>Text.</summary>
    Text,
    /// <summary>Bytes as lower-case hexadecimal.</summary>
    Bytes,
    /// <summary>A sealed text, opened.</summary>
    SealedText,
    /// <summary>A sealed date, opened.</summary>
    SealedDate,
    /// <summary>A sealed whole number, opened; one that the club's lock closes as <c>sealed:</c> and its bytes.</summary>
    SealedWhole,
    /// <summary>A text that only the club's lock opens, as <c>sealed:</c> and its bytes.</summary>
    LockedText,
    /// <summary>Sealed bytes, opened, as a file of their own; the cell holds the file's SHA-256.</summary>
    SealedFile,
}
