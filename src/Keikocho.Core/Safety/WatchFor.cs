using Keikocho.Core.Kernel;

namespace Keikocho.Core.Safety;

/// <summary>What to do at once after a knock to the head, and what to watch for. Words for adults who hold no textbook; no diagnosis.</summary>
public static class WatchFor
{
    /// <summary>Where the watch-for list comes from.</summary>
    public const string Source =
        "Put in our own words from the red flags of the Concussion Recognition Tool 5 (read) and of UK guidance for grassroots sport, 2023 (read); pupils, speech and crying from CDC HEADS UP (from memory).";

    /// <summary>Where the first aid comes from.</summary>
    public const string FirstAidSource = "common practice, no source; off at once and nothing for 24 hours: UK guidance for grassroots sport, 2023 (read). A first-aider’s own training comes first.";

    /// <summary>Ring the emergency number with any of these.</summary>
    public static IReadOnlyList<string> Signs { get; } =
    [
        "a neck that hurts or is tender",
        "unconscious, even for a moment, or cannot be woken",
        "a fit",
        "being sick",
        "a bad headache, or one that gets worse",
        "sleepier, more muddled, or does not remember what happened",
        "sees double, or the pupils are not the same size",
        "arms or legs that are weak, tingle or burn",
        "slurred speech or an unsteady walk",
        "more and more restless, or hitting out",
        "in a small child: will not stop crying, will not eat",
    ];

    /// <summary>At once, before any form.</summary>
    public static IReadOnlyList<string> FirstAid { get; } =
    [
        "Stop the child and the game around it. Send for the first-aider.",
        "If the neck hurts or the child is not fully awake, do not move them: hold the head still and ring.",
        "With any sign below, ring at once. In doubt, ring.",
        "The child is off for the evening, however well they look. An adult stays beside them until they are fetched; they do not go home alone.",
        "Ring the family now. To be seen or spoken to by a clinician within 24 hours.",
    ];

    /// <summary>Which number the pages and the slip name.</summary>
    public static ChoiceSetting EmergencyNumber { get; } = new(
        "knock.emergencyNumber", "The emergency number on the knock slip", "your country’s emergency number",
        ["your country’s emergency number", "112", "999 or 112", "911", "000", "111"], "from memory: 112 in Europe, 999 or 112 in the United Kingdom and Ireland, 911 in North America, 000 in Australia, 111 in New Zealand");
}
