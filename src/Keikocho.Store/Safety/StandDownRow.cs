using Keikocho.Store.Kernel;

namespace Keikocho.Store.Safety;

/// <summary>What a child may not do for now. It never lapses by itself; lifting it is a second row's worth of facts on the same one.</summary>
public sealed class StandDownRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>The child.</summary>
    public Guid PersonId { get; set; }
    /// <summary>No falls, no contact, off the mat; as the core numbers it.</summary>
    public int Scope { get; set; }
    /// <summary>From this day.</summary>
    public DateOnly From { get; set; }
    /// <summary>To be looked at again on this day; passing it opens nothing.</summary>
    public DateOnly? ReviewOn { get; set; }
    /// <summary>Whose word is needed to lift it.</summary>
    public Sealed<string>? WhoseWord { get; set; }
    /// <summary>Who entered it.</summary>
    public Guid ById { get; set; }
    /// <summary>When.</summary>
    public DateTimeOffset MadeAt { get; set; }
    /// <summary>The day it was lifted; null while it stands.</summary>
    public DateOnly? LiftedOn { get; set; }
    /// <summary>The adult who lifted it.</summary>
    public Guid? LiftedById { get; set; }
    /// <summary>Why.</summary>
    public Sealed<string>? LiftedWhy { get; set; }
    /// <summary>The day on which the lifting was entered; null for one that was entered before this was kept.</summary>
    public DateOnly? LiftEnteredOn { get; set; }
}
