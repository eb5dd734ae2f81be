using Keikocho.Core.Kernel;

namespace Keikocho.Core.Safety;

/// <summary>Which way somebody falls. The numbers are stored and never change their meaning.</summary>
public enum FallDirection
{
    /// <summary>Backward (ushiro-ukemi).</summary>
    Back = 1,
    /// <summary>To one side (yoko-ukemi); each side has its own gate.</summary>
    Side = 2,
    /// <summary>Forward onto the arms (mae-ukemi).</summary>
    Front = 3,
    /// <summary>Rolling (mae-mawari-ukemi); each side has its own gate.</summary>
    Rolling = 4,
}

/// <summary>The side of a fall. The numbers are stored and never change their meaning.</summary>
public enum FallSide
{
    /// <summary>The direction has no sides.</summary>
    None = 0,
    /// <summary>Left.</summary>
    Left = 1,
    /// <summary>Right.</summary>
    Right = 2,
}

/// <summary>A direction with its side: what one gate is about.</summary>
/// <param name="Direction">Which way.</param>
/// <param name="Side">The side; none for back and front.</param>
public readonly record struct FallWay(FallDirection Direction, FallSide Side)
{
    /// <summary>Every way there is, in the order of a list.</summary>
    public static IReadOnlyList<FallWay> All { get; } =
    [
        new(FallDirection.Back, FallSide.None),
        new(FallDirection.Side, FallSide.Left),
        new(FallDirection.Side, FallSide.Right),
        new(FallDirection.Front, FallSide.None),
        new(FallDirection.Rolling, FallSide.Left),
        new(FallDirection.Rolling, FallSide.Right),
    ];
}

/// <summary>
/// A fall that an adult saw. Stages: 1 lying or sitting, 2 squat, 3 standing, 4 from a partner low and slow, 5 thrown by an instructor,
/// 6 thrown by a child.
/// </summary>
/// <param name="On">The evening.</param>
/// <param name="Direction">Which way.</param>
/// <param name="Side">The side.</param>
/// <param name="Stage">1 to 6.</param>
/// <param name="Clean">Clean; false for head touched.</param>
/// <param name="Confirmed">An adult with the right to confirm falls saw it or stands behind it.</param>
/// <param name="Device">Where it was marked; order within an evening is known on one device only.</param>
/// <param name="Sequence">That device's own count.</param>
/// <param name="By">Name of who saw it; null where not known.</param>
public sealed record FallMark(
    DateOnly On,
    FallDirection Direction,
    FallSide Side,
    int Stage,
    bool Clean,
    bool Confirmed = true,
    DeviceId Device = default,
    int Sequence = 0,
    string? By = null);

/// <summary>What a stand-down forbids. The numbers are stored and never change their meaning; more than one may stand.</summary>
public enum StandDownScope
{
    /// <summary>Is not thrown; throws, holds and words go on.</summary>
    NoFalls = 1,
    /// <summary>No contact with a partner.</summary>
    NoContact = 2,
    /// <summary>Off the mat.</summary>
    OffTheMat = 3,
    /// <summary>Nothing that loads the neck: the alternative or nothing.</summary>
    SpareTheNeck = 4,
}

/// <summary>What a child may not do for now, and until whose word. Never lapses by itself.</summary>
/// <param name="Scope">What it forbids.</param>
/// <param name="From">First day.</param>
/// <param name="ReviewOn">To be looked at again on this day; passing it opens nothing. Null where no day is set.</param>
/// <param name="WhoseWord">Whose word is needed to lift it.</param>
/// <param name="LiftedOn">The day it was lifted; null while it stands.</param>
/// <param name="LiftedBy">Name of the adult who lifted it.</param>
/// <param name="LiftedWhy">The reason, for the adults who may read it.</param>
/// <param name="LiftEnteredOn">The day on which the lifting was entered; null where that was not kept, and then the day of lifting is used.</param>
public sealed record StandDown(
    StandDownScope Scope,
    DateOnly From,
    DateOnly? ReviewOn,
    string? WhoseWord,
    DateOnly? LiftedOn = null,
    string? LiftedBy = null,
    string? LiftedWhy = null,
    DateOnly? LiftEnteredOn = null);
