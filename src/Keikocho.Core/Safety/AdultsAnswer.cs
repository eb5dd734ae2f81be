using Keikocho.Core.Kernel;

namespace Keikocho.Core.Safety;

/// <summary>Adults at one place.</summary>
/// <param name="Children">Children there.</param>
/// <param name="Needed">Adults needed by the method in use.</param>
/// <param name="Have">Adults who count.</param>
/// <param name="ShortBy">How many are missing, 0 when none.</param>
/// <param name="NeededBySum">Needed when the fractions are added and then rounded up.</param>
/// <param name="NeededByBand">Needed when each band is rounded up and then added.</param>
/// <param name="Fraction">The sum of the fractions, exact.</param>
public sealed record AdultCount(
    int Children, int Needed, int Have, int ShortBy, int NeededBySum, int NeededByBand, string Fraction);

/// <summary>Why somebody present does not count.</summary>
public enum NotCountedWhy
{
    /// <summary>Under 18.</summary>
    Under18 = 0,
    /// <summary>No vetting is held.</summary>
    NoVetting = 1,
    /// <summary>The vetting has run out.</summary>
    VettingLapsed = 2,
}

/// <summary>Somebody present who does not count.</summary>
/// <param name="Name">Name from the question.</param>
/// <param name="Why">Why not.</param>
/// <param name="Because">The same in a sentence.</param>
public sealed record NotCounted(string Name, NotCountedWhy Why, Reason Because);

/// <summary>Enough adults or not; never "allowed".</summary>
/// <param name="Headline">The top line: "short by 1", "enough adults: 4 of 4".</param>
/// <param name="Hall">The whole hall, with the minimum.</param>
/// <param name="Beginners">The beginners' end, without the minimum.</param>
/// <param name="Main">The main group, without the minimum.</param>
/// <param name="NotCounted">Who does not count and why, in the order of the question.</param>
/// <param name="FirstAiders">Adults who count and whose first aid holds, in the order of the question.</param>
/// <param name="NobodyFree">True when nobody would be free for first aid or the toilet without leaving too few.</param>
/// <param name="Reasons">Rules, figures and dates.</param>
/// <param name="Settings">The settings used.</param>
public sealed record AdultsAnswer(
    string Headline,
    AdultCount Hall,
    AdultCount Beginners,
    AdultCount Main,
    IReadOnlyList<NotCounted> NotCounted,
    IReadOnlyList<string> FirstAiders,
    bool NobodyFree,
    IReadOnlyList<Reason> Reasons,
    IReadOnlyList<SettingUsed> Settings);
