using Keikocho.App.Club;
using Keikocho.App.Shared;
using Keikocho.Store.Marks;
using Keikocho.Store.People;

namespace Keikocho.App.Mat;

/// <summary>
/// The two signs that an instructor's tablet has of a child: that there is something for an adult to open, and that whoever fetches the
/// child is checked first. Neither says why. A junior leader's tablet has none of them.
/// </summary>
/// <param name="AskAdult">Children with a care note or a stand-down that stands.</param>
/// <param name="CheckFirst">Children whom somebody may not fetch.</param>
internal sealed record PlainSigns(IReadOnlySet<Guid> AskAdult, IReadOnlySet<Guid> CheckFirst)
{
    private static readonly PlainSigns None = new(new HashSet<Guid>(), new HashSet<Guid>());

    public static PlainSigns Of(OpenClub club, SeenAs seen, IReadOnlyDictionary<Guid, ChildEvidence> evidence, DateOnly day)
    {
        if (!seen.Teaches) return None;
        Guid[] children = [.. evidence.Keys];
        var ask = CareNoteReader.Stands(club.Reading, children).Values.Where(s => s.HasNote).Select(s => s.PersonId).ToHashSet();
        ask.UnionWith(evidence.Where(e => e.Value.StandDowns.Any(s => s.From <= day && (s.LiftedOn is not { } lifted || lifted > day))).Select(e => e.Key));
        return new PlainSigns(ask, PeopleReader.WithSomebodyBarred(club.Reading, children));
    }
}
