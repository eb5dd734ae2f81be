using Keikocho.Store.Kernel;

namespace Keikocho.Store.Club;

/// <summary>The club itself, its zone, its paper and its units.</summary>
public sealed class ClubRow
{
    /// <summary>Its number in this database.</summary>
    public int Club { get; set; }
    /// <summary>Its identity wherever it lives.</summary>
    public Guid Id { get; set; }
    /// <summary>As it stands at the top of every paper.</summary>
    public string Name { get; set; } = "";
    /// <summary>Name of its time zone in the public time-zone database, such as Europe/London.</summary>
    public string Zone { get; set; } = "";
    /// <summary>Usual paper: 0 A4, 1 US Letter.</summary>
    public PaperChoice Paper { get; set; }
    /// <summary>Units that people type and read; the database always holds metric.</summary>
    public UnitChoice Units { get; set; }
    /// <summary>True for the invented club that shows how the product works.</summary>
    public bool IsDemo { get; set; }
    /// <summary>Rises when people, families, enrolments, adults or awards change.</summary>
    public long PeopleRevision { get; set; }
    /// <summary>Rises when terms, lessons, closures, programmes, halls or settings change.</summary>
    public long CalendarRevision { get; set; }
    /// <summary>Rises when a mark of an earlier day changes; tonight's taps leave it alone.</summary>
    public long PastRevision { get; set; }
    /// <summary>Salt of the digests in the trail, made once.</summary>
    public byte[] Salt { get; set; } = [];
    /// <summary>When it was made.</summary>
    public DateTimeOffset MadeAt { get; set; }
    /// <summary>Whom to ring about a child's welfare, a line each, with the numbers; it stands in the red folder.</summary>
    public Sealed<string>? Welfare { get; set; }
}

/// <summary>Paper sizes.</summary>
public enum PaperChoice
{
    /// <summary>ISO A4.</summary>
    A4 = 0,
    /// <summary>US Letter.</summary>
    Letter = 1,
}

/// <summary>Units for lengths and sizes.</summary>
public enum UnitChoice
{
    /// <summary>Metres and kilograms.</summary>
    Metric = 0,
    /// <summary>Feet and pounds.</summary>
    Imperial = 1,
}

/// <summary>A hall and the mat that is laid in it.</summary>
public sealed class HallRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>As the club calls it.</summary>
    public string Name { get; set; } = "";
    /// <summary>Length of the mat in centimetres; null until someone says.</summary>
    public int? MatLengthCm { get; set; }
    /// <summary>Width of the mat in centimetres; the line between the ends runs across it.</summary>
    public int? MatWidthCm { get; set; }
    /// <summary>Clear strip between the ends in centimetres.</summary>
    public int? StripCm { get; set; }
    /// <summary>Its address, as it is told to an ambulance.</summary>
    public string? Address { get; set; }
    /// <summary>Where the ambulance comes in, and who meets it.</summary>
    public string? Entrance { get; set; }
    /// <summary>The nearest hospital with an emergency department.</summary>
    public string? Hospital { get; set; }
}

/// <summary>A browser, a tablet or one reading of a file: whatever makes marks.</summary>
public sealed class DeviceRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>What it is.</summary>
    public DeviceKind Kind { get; set; }
    /// <summary>The adult who acts on it, chosen on it.</summary>
    public Guid? ActingAdultId { get; set; }
    /// <summary>When it was first seen.</summary>
    public DateTimeOffset FirstSeenAt { get; set; }
}

/// <summary>What makes marks. Stored.</summary>
public enum DeviceKind
{
    /// <summary>A browser on the laptop.</summary>
    Laptop = 0,
    /// <summary>A tablet that has joined.</summary>
    Tablet = 1,
    /// <summary>One reading of a file.</summary>
    Reading = 2,
    /// <summary>The command line.</summary>
    CommandLine = 3,
}

/// <summary>One setting of one sum from a day on, with who set it and why. The newest not after the day holds.</summary>
public sealed class SettingRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>Key of the setting, as its sum's record lists it.</summary>
    public string Key { get; set; } = "";
    /// <summary>The value, in the invariant culture.</summary>
    public string Value { get; set; } = "";
    /// <summary>First day on which it holds.</summary>
    public DateOnly From { get; set; }
    /// <summary>Who set it.</summary>
    public Guid? ById { get; set; }
    /// <summary>Why, in the setter's words.</summary>
    public Sealed<string>? Why { get; set; }
    /// <summary>When it was set.</summary>
    public DateTimeOffset MadeAt { get; set; }
}

/// <summary>The club's own word for a rank, an end, a term or the promotion test.</summary>
public sealed class ClubWordRow : IClubRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <summary>Key of the text beside its feature.</summary>
    public string Key { get; set; } = "";
    /// <summary>What this club says.</summary>
    public string Word { get; set; } = "";
}
