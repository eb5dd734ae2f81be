using Keikocho.Core.Kernel;

namespace Keikocho.Core.Safety;

/// <summary>The question: what stands for one child on one day.</summary>
/// <param name="On">The day.</param>
/// <param name="StandDowns">Every stand-down of the child, lifted ones too.</param>
public sealed record StandDownsSnapshot(DateOnly On, IReadOnlyList<StandDown> StandDowns);

/// <summary>What stands for one child on one day.</summary>
/// <param name="Standing">Those that stand, oldest first.</param>
/// <param name="ForReview">Those of them whose review day has come or passed; they stand all the same.</param>
/// <param name="MayFall">False under any scope that forbids falls.</param>
/// <param name="MayHaveContact">False under no contact and off the mat.</param>
/// <param name="MayBeOnTheMat">False under off the mat.</param>
/// <param name="SparesTheNeck">Items that load the neck give way.</param>
/// <param name="Role">As a card prints it, without any reason: "throws and is thrown" becomes "tori only", "movement alone", "watches".</param>
/// <param name="Reasons">In plain sentences, for adults who may read them.</param>
public sealed record StandDownsAnswer(
    IReadOnlyList<StandDown> Standing,
    IReadOnlyList<StandDown> ForReview,
    bool MayFall,
    bool MayHaveContact,
    bool MayBeOnTheMat,
    bool SparesTheNeck,
    string Role,
    IReadOnlyList<Reason> Reasons);
