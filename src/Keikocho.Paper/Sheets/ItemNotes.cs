using System.Globalization;
using Keikocho.Core.Syllabus;
using Keikocho.Paper.Layout;

namespace Keikocho.Paper.Sheets;

/// <summary>The small lines under an item.</summary>
internal static class ItemNotes
{
    /// <summary>Every line that one item has, in the order of the sheet.</summary>
    /// <param name="content">The sheet.</param>
    /// <param name="line">Its line.</param>
    /// <param name="item">The item.</param>
    /// <param name="above">What stands above, so that nothing is said twice.</param>
    /// <param name="named">True where several items share a line and each note must say whose it is.</param>
    public static IEnumerable<IReadOnlyList<Words>> Of(RequirementSheetContent content, SheetLine line, SheetItem item, string above, bool named)
    {
        var what = item.Item;
        var whose = named ? what.Name + ": " : "";
        var means = new[]
        {
            Script(content, what), named || Says(above, what.Name) ? null : what.Name, what.Meaning is { } meaning && !Says(above, meaning) ? meaning : null,
            !named && line.Items.Count == 1 && line.FromRank is { } rank ? "from " + rank : null,
        };
        if (string.Join(" · ", means.OfType<string>()) is { Length: > 0 } first)
            yield return [first];
        if (!named && what.Order is Order.EscapeFrom escape && !Says(above, escape.By))
            yield return [whose + escape.By];
        if (what.Order is Order.TurnoverInto turnover && !Says(above, turnover.Position))
            yield return [whose + turnover.Position];
        if (what.LookFor is { } look)
            yield return [(named ? what.Name + " " : "") + SheetTexts.LookFor + " " + look];
        if (item.InsteadOf is { } other)
            yield return [new Words($"{whose}instead of {other}", true)];
        if (item.Way is { } way)
            yield return [new Words(whose + "Agreed way: ", true), way];
        if (item.KeptUntil is { } until)
            yield return [new Words($"{whose}Kept until {PaperDate.Day(until)}", true), ": not shown again"];
        if (named && item.Chosen)
            yield return [new Words(whose + "chosen", true)];
        if (content.SeenGood?.TryGetValue(what.Key, out var day) == true)
            yield return [new Words("✓ ", true), $"{whose}{SheetTexts.Seen(what.Kind)} on {PaperDate.Day(day)}"];
        if (content.NotReviewed?.Contains(what.Key) == true)
            yield return [whose + SheetTexts.NotReviewed];
    }

    /// <summary>What is said of the whole line.</summary>
    public static IEnumerable<IReadOnlyList<Words>> Of(RequirementSheetContent content, SheetLine line)
    {
        if (content.Child is null && line.Ages is { } ages)
            yield return [new Words("Asked " + ages, true)];
        if (line.Items.Count > 1 && line.FromRank is { } rank)
            yield return ["from " + rank];
    }

    /// <summary>The line's own words: its title, condition, and how long or how often.</summary>
    public static string Line(SheetLine line, string title)
    {
        var words = title;
        if (line.Condition is { } condition && !Says(words, condition))
            words += ", " + condition;
        if (line.Items.Count != 1)
            return words;
        return Figures(words, line.Items[0].Item);
    }

    /// <summary>An item with how long or how often, where its name does not say it.</summary>
    public static string Figures(string words, Item item)
    {
        if (item.Seconds is { } seconds && !words.Any(char.IsAsciiDigit) && !Says(words, "seconds") && !Says(words, "minute"))
            words += seconds % 60 == 0 ? $", for {Count(seconds / 60, "minute")}" : $", for {Count(seconds, "second")}";
        if (item.Times is { } times && !words.Any(char.IsAsciiDigit) && !Says(words, "times"))
            words += $", {Count(times, "time")}";
        return words;
    }

    /// <summary>Kanji and kana; null where there are none.</summary>
    public static string? Script(RequirementSheetContent content, Item item) =>
        string.Join(' ', Scripts(content, item)) is { Length: > 0 } script ? script : null;

    /// <summary>Kanji, then kana, as far as they are known and not the same.</summary>
    public static IEnumerable<string> Scripts(RequirementSheetContent content, Item item)
    {
        var given = content.Scripts.GetValueOrDefault(item.Key);
        return new[] { item.Kanji ?? given?.Kanji, item.Kana ?? given?.Kana }
            .OfType<string>().Where(script => !string.IsNullOrWhiteSpace(script)).Distinct(StringComparer.Ordinal);
    }

    /// <summary>Whether words stand in a text, however capitals are set.</summary>
    public static bool Says(string text, string words) => text.Contains(words, StringComparison.OrdinalIgnoreCase);

    private static string Count(int number, string one) => string.Create(CultureInfo.InvariantCulture, $"{number} {one}{(number == 1 ? "" : "s")}");
}
