using System.Globalization;
using Keikocho.Core.Intake;
using Keikocho.Core.Syllabus;

namespace Keikocho.App.Syllabus.Edits;

/// <summary>Keys of ranks, lines, units and items: made once from the name and kept when it changes.</summary>
public static class EditionKeys
{
    /// <summary>"O-goshi, moving" gives "o-goshi-moving", with a number where that is taken.</summary>
    public static string Make(string name, IEnumerable<string> taken)
    {
        var letters = NameFold.Fold(name).Select(c => char.IsAsciiLetterOrDigit(c) ? c : ' ');
        var key = string.Join('-', string.Concat(letters).Split(' ', StringSplitOptions.RemoveEmptyEntries));
        if (key.Length == 0) key = "item";
        var used = taken.ToHashSet(StringComparer.Ordinal);
        if (!used.Contains(key)) return key;
        for (var number = 2; ; number++)
        {
            var other = string.Create(CultureInfo.InvariantCulture, $"{key}-{number}");
            if (!used.Contains(other)) return other;
        }
    }

    /// <summary>Every item that a shape names.</summary>
    public static IReadOnlyList<string> Of(Ask ask) => ask switch
    {
        Ask.AllOf all => all.Items,
        Ask.AnyOf any => any.Items,
        Ask.FromPool pool => pool.Pool,
        _ => [],
    };

    /// <summary>The edition without those of the items that nothing names any more.</summary>
    public static Edition Prune(Edition edition, IEnumerable<string> dropped)
    {
        ArgumentNullException.ThrowIfNull(edition);
        var named = edition.Ranks.SelectMany(r => r.Requirements).SelectMany(r => Of(r.Ask))
            .Concat(edition.Units.SelectMany(u => u.Items)).Concat(edition.FirstCourse)
            .Concat(edition.Items.SelectMany(i => (i.Covers ?? []).Append(i.Alternative)).OfType<string>()).ToHashSet(StringComparer.Ordinal);
        var gone = dropped.Where(key => !named.Contains(key)).ToHashSet(StringComparer.Ordinal);
        return gone.Count == 0 ? edition : edition with { Items = [.. edition.Items.Where(i => !gone.Contains(i.Key))] };
    }

    /// <summary>A list with one of its entries one place further up or down; null when it is at the end already or not there.</summary>
    public static IReadOnlyList<T>? Moved<T>(IReadOnlyList<T> list, Predicate<T> which, int by)
    {
        var moved = list.ToList();
        var at = moved.FindIndex(which);
        if (at < 0 || at + by < 0 || at + by >= moved.Count) return null;
        (moved[at], moved[at + by]) = (moved[at + by], moved[at]);
        return moved;
    }
}

/// <summary>A draft after one change, with the sentence of the change.</summary>
/// <param name="Edition">The whole draft.</param>
/// <param name="Said">What was done.</param>
public sealed record Edited(Edition Edition, string Said);
