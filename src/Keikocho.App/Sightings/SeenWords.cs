using Keikocho.Core.Evening;
using Keikocho.Core.Syllabus;

namespace Keikocho.App.Sightings;

/// <summary>What was seen, in words and as forms write it.</summary>
public static class SeenWords
{
    /// <summary>Takes back what was marked.</summary>
    public const string Nothing = "nothing";

    /// <summary>The words of one item's kind, for a list to choose from.</summary>
    public static IReadOnlyList<(string Value, string Words)> Choices(ItemKind kind) =>
        [("good", Of(SeenWord.Good, kind)), ("prompted", Of(SeenWord.Prompted, kind)), ("not-yet", Of(SeenWord.NotYet, kind))];

    /// <summary>"good", "prompted", "not yet"; of a word or question "right", "with help", "wrong".</summary>
    public static string Of(SeenWord word, ItemKind kind) => (word, IsAsked(kind)) switch
    {
        (SeenWord.Good, false) => "good",
        (SeenWord.Good, true) => "right",
        (SeenWord.Prompted, false) => "prompted",
        (SeenWord.Prompted, true) => "with help",
        (SeenWord.NotYet, false) => "not yet",
        (SeenWord.NotYet, true) => "wrong",
        _ => throw new ArgumentOutOfRangeException(nameof(word), word, "There is no such word."),
    };

    /// <summary>What one evening says.</summary>
    public static string Of(SeenEvening evening, ItemKind kind)
    {
        ArgumentNullException.ThrowIfNull(evening);
        var words = evening.Word is { } word ? Of(word, kind) : $"{string.Join(" and ", evening.Seen.Distinct().Order().Select(w => Of(w, kind)))}: to be settled";
        return evening.Confirmed ? words : $"{words}, suggested";
    }

    /// <summary>The word of a form's value; null for none.</summary>
    public static SeenWord? Read(string? value) => value switch { "good" => SeenWord.Good, "prompted" => SeenWord.Prompted, "not-yet" => SeenWord.NotYet, _ => null };

    /// <summary>Words and questions are asked, everything else is seen.</summary>
    public static bool IsAsked(ItemKind kind) => kind is ItemKind.Word or ItemKind.Question;

    /// <summary>The kind of mark.</summary>
    public static MarkKind MarkOf(ItemKind kind) => IsAsked(kind) ? MarkKind.Words : MarkKind.Sighting;
}
