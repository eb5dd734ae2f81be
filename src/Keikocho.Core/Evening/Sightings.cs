using Keikocho.Core.Kernel;

namespace Keikocho.Core.Evening;

/// <summary>What an adult saw of an item. The numbers are stored and never change their meaning.</summary>
public enum SeenWord
{
    /// <summary>Good. For a word or a question: right.</summary>
    Good = 1,
    /// <summary>Prompted.</summary>
    Prompted = 2,
    /// <summary>Not yet. For a word or a question: wrong.</summary>
    NotYet = 3,
}

/// <summary>One mark about one child and one item, as it was made.</summary>
/// <param name="Id">Its own id.</param>
/// <param name="Device">Where it was made.</param>
/// <param name="Sequence">The device's own count; the only order that is used, and only within one device.</param>
/// <param name="On">Day of its lesson.</param>
/// <param name="Kind">Sighting, words, confirmed, cleared or corrected.</param>
/// <param name="Word">What was seen; null for cleared and confirmed.</param>
/// <param name="Settled">A paper's sign-off that the club counts as enough by itself.</param>
/// <param name="Replaces">The mark that it takes back, corrects or confirms; null otherwise.</param>
/// <param name="By">Who; null where a file says nothing.</param>
/// <param name="Confirms">Who made it may sign off: an adult with that right on that day.</param>
public sealed record SightingMark(
    MarkId Id,
    DeviceId Device,
    int Sequence,
    DateOnly On,
    MarkKind Kind,
    SeenWord? Word,
    bool Settled,
    MarkId? Replaces,
    PersonId? By,
    bool Confirms);

/// <summary>What one evening says of one child and one item.</summary>
/// <param name="On">The evening.</param>
/// <param name="Word">What counts for the evening; null where two adults disagree and nobody has settled it: it counts as nothing.</param>
/// <param name="Confirmed">False while it is a leader's suggestion.</param>
/// <param name="Settled">A sign-off that is enough by itself.</param>
/// <param name="Seen">Every word of that evening, for the page.</param>
public sealed record SeenEvening(DateOnly On, SeenWord? Word, bool Confirmed, bool Settled, IReadOnlyList<SeenWord> Seen);

/// <summary>Everything seen of one item of one child.</summary>
/// <param name="Item">Key of the item.</param>
/// <param name="Evenings">Oldest first; evenings on which everything was taken back are not there.</param>
public sealed record ItemSeen(string Item, IReadOnlyList<SeenEvening> Evenings);
