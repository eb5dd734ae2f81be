namespace Keikocho.Core.Evening;

/// <summary>What a mark says. The numbers are stored and never change their meaning.</summary>
public enum MarkKind
{
    /// <summary>The person is here; its time is the arrival. "Late" is never marked, it follows from the time.</summary>
    Present = 1,

    /// <summary>The person has gone; its time is the leaving.</summary>
    Left = 2,

    /// <summary>The person did not come and nobody told us.</summary>
    Absent = 3,

    /// <summary>The person does not come and told us.</summary>
    Excused = 4,

    /// <summary>With <c>replaces</c>: takes that one mark back (undo). Without: the device says nothing of this person any more.</summary>
    Cleared = 5,

    /// <summary>A fall: direction, side, stage, clean or head touched.</summary>
    Fall = 10,

    /// <summary>An item was seen: good, prompted, not yet.</summary>
    Sighting = 11,

    /// <summary>A word or question was asked: right, wrong.</summary>
    Words = 12,

    /// <summary>A knock: off for the evening.</summary>
    Knock = 13,

    /// <summary>An instructor stands behind a leader's mark.</summary>
    Confirmed = 20,

    /// <summary>A correction with trace: takes the place of the mark that <c>replaces</c> names, on any device.</summary>
    Corrected = 21,
}
