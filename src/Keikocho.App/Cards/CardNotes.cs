using Keikocho.Core.Evening;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Starter;

namespace Keikocho.App.Cards;

/// <summary>What the starter kit has for a card: the parts of a lesson, games, and notes for teaching a technique.</summary>
public static class CardNotes
{
    private static readonly Lazy<Dictionary<string, TechniqueNote>> Notes = new(() =>
        Whole(StarterKit.Techniques()).GroupBy(n => ThrowPlans.Listed(n.Name), StringComparer.OrdinalIgnoreCase).ToDictionary(g => g.Key, g => g.First(), StringComparer.OrdinalIgnoreCase));

    private static readonly Lazy<IReadOnlyList<StarterGame>> AllGames = new(() => Whole(StarterKit.Games()));

    private static readonly Lazy<IReadOnlyList<CardPart>> AllParts = new(() => StarterKit.Lesson() is TextReading<LessonTemplate>.Read read
        ? [.. read.Value.Parts.Select(p => new CardPart(p.Kind, p.Name, p.Minutes, p.Does))]
        : throw new InvalidOperationException("The program was built with a faulty lesson template."));

    /// <summary>The games.</summary>
    public static IReadOnlyList<CardGame> Games { get; } = [.. AllGames.Value.Select(g => g.Game)];

    /// <summary>The parts of a lesson of so many minutes.</summary>
    public static IReadOnlyList<CardPart> Parts(int minutes) => FitParts.To(AllParts.Value, minutes);

    /// <summary>Whether a lesson of so many minutes has room for a card.</summary>
    public static bool HasRoom(int minutes) => minutes is >= 20 and <= 240;

    /// <summary>The note for an item; null where the kit has none.</summary>
    public static TechniqueNote? Of(Item item)
    {
        ArgumentNullException.ThrowIfNull(item);
        var name = item.Technique ?? (item.Order switch
        {
            Order.Into into => into.First,
            Order.CounteredBy by => by.Counter,
            _ => null,
        });
        return name is null ? null : Notes.Value.GetValueOrDefault(ThrowPlans.Listed(name));
    }

    private static IReadOnlyList<T> Whole<T>(TextReading<IReadOnlyList<T>> reading) => reading is TextReading<IReadOnlyList<T>>.Read read ? read.Value : [];
}
