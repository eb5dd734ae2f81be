using Keikocho.Store.Kernel;

namespace Keikocho.Store.Intake;

/// <summary>One reading of one of the club's own files, from the first look to saved or undone.</summary>
public sealed class ReadingRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>Roster, register or sign-off grid.</summary>
    public ReadingKind Kind { get; set; }
    /// <summary>Where it stands.</summary>
    public ReadingStage Stage { get; set; }
    /// <summary>The file's name.</summary>
    public Sealed<string> FileName { get; set; }
    /// <summary>SHA-256 of the file, to see that the same file came again.</summary>
    public byte[] FileHash { get; set; } = [];
    /// <summary>The tables of the file, compressed, without the columns that are not kept; null once it is saved or dropped.</summary>
    public Sealed<byte[]>? Tables { get; set; }
    /// <summary>What the instructor has answered so far, as JSON.</summary>
    public Sealed<string>? Answers { get; set; }
    /// <summary>What was done when it was saved, as JSON: counts, and what to take back on undo.</summary>
    public Sealed<string>? Summary { get; set; }
    /// <summary>The programme it is for.</summary>
    public Guid? ProgrammeId { get; set; }
    /// <summary>Who reads it in.</summary>
    public Guid? ById { get; set; }
    /// <summary>When it was first looked at.</summary>
    public DateTimeOffset MadeAt { get; set; }
    /// <summary>When it was saved.</summary>
    public DateTimeOffset? SavedAt { get; set; }
    /// <summary>When it was taken back.</summary>
    public DateTimeOffset? UndoneAt { get; set; }
}

/// <summary>What a file holds. Stored.</summary>
public enum ReadingKind
{
    /// <summary>The children.</summary>
    Roster = 1,
    /// <summary>Who was there.</summary>
    Register = 2,
    /// <summary>What was signed off.</summary>
    SignOffs = 3,
}

/// <summary>Where a reading stands. Stored.</summary>
public enum ReadingStage
{
    /// <summary>Looked at; nothing is saved.</summary>
    Open = 0,
    /// <summary>Saved.</summary>
    Saved = 1,
    /// <summary>Saved and taken back.</summary>
    Undone = 2,
    /// <summary>Dropped without saving.</summary>
    Dropped = 3,
}

/// <summary>A row that a reading made or changed, so that it can be taken back.</summary>
public sealed class ReadingTraceRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>The reading.</summary>
    public Guid ReadingId { get; set; }
    /// <summary>Table of the row, as the archive names it.</summary>
    public string Table { get; set; } = "";
    /// <summary>Its id.</summary>
    public Guid RowId { get; set; }
    /// <summary>The values that were changed, each as it was and as the reading left it, as JSON; the whole row where it was taken away; null where it was made.</summary>
    public Sealed<string>? Before { get; set; }
}
