using System.Globalization;
using Keikocho.Core.Kernel;

namespace Keikocho.Core.Syllabus;

/// <summary>
/// What a child may practise at home in a few minutes, alone or with somebody who calls: three things, words first. Never a throw, a fall
/// or a hold, nothing that loads the neck, nothing that needs a partner.
/// </summary>
public static class HomePractice
{
    /// <summary>So many things.</summary>
    public const int Things = 3;

    /// <summary>At most so many words at once.</summary>
    public const int MostWords = 4;

    private static readonly string[] Always =
    [
        "Tie your own belt twice.",
        "Bow standing and kneeling, as at the start of a lesson.",
        "Tell somebody what you practised at the last lesson.",
    ];

    /// <summary>Three sentences to the child: from what is still open where it can be practised at home, else what is always good.</summary>
    /// <param name="sheet">What must be shown.</param>
    /// <param name="secure">Keys of items that are good already; null where nothing is known, as on the copy for the wall.</param>
    public static IReadOnlyList<string> Of(RequirementSheet sheet, IReadOnlySet<string>? secure = null)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        // An agreed way may need somebody beside the child, so what has one is left to the hall.
        var open = sheet.Lines.SelectMany(l => l.Items)
            .Where(i => i.KeptUntil is null && i.Way is null && secure?.Contains(i.Item.Key) != true && !i.Item.LoadsTheNeck)
            .Select(i => i.Item).DistinctBy(i => i.Key).ToList();
        var things = new List<string>();
        Item[] words = [.. open.Where(i => i.Kind == ItemKind.Word).OrderByDescending(i => i.Safety).Take(MostWords)];
        if (words.Length > 0)
            things.Add($"Ask somebody to call {Words.List([.. words.Select(w => w.Name)])}, and say what {(words.Length == 1 ? "it means" : "each means")}.");
        Item[] manners = [.. open.Where(i => i is { Kind: ItemKind.Etiquette, Safety: false } && !i.Name.Contains("partner", StringComparison.OrdinalIgnoreCase))
            .OrderByDescending(i => i.Name.Contains("belt", StringComparison.OrdinalIgnoreCase)).Take(1)];
        things.AddRange(manners.Select(m => $"Twice, slowly: {Small(m.Name)}."));
        things.AddRange(open.Where(i => i.Kind == ItemKind.Escape).Select(i => i.Order).OfType<Order.EscapeFrom>().Take(1)
            .Select(e => $"Alone on a carpet, slowly, with nobody on you: {Small(e.By.Trim().TrimEnd('.'))}."));
        things.AddRange(open.Where(i => i.Kind == ItemKind.Question).Take(1).Select(q => $"Answer aloud: {q.Name.Trim()}"));
        // A belt that the sheet asks for is not tied once more.
        var more = Always.Where(a => !things.Exists(t => Both(t, a, "belt") || Both(t, a, "bow")));
        return [.. things.Concat(more).Take(Things)];
    }

    private static bool Both(string one, string other, string word) =>
        one.Contains(word, StringComparison.OrdinalIgnoreCase) && other.Contains(word, StringComparison.OrdinalIgnoreCase);

    private static string Small(string text) =>
        text.Length > 1 && char.IsUpper(text[0]) && !char.IsUpper(text[1]) ? char.ToLower(text[0], CultureInfo.InvariantCulture) + text[1..] : text;
}
