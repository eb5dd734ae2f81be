namespace Keikocho.Core.Intake;

/// <summary>What a column of a roster tells.</summary>
public enum ColumnMeaning
{
    /// <summary>Not read: not known, or of no use here.</summary>
    NotRead,
    /// <summary>Given name.</summary>
    GivenName,
    /// <summary>Family name.</summary>
    FamilyName,
    /// <summary>The whole name in one cell.</summary>
    FullName,
    /// <summary>The name the child is called by.</summary>
    CalledName,
    /// <summary>Birth date.</summary>
    BirthDate,
    /// <summary>Sex, where the club keeps it.</summary>
    Sex,
    /// <summary>Rank in the club's own words.</summary>
    Rank,
    /// <summary>Date of the first class.</summary>
    FirstClass,
    /// <summary>Date of the last promotion.</summary>
    LastPromotion,
    /// <summary>A contact's name.</summary>
    ContactName,
    /// <summary>A contact's telephone.</summary>
    ContactPhone,
    /// <summary>A contact's e-mail.</summary>
    ContactEmail,
    /// <summary>What the contact is to the child.</summary>
    Relation,
    /// <summary>May photographs be shown.</summary>
    PhotoConsent,
    /// <summary>Registration number with the national body.</summary>
    RegistrationNumber,
    /// <summary>Day the registration runs out.</summary>
    RegistrationExpiry,
    /// <summary>School, group or programme.</summary>
    Group,
    /// <summary>Notes.</summary>
    Notes,
    /// <summary>Medical: named and set aside, its values are not kept.</summary>
    Medical,
    /// <summary>Height, weight or suit size: named and set aside, its values are not kept.</summary>
    Size,
}

/// <summary>Which of several contacts a column belongs to, and what that contact is.</summary>
/// <param name="Group">Columns of one contact share it: "1", "2", "mother", "emergency"; empty when the column is not a contact's.</param>
/// <param name="Relation">What the header says the contact is ("mother"); null when it does not say.</param>
public readonly record struct ContactOf(string Group, string? Relation);

/// <summary>What one column was taken for.</summary>
/// <param name="Column">Column, from 1.</param>
/// <param name="Header">Its header's text; empty when it has none.</param>
/// <param name="Meaning">What it tells.</param>
/// <param name="Contact">Whose, for a contact's column.</param>
/// <param name="Why">Why it was taken so: "its header", "its values", "you said so".</param>
public sealed record ColumnGuess(int Column, string Header, ColumnMeaning Meaning, ContactOf Contact, string Why)
{
    /// <summary>Recognised, named and never kept.</summary>
    public bool IsSetAside => Meaning is ColumnMeaning.Medical or ColumnMeaning.Size;
}

/// <summary>Where the table lies in a sheet and what its columns tell.</summary>
/// <param name="HeaderRow">Row of the headers, from 1; 0 when there is none.</param>
/// <param name="FirstRow">First row of children.</param>
/// <param name="LastRow">Last row that holds anything.</param>
/// <param name="Columns">Every column that holds anything, in order.</param>
public sealed record ColumnsGuess(int HeaderRow, int FirstRow, int LastRow, IReadOnlyList<ColumnGuess> Columns)
{
    /// <summary>The first column with a meaning; null when no column has it.</summary>
    public ColumnGuess? With(ColumnMeaning meaning) => Columns.FirstOrDefault(column => column.Meaning == meaning);

    /// <summary>Some column gives a name.</summary>
    public bool HasNames => Columns.Any(column => column.Meaning is ColumnMeaning.GivenName or ColumnMeaning.FamilyName or ColumnMeaning.FullName);
}
