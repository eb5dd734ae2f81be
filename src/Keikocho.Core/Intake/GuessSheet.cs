namespace Keikocho.Core.Intake;

/// <summary>What a sheet holds.</summary>
public enum SheetKind
{
    /// <summary>Neither children nor a register.</summary>
    Neither,
    /// <summary>Children, one a line.</summary>
    Roster,
    /// <summary>A register.</summary>
    Register,
}

/// <summary>Says whether a sheet is a roster or a register, so that the page and the command line can propose how to read it.</summary>
public static class GuessSheet
{
    private const int RosterColumns = 2;

    private static readonly ColumnMeaning[] OnlyInRosters =
    [
        ColumnMeaning.BirthDate, ColumnMeaning.ContactName, ColumnMeaning.ContactPhone, ColumnMeaning.ContactEmail, ColumnMeaning.RegistrationNumber,
        ColumnMeaning.RegistrationExpiry, ColumnMeaning.PhotoConsent, ColumnMeaning.FirstClass, ColumnMeaning.LastPromotion,
    ];

    /// <summary>
    /// A grid of dates with signs is a register. One date a row with a name is one too, unless columns that only a roster has (birth date, contacts,
    /// registration, consent; at least two of them) stand beside it. Else a column of names makes a roster.
    /// </summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="today">The club's date today.</param>
    public static SheetKind Guess(Sheet sheet, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        var latestYear = today.Year + 1;
        if (RegisterTable.Find(sheet, turned: false, latestYear, fewest: 2) is not null) return SheetKind.Register;
        var columns = GuessColumns.Guess(sheet);
        var roster = columns.Columns.Count(column => column.Why == "its header" && OnlyInRosters.Contains(column.Meaning));
        if (columns.HasNames && roster >= RosterColumns) return SheetKind.Roster;
        if (RegisterRows.Find(sheet, latestYear) is not null || RegisterTable.Find(sheet, turned: true, latestYear, fewest: 2) is not null) return SheetKind.Register;
        return columns.HasNames ? SheetKind.Roster : SheetKind.Neither;
    }
}
