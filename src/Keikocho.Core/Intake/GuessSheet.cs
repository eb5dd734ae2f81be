using Keikocho.Core.Names;
using Keikocho.Core.Syllabus;

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
    /// <summary>A sign-off grid.</summary>
    SignOffs,
}

/// <summary>Says whether a sheet is a roster, a register or a sign-off grid, so that the page and the command line can propose how to read it.</summary>
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

    /// <summary>
    /// The same, where the club's syllabus is known: a sheet of which at least half of the headings are items, with signs or dates below them, is a
    /// sign-off grid. That is looked at first, since dates in its cells may look like a register's.
    /// </summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="today">The club's date today.</param>
    /// <param name="items">The items of the club's syllabus; none where it has no syllabus yet.</param>
    /// <param name="techniques">The names by which techniques are found.</param>
    public static SheetKind Guess(Sheet sheet, DateOnly today, IReadOnlyList<Item> items, NameIndex techniques)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(items);
        ArgumentNullException.ThrowIfNull(techniques);
        return items.Count > 0 && SignOffTable.Find(sheet, new SignOffItems(items, techniques))?.IsLikely(today.Year + 1) == true ? SheetKind.SignOffs : Guess(sheet, today);
    }
}
