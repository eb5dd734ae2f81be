using System.Collections.Immutable;
using Keikocho.Core.Safety;

namespace Keikocho.Store.Safety;

/// <summary>One line of an accident record, its words opened.</summary>
/// <param name="Id">The line.</param>
/// <param name="KnockId">The knock.</param>
/// <param name="Kind">What it says.</param>
/// <param name="On">The day it speaks of; null where it speaks of none.</param>
/// <param name="Words">The words.</param>
/// <param name="ById">Who wrote it.</param>
/// <param name="MadeAt">When.</param>
public sealed record HeldKnockLine(Guid Id, Guid KnockId, KnockLine Kind, DateOnly? On, string? Words, Guid ById, DateTimeOffset MadeAt);

/// <summary>A knock with its record.</summary>
/// <param name="Id">The knock; also the id of the mark.</param>
/// <param name="PersonId">The child.</param>
/// <param name="LessonId">The lesson.</param>
/// <param name="On">Day 0.</param>
/// <param name="Activity">What was going on.</param>
/// <param name="NearMiss">Nobody was hurt.</param>
/// <param name="ById">Who marked it; null where its mark is not there.</param>
/// <param name="MadeAt">When the laptop knew of it.</param>
/// <param name="Lines">In the order in which they were written.</param>
public sealed record HeldKnock(
    Guid Id, Guid PersonId, Guid LessonId, DateOnly On, KnockActivity Activity, bool NearMiss, Guid? ById, DateTimeOffset MadeAt, ImmutableArray<HeldKnockLine> Lines)
{
    /// <summary>The first line that says that the slip was handed over or the family told by phone; null while it waits.</summary>
    public HeldKnockLine? Told => Lines.FirstOrDefault(l => l.Kind is KnockLine.HandedOver or KnockLine.ToldByPhone);

    /// <summary>Whether it counts: somebody was hurt, and it was this child.</summary>
    public bool Counts => !NearMiss && Lines.All(l => l.Kind != KnockLine.WrongChild);

    /// <summary>Whether its slip waits to be handed over.</summary>
    public bool SlipIsOpen => Counts && Told is null;
}
