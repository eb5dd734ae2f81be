namespace Keikocho.Paper.Folder;

/// <summary>Where care notes are.</summary>
public enum FolderCare
{
    /// <summary>They stand in this folder in words, where there are any.</summary>
    InWords = 0,
    /// <summary>They are left out: the first line of every page says so.</summary>
    LeftOut = 1,
}

/// <summary>A hall, for the ambulance. What nobody has entered has room for a pen.</summary>
/// <param name="Name">As the club calls it.</param>
/// <param name="Address">Its address.</param>
/// <param name="Entrance">Where the ambulance comes in.</param>
/// <param name="Hospital">The nearest hospital.</param>
public sealed record FolderHall(string Name, string? Address, string? Entrance, string? Hospital);

/// <summary>Whom to ring for a child.</summary>
/// <param name="Name">Who.</param>
/// <param name="Relation">What they are to the child.</param>
/// <param name="Phone">The number.</param>
/// <param name="CheckFirst">Check with an instructor before that person takes the child. No reason stands on paper.</param>
public sealed record FolderContact(string Name, string? Relation, string? Phone, bool CheckFirst);

/// <summary>A care note in words.</summary>
/// <param name="Heading">Its heading.</param>
/// <param name="Text">Its words.</param>
public sealed record FolderNote(string Heading, string Text);

/// <summary>A child.</summary>
/// <param name="Number">Its number in this folder, the same in the register and on its own block.</param>
/// <param name="First">The name that is called.</param>
/// <param name="Second">What tells two of one called name apart; null for none.</param>
/// <param name="FullName">As registered.</param>
/// <param name="Age">Age in words; null where no birth date is held.</param>
/// <param name="Contacts">In the order in which they are rung.</param>
/// <param name="Notes">Care notes; empty for none, and where they are left out.</param>
/// <param name="Care">How it stands with care notes, in a sentence; null where the notes say it all.</param>
/// <param name="HasNotes">There are care notes, in words here or not.</param>
/// <param name="NotAsked">Nobody has asked the family: that there is no note says nothing.</param>
public sealed record FolderChild(
    int Number, string First, string? Second, string FullName, string? Age, IReadOnlyList<FolderContact> Contacts, IReadOnlyList<FolderNote> Notes, string? Care, bool HasNotes,
    bool NotAsked = false);

/// <summary>The children of one register.</summary>
/// <param name="Name">The programme, and its hour where the folder is for one evening.</param>
/// <param name="Children">Numbers of its children, in register order.</param>
public sealed record FolderRegister(string Name, IReadOnlyList<int> Children);

/// <summary>All that the red folder shows.</summary>
/// <param name="Club">Name of the club.</param>
/// <param name="For">The evening or the group.</param>
/// <param name="PrintedOn">Today.</param>
/// <param name="ShredBy">The day by which it is shredded.</param>
/// <param name="Care">Whether care notes are in it.</param>
/// <param name="EmergencyNumber">The number to ring.</param>
/// <param name="Halls">Where the ambulance goes.</param>
/// <param name="Welfare">Whom to ring about a child's welfare, a line each.</param>
/// <param name="Registers">The registers, each with room for newcomers and adults.</param>
/// <param name="Children">Every child once, by number.</param>
public sealed record RedFolderContent(
    string Club, string For, DateOnly PrintedOn, DateOnly ShredBy, FolderCare Care, string EmergencyNumber, IReadOnlyList<FolderHall> Halls, IReadOnlyList<string> Welfare,
    IReadOnlyList<FolderRegister> Registers, IReadOnlyList<FolderChild> Children);
