using Keikocho.Core.Kernel;

namespace Keikocho.Core.Intake;

/// <summary>A contact of a child, as the file gives it.</summary>
/// <param name="Name">Name; empty when the file gives none.</param>
/// <param name="Relation">What the contact is to the child; empty when unknown.</param>
/// <param name="Phones">Telephone numbers.</param>
/// <param name="Emails">E-mail addresses.</param>
public sealed record RosterContact(string Name, string Relation, IReadOnlyList<string> Phones, IReadOnlyList<string> Emails);

/// <summary>What is known of one child: from a line of the file, or already held.</summary>
public sealed record RosterChild
{
    /// <summary>Given name; empty when missing.</summary>
    public string GivenName { get; init; } = "";
    /// <summary>Family name; empty when missing.</summary>
    public string FamilyName { get; init; } = "";
    /// <summary>The name the child is called by; empty when it is the given name.</summary>
    public string CalledName { get; init; } = "";
    /// <summary>Birth date; null when not known.</summary>
    public DateOnly? BirthDate { get; init; }
    /// <summary>F, M or X, where the file says it in words that are known; empty otherwise.</summary>
    public string Sex { get; init; } = "";
    /// <summary>Rank: the ladder's own words where they were recognised, else as written; empty when not given.</summary>
    public string Rank { get; init; } = "";
    /// <summary>Day of the first class.</summary>
    public DateOnly? FirstClass { get; init; }
    /// <summary>Day of the last promotion.</summary>
    public DateOnly? LastPromotion { get; init; }
    /// <summary>The contacts, in the file's order.</summary>
    public IReadOnlyList<RosterContact> Contacts { get; init; } = [];
    /// <summary>May photographs be shown; null when the file does not say. Null is no consent.</summary>
    public bool? PhotoConsent { get; init; }
    /// <summary>Registration number; empty when not given.</summary>
    public string RegistrationNumber { get; init; } = "";
    /// <summary>Last day of the registration.</summary>
    public DateOnly? RegistrationExpiry { get; init; }
    /// <summary>School, group or programme in the file's own words.</summary>
    public string Group { get; init; } = "";
    /// <summary>Notes.</summary>
    public string Notes { get; init; } = "";

    /// <summary>Given and family name.</summary>
    public string FullName => $"{GivenName} {FamilyName}".Trim();

    /// <summary>The folded name, its words in order; one key for every spelling and order.</summary>
    public string NameKey => NameFold.Key(FullName);
}

/// <summary>A person the club already has.</summary>
/// <param name="Id">The person.</param>
/// <param name="Child">What is held.</param>
public sealed record KnownPerson(PersonId Id, RosterChild Child);

/// <summary>Persons who were erased: only salted digests of name and birth date are left of them.</summary>
/// <param name="Digest">The club's salted digest of a text; the same text always gives the same digest.</param>
/// <param name="Digests">The digests of those erased.</param>
public sealed record ErasedPersons(Func<string, string> Digest, IReadOnlySet<string> Digests)
{
    /// <summary>Nobody was erased.</summary>
    public static ErasedPersons None { get; } = new(text => text, new HashSet<string>());

    /// <summary>The text whose digest is kept when a person is erased: folded name, birth date; without a birth date the name alone.</summary>
    public static string Identity(string fullName, DateOnly? birthDate) => $"{NameFold.Key(fullName)}|{(birthDate is { } day ? day.Iso() : "")}";

    /// <summary>
    /// True when this name and birth date, or this name alone, was erased. To be found again in a file without birth dates, an erasure
    /// keeps both digests: with the birth date and without.
    /// </summary>
    public bool Contains(string fullName, DateOnly? birthDate) => Digests.Count > 0 && Digests.Contains(Digest(Identity(fullName, birthDate)));
}
