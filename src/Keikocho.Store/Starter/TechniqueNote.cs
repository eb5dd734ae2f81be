using Keikocho.Core.Safety;

namespace Keikocho.Store.Starter;

/// <summary>What family a technique belongs to. A closed list of words.</summary>
public enum TechniqueFamily
{
    /// <summary>A hand throw.</summary>
    Hand = 1,
    /// <summary>A hip throw.</summary>
    Hip = 2,
    /// <summary>A foot or leg throw.</summary>
    Foot = 3,
    /// <summary>A sacrifice throw.</summary>
    Sacrifice = 4,
    /// <summary>A hold-down.</summary>
    Hold = 5,
    /// <summary>A way out of a hold.</summary>
    Escape = 6,
    /// <summary>Turning a partner over.</summary>
    Turnover = 7,
    /// <summary>A breakfall.</summary>
    Fall = 8,
    /// <summary>Steps, posture, turning.</summary>
    Movement = 9,
    /// <summary>Taking hold.</summary>
    Grip = 10,
    /// <summary>Bows, dress, the belt.</summary>
    Bowing = 11,
}

/// <summary>A line about safety with who has looked at it.</summary>
/// <param name="Text">The line.</param>
/// <param name="Status">"not reviewed by a graded instructor", or by whom and when.</param>
public sealed record SafetyLine(string Text, string Status);

/// <summary>How the partner falls.</summary>
/// <param name="RightHanded">Ways when tori throws right-handed; all of them may happen.</param>
/// <param name="LeftHanded">Ways when tori throws left-handed.</param>
/// <param name="Stage">Lowest fall stage at which it is first done, 1 to 6.</param>
/// <param name="Status">Who has looked at it.</param>
public sealed record PartnerFalls(IReadOnlyList<FallWay> RightHanded, IReadOnlyList<FallWay> LeftHanded, int Stage, string Status);

/// <summary>Notes for teaching one technique.</summary>
/// <param name="Name">Its name, in a spelling that the name library knows, or plain words.</param>
/// <param name="Family">Its family.</param>
/// <param name="Meaning">Plain meaning.</param>
/// <param name="LookFor">Three lines.</param>
/// <param name="Faults">Two common faults.</param>
/// <param name="Falls">How the partner falls; null for what is no throw.</param>
/// <param name="LeadUps">Names of what is learned before it.</param>
/// <param name="Easier">An easier form.</param>
/// <param name="Harder">A harder form.</param>
/// <param name="Caution">What to take care of for head and neck; null where there is nothing.</param>
/// <param name="AloneAtHome">May be practised alone at home: never a throw, a fall or a hold.</param>
/// <param name="Minutes">Usual length of a slot.</param>
public sealed record TechniqueNote(
    string Name,
    TechniqueFamily Family,
    string Meaning,
    IReadOnlyList<string> LookFor,
    IReadOnlyList<string> Faults,
    PartnerFalls? Falls,
    IReadOnlyList<string> LeadUps,
    string Easier,
    string Harder,
    SafetyLine? Caution,
    bool AloneAtHome,
    int Minutes)
{
    /// <summary>A throw: somebody falls.</summary>
    public bool IsThrow => Family is TechniqueFamily.Hand or TechniqueFamily.Hip or TechniqueFamily.Foot or TechniqueFamily.Sacrifice;
}
