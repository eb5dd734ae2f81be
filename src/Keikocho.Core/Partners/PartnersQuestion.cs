using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;

namespace Keikocho.Core.Partners;

/// <summary>A child who is here, at one end of the mat.</summary>
/// <param name="Child">Who.</param>
/// <param name="Name">The name as lists show it.</param>
/// <param name="Register">Place on the register; no two alike.</param>
/// <param name="Age">Age in whole years; null where it is not known.</param>
/// <param name="MayFall">The fall gate is open for every throw of the activity and no stand-down forbids falls; <see cref="MayBePaired.MayFall"/>.</param>
/// <param name="MayHaveContact">No stand-down forbids contact.</param>
/// <param name="MayBeOnTheMat">No stand-down keeps the child off the mat.</param>
/// <param name="Kilograms">Size; null where none is held. Never shown, and in no sentence.</param>
/// <param name="WeighedOn">The day of it.</param>
/// <param name="Newcomer">Has attended only a few lessons.</param>
/// <param name="Steps">Steps up the ladder, used where a size is missing; null where not known.</param>
/// <param name="Family">The same text for children of one family; null where none is known.</param>
public sealed record PartnersChild(
    PersonId Child,
    string Name,
    int Register,
    int? Age,
    bool MayFall,
    bool MayHaveContact,
    bool MayBeOnTheMat,
    decimal? Kilograms = null,
    DateOnly? WeighedOn = null,
    bool Newcomer = false,
    int? Steps = null,
    string? Family = null);

/// <summary>What is done in pairs.</summary>
/// <param name="Name">"throwing", "turn-ins", "holds", "free practice".</param>
/// <param name="Thrown">Whether somebody is thrown.</param>
/// <param name="SizeLimit">The heavier is at most so many per cent above the lighter: 15 for throwing, 25 for turn-ins (the club's), 10 (common practice).</param>
public sealed record PartnersActivity(string Name, bool Thrown, int SizeLimit);

/// <summary>Two children.</summary>
/// <param name="One">The one.</param>
/// <param name="Other">The other.</param>
public sealed record TwoChildren(PersonId One, PersonId Other);

/// <summary>Two children who worked together.</summary>
/// <param name="One">The one.</param>
/// <param name="Other">The other.</param>
/// <param name="ClassesAgo">1 for the last class, 2 for the one before.</param>
public sealed record WorkedTogether(PersonId One, PersonId Other, int ClassesAgo);

/// <summary>The question: who works with whom.</summary>
/// <param name="Today">The day.</param>
/// <param name="Activity">What is done.</param>
/// <param name="Children">The children at this end, in any order.</param>
/// <param name="Adults">Names of adults who can partner a child, the first to be asked first; may be empty.</param>
/// <param name="Rule">The rule.</param>
/// <param name="KeepApart">Two who are in no pair and no three together; others than those here may be named.</param>
/// <param name="KeepTogether">Two who are to work together where no gate forbids it; lifts the rule for siblings.</param>
/// <param name="Together">Who worked together of late.</param>
/// <param name="Instead">Activities to offer where this one has no arrangement.</param>
public sealed record PartnersQuestion(
    DateOnly Today,
    PartnersActivity Activity,
    IReadOnlyList<PartnersChild> Children,
    IReadOnlyList<string> Adults,
    PartnersRule? Rule = null,
    IReadOnlyList<TwoChildren>? KeepApart = null,
    IReadOnlyList<TwoChildren>? KeepTogether = null,
    IReadOnlyList<WorkedTogether>? Together = null,
    IReadOnlyList<PartnersActivity>? Instead = null);

/// <summary>From the gates of one child to what pairs ask.</summary>
public static class MayBePaired
{
    /// <summary>Whether the child may fall in this activity: every planned throw is open, there is at least one, and no stand-down forbids falls.</summary>
    public static bool MayFall(FallGateAnswer gates, StandDownsAnswer standDowns)
    {
        ArgumentNullException.ThrowIfNull(gates);
        ArgumentNullException.ThrowIfNull(standDowns);
        return standDowns.MayFall && gates.Throws.Count > 0 && gates.Throws.All(t => t.MayBeThrown);
    }
}
