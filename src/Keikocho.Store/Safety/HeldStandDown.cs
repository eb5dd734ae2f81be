using Keikocho.Core.Safety;

namespace Keikocho.Store.Safety;

/// <summary>A stand-down as it is kept, with ids, its words opened.</summary>
/// <param name="Id">The stand-down.</param>
/// <param name="PersonId">The child.</param>
/// <param name="Scope">What it forbids.</param>
/// <param name="From">From this day.</param>
/// <param name="ReviewOn">To be looked at again; passing it opens nothing.</param>
/// <param name="WhoseWord">Whose word is needed to lift it.</param>
/// <param name="ById">Who entered it.</param>
/// <param name="MadeAt">When.</param>
/// <param name="LiftedOn">The day it was lifted; null while it stands.</param>
/// <param name="LiftedById">The adult who lifted it.</param>
/// <param name="LiftedWhy">Why.</param>
/// <param name="LiftEnteredOn">The day on which the lifting was entered; null where that was not kept.</param>
public sealed record HeldStandDown(
    Guid Id,
    Guid PersonId,
    StandDownScope Scope,
    DateOnly From,
    DateOnly? ReviewOn,
    string? WhoseWord,
    Guid ById,
    DateTimeOffset MadeAt,
    DateOnly? LiftedOn,
    Guid? LiftedById,
    string? LiftedWhy,
    DateOnly? LiftEnteredOn = null)
{
    /// <summary>As the sums take it.</summary>
    /// <param name="nameOf">The name of an adult; null for one whose name was erased.</param>
    public StandDown ToStandDown(Func<Guid, string?> nameOf)
    {
        ArgumentNullException.ThrowIfNull(nameOf);
        return new StandDown(
            Scope, From, ReviewOn, WhoseWord, LiftedOn, LiftedById is { } by ? nameOf(by) ?? "an adult whose name was erased" : null, LiftedWhy, LiftEnteredOn);
    }
}
