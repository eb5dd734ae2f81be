using Keikocho.App.Club;
using Keikocho.App.Shared;
using Keikocho.Store.People;

namespace Keikocho.App.Register;

/// <summary>What is done before a child goes, where somebody may not fetch it: without a reason and without a name.</summary>
public static class BeforeTheyGo
{
    /// <summary>What stands beside "left" for a child whom somebody may not fetch.</summary>
    public const string Check = "Check with instructor before this child goes.";

    /// <summary>What a junior leader reads of every child: who it is about is not said there.</summary>
    public const string OfEverybody = "Before a child goes: an instructor hands the child over.";

    /// <summary>By child; who is not there may go with whoever fetches.</summary>
    public static IReadOnlyDictionary<Guid, string> Of(OpenClub club, IReadOnlyCollection<Guid> children, SeenAs seen)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(seen);
        return seen.Teaches
            ? PeopleReader.WithSomebodyBarred(club.Reading, children).ToDictionary(id => id, _ => Check)
            : children.ToDictionary(id => id, _ => OfEverybody);
    }
}
