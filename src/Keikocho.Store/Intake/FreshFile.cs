using System.Globalization;
using Keikocho.Core.Intake;

namespace Keikocho.Store.Intake;

/// <summary>A file that was just read: what is kept of it, and how it is proposed to be read.</summary>
/// <param name="File">The sheets that are shown to whoever opens it, without the columns that are not kept.</param>
/// <param name="Kind">What the proposed sheet looks like; null where none looks like children, a register or a sign-off grid.</param>
/// <param name="SheetNumber">The proposed sheet, from 1.</param>
public sealed record FreshFile(PackedFile File, ReadingKind? Kind, int SheetNumber)
{
    /// <summary>Takes what is kept of a file.</summary>
    /// <param name="read">The file as it was read.</param>
    /// <param name="today">The club's date today.</param>
    /// <param name="wanted">What it is said to hold; null leaves that to the guess.</param>
    /// <param name="syllabus">What the headings of a sign-off grid may name; null where that is not known.</param>
    public static FreshFile Of(TableReading.Read read, DateOnly today, ReadingKind? wanted, SyllabusNames? syllabus = null)
    {
        ArgumentNullException.ThrowIfNull(read);
        var shown = read.Sheets.Where(sheet => !sheet.Hidden && sheet.Rows > 0).ToList();
        if (shown.Count == 0) shown = [read.Sheets[0]];
        List<string> notes = [.. read.Notes];
        var hidden = read.Sheets.Count(sheet => sheet.Hidden);
        if (hidden > 0 && !shown.Any(sheet => sheet.Hidden)) notes.Add(hidden == 1 ? "1 hidden sheet is not read." : string.Create(CultureInfo.InvariantCulture, $"{hidden} hidden sheets are not read."));
        var none = new Dictionary<int, ColumnMeaning>();
        var guesses = shown.Select(sheet => KindOf(syllabus is null ? GuessSheet.Guess(sheet, today) : GuessSheet.Guess(sheet, today, syllabus.Items, syllabus.Techniques))).ToList();
        var at = guesses.FindIndex(kind => kind is not null && (wanted is null || kind == wanted));
        return new FreshFile(new PackedFile([.. shown.Select(sheet => SheetPack.Kept(sheet, none))], notes), at < 0 ? wanted : guesses[at], Math.Max(at, 0) + 1);
    }

    private static ReadingKind? KindOf(SheetKind kind) => kind switch
    {
        SheetKind.Roster => ReadingKind.Roster,
        SheetKind.Register => ReadingKind.Register,
        SheetKind.SignOffs => ReadingKind.SignOffs,
        _ => null,
    };
}
