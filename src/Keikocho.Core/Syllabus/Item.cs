using System.Text.Json.Serialization;
using Keikocho.Core.Safety;

namespace Keikocho.Core.Syllabus;

/// <summary>What kind of thing an item is. The numbers are stored and never change their meaning.</summary>
public enum ItemKind
{
    /// <summary>A breakfall; read from fall marks, never from sightings.</summary>
    Fall = 1,
    /// <summary>A throw.</summary>
    Throw = 2,
    /// <summary>A hold-down.</summary>
    HoldDown = 3,
    /// <summary>A way out of a hold.</summary>
    Escape = 4,
    /// <summary>Turning a partner over on the ground.</summary>
    Turnover = 5,
    /// <summary>One throw into another.</summary>
    Combination = 6,
    /// <summary>A throw against a throw.</summary>
    Counter = 7,
    /// <summary>Anything else in an order: a throw into a hold.</summary>
    Sequence = 8,
    /// <summary>Bows, dress, the belt.</summary>
    Etiquette = 9,
    /// <summary>A word and its meaning.</summary>
    Word = 10,
    /// <summary>A question and its answer.</summary>
    Question = 11,
    /// <summary>Counted or timed exercise.</summary>
    Exercise = 12,
    /// <summary>Free practice, attack and defence.</summary>
    FreePractice = 13,
    /// <summary>Taking hold.</summary>
    Grip = 14,
    /// <summary>Posture, steps, turning the body.</summary>
    Movement = 15,
    /// <summary>A strangle.</summary>
    Strangle = 16,
    /// <summary>An armlock.</summary>
    Armlock = 17,
}

/// <summary>How two techniques of one item hang together. A closed set.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "is")]
[JsonDerivedType(typeof(Into), "into")]
[JsonDerivedType(typeof(CounteredBy), "counteredBy")]
[JsonDerivedType(typeof(EscapeFrom), "escapeFrom")]
[JsonDerivedType(typeof(TurnoverInto), "turnoverInto")]
public abstract record Order
{
    private Order()
    {
    }

    /// <summary>A into B: a combination, a throw into a hold.</summary>
    /// <param name="First">The first technique's name.</param>
    /// <param name="Second">The technique that follows.</param>
    public sealed record Into(string First, string Second) : Order;

    /// <summary>A countered by B.</summary>
    /// <param name="Attack">The attack's name.</param>
    /// <param name="Counter">The counter's name.</param>
    public sealed record CounteredBy(string Attack, string Counter) : Order;

    /// <summary>Out of a hold by a named way.</summary>
    /// <param name="Hold">The hold's name.</param>
    /// <param name="By">The way in plain words: "bridge and roll".</param>
    public sealed record EscapeFrom(string Hold, string By) : Order;

    /// <summary>Turning the partner into a hold from a named position.</summary>
    /// <param name="Hold">The hold that it ends in; null where any will do.</param>
    /// <param name="Position">How the partner lies or kneels: "partner on hands and knees".</param>
    public sealed record TurnoverInto(string? Hold, string Position) : Order;
}

/// <summary>One thing to show: a technique with its form, a fall, a word, a question. Its key stays the same through all editions.</summary>
/// <param name="Key">Stable key, lower-case words joined by hyphens: "o-goshi-moving".</param>
/// <param name="Kind">What it is.</param>
/// <param name="Name">Its name on a sheet, in the club's spelling: "O-goshi, moving".</param>
/// <param name="Technique">The technique that it is a form of, in the club's spelling; null where there is none or <paramref name="Order"/> has two.</param>
/// <param name="Order">Two techniques, or one and a way or a position; null for a single one.</param>
/// <param name="Fall">For a fall: which way, which side, what stage.</param>
/// <param name="Kana">Kana of a word or technique; null where the name library has it or there is none.</param>
/// <param name="Kanji">Kanji; null as above.</param>
/// <param name="Meaning">Plain meaning: "major hip throw", or what a word means.</param>
/// <param name="LookFor">What we look for, one line; null where nothing is written.</param>
/// <param name="Seconds">Held or done for so many seconds; null where not timed.</param>
/// <param name="Times">Done so many times; null where not counted.</param>
/// <param name="Answers">Accepted answers of a word or question.</param>
/// <param name="Safety">A word that stops everything, or a tap: safety comes first on every oral list.</param>
/// <param name="LoadsTheNeck">Never for a child whose neck is at risk.</param>
/// <param name="Alternative">Key of the item shown in its place under an age rule or a neck risk; null for none.</param>
/// <param name="Covers">Keys of easier forms that this one meets when it is good.</param>
public sealed record Item(
    string Key,
    ItemKind Kind,
    string Name,
    string? Technique = null,
    Order? Order = null,
    FallForm? Fall = null,
    string? Kana = null,
    string? Kanji = null,
    string? Meaning = null,
    string? LookFor = null,
    int? Seconds = null,
    int? Times = null,
    IReadOnlyList<string>? Answers = null,
    bool Safety = false,
    bool LoadsTheNeck = false,
    string? Alternative = null,
    IReadOnlyList<string>? Covers = null);

/// <summary>A fall as an item asks it.</summary>
/// <param name="Direction">Which way.</param>
/// <param name="BothSides">Left and right, where the direction has sides.</param>
/// <param name="Stage">Lowest stage that is enough, 1 to 6.</param>
public sealed record FallForm(FallDirection Direction, bool BothSides, int Stage);
