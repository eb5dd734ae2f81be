using Keikocho.Store.Kernel;

namespace Keikocho.Store.Safety;

/// <summary>
/// A knock: the head of its accident record. Its id is that of the mark that said it, so that a tablet can begin it without a network;
/// everything that is told of it afterwards is a line below.
/// </summary>
public sealed class KnockRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>The child.</summary>
    public Guid PersonId { get; set; }
    /// <summary>The lesson.</summary>
    public Guid LessonId { get; set; }
    /// <summary>The day, which is day 0.</summary>
    public DateOnly On { get; set; }
    /// <summary>What they were doing, as the core numbers it.</summary>
    public int Activity { get; set; }
    /// <summary>Whether it was a near miss: nobody was hurt.</summary>
    public bool NearMiss { get; set; }
    /// <summary>When the laptop knew of it.</summary>
    public DateTimeOffset MadeAt { get; set; }
}

/// <summary>One line of an accident record. Lines are added, never changed and never deleted; the database refuses both.</summary>
public sealed class KnockLineRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>The knock.</summary>
    public Guid KnockId { get; set; }
    /// <summary>What the line says.</summary>
    public KnockLine Kind { get; set; }
    /// <summary>The day it speaks of; null where it speaks of none.</summary>
    public DateOnly? On { get; set; }
    /// <summary>The words.</summary>
    public Sealed<string>? Words { get; set; }
    /// <summary>Who wrote it.</summary>
    public Guid ById { get; set; }
    /// <summary>Where.</summary>
    public Guid DeviceId { get; set; }
    /// <summary>When.</summary>
    public DateTimeOffset MadeAt { get; set; }
}

/// <summary>A near miss: nobody was hurt, and no child is named. It is added and never changed, like an accident record.</summary>
public sealed class NearMissRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>The day.</summary>
    public DateOnly On { get; set; }
    /// <summary>About when; null where nobody looked at the clock.</summary>
    public TimeOnly? At { get; set; }
    /// <summary>What they were doing, as the core numbers it.</summary>
    public int Activity { get; set; }
    /// <summary>What happened.</summary>
    public Sealed<string> Words { get; set; }
    /// <summary>Who wrote it.</summary>
    public Guid ById { get; set; }
    /// <summary>When it was written.</summary>
    public DateTimeOffset MadeAt { get; set; }
}

/// <summary>What a line of an accident record says. Stored.</summary>
public enum KnockLine
{
    /// <summary>What was seen, and where on the mat.</summary>
    Seen = 1,
    /// <summary>What was done: first aid, who was rung.</summary>
    Done = 2,
    /// <summary>Who led, who saw it.</summary>
    Witness = 3,
    /// <summary>Anything added later.</summary>
    Added = 4,
    /// <summary>The slip was handed over: to whom.</summary>
    HandedOver = 10,
    /// <summary>The family was told by phone: whom.</summary>
    ToldByPhone = 11,
    /// <summary>The first day without any symptom.</summary>
    FreeFrom = 20,
    /// <summary>Symptoms were there again on this day.</summary>
    SymptomsAgain = 21,
    /// <summary>Advice in writing was shown, dated this day: whose.</summary>
    Advice = 22,
    /// <summary>It was entered for the wrong child: whose word that is, and why. The record stays; the knock counts no more.</summary>
    WrongChild = 30,
}
