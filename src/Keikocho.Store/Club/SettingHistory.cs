using Keikocho.Store.Book;
using Keikocho.Store.Kernel;

namespace Keikocho.Store.Club;

/// <summary>One value of a setting, with the words opened.</summary>
/// <param name="Value">The value, in the invariant culture.</param>
/// <param name="From">First day on which it holds.</param>
/// <param name="ById">Who set it; null where nobody acted yet.</param>
/// <param name="Why">Why, in the setter's words; null where none were given.</param>
public sealed record SettingEntry(string Value, DateOnly From, Guid? ById, string? Why);

/// <summary>What a club has set, and when.</summary>
public static class SettingHistory
{
    /// <summary>The values of one setting in the order in which they take hold; of two of one day only the later one does.</summary>
    public static IReadOnlyList<SettingEntry> Of(ClubBook book, string key)
    {
        ArgumentNullException.ThrowIfNull(book);
        return
        [
            .. book.Settings.Where(s => s.Key == key)
                .GroupBy(s => s.From)
                .Select(day => day.OrderBy(s => s.MadeAt).ThenBy(s => s.Id).Last())
                .OrderBy(s => s.From)
                .Select(s => new SettingEntry(s.Value, s.From, s.ById, Seal.Open(s.Why))),
        ];
    }
}
