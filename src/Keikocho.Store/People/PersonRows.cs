using Keikocho.Store.Kernel;

namespace Keikocho.Store.People;

/// <summary>
/// One person; a child, an adult, or a leader who also trains. The personal values can be erased; the row and its id stay, so that
/// marks and the trail keep their meaning.
/// </summary>
public sealed class PersonRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>First name; null once erased.</summary>
    public Sealed<string>? Given { get; set; }
    /// <summary>Family name, or only its initial for a child who has just walked in.</summary>
    public Sealed<string>? Family { get; set; }
    /// <summary>The name that is called on the mat, where it is not the first name.</summary>
    public Sealed<string>? Called { get; set; }
    /// <summary>Birth date; null while nobody has said, and then the youngest band counts.</summary>
    public Sealed<DateOnly>? Born { get; set; }
    /// <summary>F, M or X where a national form asks; null otherwise.</summary>
    public Sealed<string>? Sex { get; set; }
    /// <summary>The adult who says that this person is an adult, where no birth date is held.</summary>
    public Guid? AdultSeenById { get; set; }
    /// <summary>When that was said.</summary>
    public DateOnly? AdultSeenOn { get; set; }
    /// <summary>When it was added.</summary>
    public DateTimeOffset MadeAt { get; set; }
    /// <summary>When the personal values were erased.</summary>
    public DateTimeOffset? ErasedAt { get; set; }
}

/// <summary>A family: siblings are its members.</summary>
public sealed class FamilyRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>Whether the family asked that its children may work together when throwing.</summary>
    public bool TogetherAsked { get; set; }
}

/// <summary>Membership of a family.</summary>
public sealed class FamilyMemberRow : IClubRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <summary>The family.</summary>
    public Guid FamilyId { get; set; }
    /// <summary>The person.</summary>
    public Guid PersonId { get; set; }
}

/// <summary>Someone to ring about a child. Separated parents are two contacts.</summary>
public sealed class ContactRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>The child.</summary>
    public Guid PersonId { get; set; }
    /// <summary>The contact, where that is a person of the club too.</summary>
    public Guid? ContactPersonId { get; set; }
    /// <summary>Order of ringing, from 1.</summary>
    public int Position { get; set; }
    /// <summary>Name.</summary>
    public Sealed<string>? Name { get; set; }
    /// <summary>Mother, father, carer ...</summary>
    public Sealed<string>? Relation { get; set; }
    /// <summary>Telephone number as it was given.</summary>
    public Sealed<string>? Phone { get; set; }
    /// <summary>E-mail address.</summary>
    public Sealed<string>? Email { get; set; }
    /// <summary>True where this contact may not collect the child.</summary>
    public bool BarredFromCollecting { get; set; }
}

/// <summary>A registration with the national body.</summary>
public sealed class RegistrationRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>The person.</summary>
    public Guid PersonId { get; set; }
    /// <summary>Number as the body writes it.</summary>
    public Sealed<string>? Number { get; set; }
    /// <summary>Last day of cover.</summary>
    public DateOnly? Expires { get; set; }
    /// <summary>When it was entered.</summary>
    public DateTimeOffset MadeAt { get; set; }
}

/// <summary>A consent for one use, given or refused on a day; the newest holds.</summary>
public sealed class ConsentRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>The child.</summary>
    public Guid PersonId { get; set; }
    /// <summary>What for.</summary>
    public ConsentUse Use { get; set; }
    /// <summary>Given or refused.</summary>
    public bool Given { get; set; }
    /// <summary>From this day.</summary>
    public DateOnly On { get; set; }
    /// <summary>When it was entered.</summary>
    public DateTimeOffset MadeAt { get; set; }
}

/// <summary>What a consent is for. Stored.</summary>
public enum ConsentUse
{
    /// <summary>Photographs.</summary>
    Photo = 1,
}

/// <summary>What an adult or leader does in the club, with rights by name and the dates that decide whether they count.</summary>
public sealed class DutyRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>The person.</summary>
    public Guid PersonId { get; set; }
    /// <summary>What they do.</summary>
    public DutyKind Kind { get; set; }
    /// <summary>From this day.</summary>
    public DateOnly From { get; set; }
    /// <summary>To this day, inclusive; null while it goes on.</summary>
    public DateOnly? To { get; set; }
    /// <summary>Last day of vetting; null where none is held, and then the person is not counted.</summary>
    public DateOnly? VettedUntil { get; set; }
    /// <summary>Last day of the first-aid certificate; null where none is held.</summary>
    public DateOnly? FirstAidUntil { get; set; }
    /// <summary>May confirm a fall; 18 or over always.</summary>
    public bool MayConfirmFalls { get; set; }
}

/// <summary>What someone does in the club. Stored.</summary>
public enum DutyKind
{
    /// <summary>Runs the juniors.</summary>
    HeadInstructor = 1,
    /// <summary>Teaches.</summary>
    Instructor = 2,
    /// <summary>Runs an end.</summary>
    Assistant = 3,
    /// <summary>A teenager who helps and trains; never counted as an adult.</summary>
    JuniorLeader = 4,
    /// <summary>Keeps the club's registrations.</summary>
    Registrar = 5,
    /// <summary>Receives concerns.</summary>
    WelfareOfficer = 6,
    /// <summary>Helps at the door or with first aid, off the mat.</summary>
    Volunteer = 7,
}

/// <summary>Two children who do not work together, without the reason.</summary>
public sealed class KeepApartRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>One.</summary>
    public Guid FirstId { get; set; }
    /// <summary>The other.</summary>
    public Guid SecondId { get; set; }
    /// <summary>From this day.</summary>
    public DateOnly From { get; set; }
    /// <summary>To this day, inclusive; null while it goes on.</summary>
    public DateOnly? To { get; set; }
}

/// <summary>A private note, for one evening or until a day; erased after it.</summary>
public sealed class NoteRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>The child.</summary>
    public Guid PersonId { get; set; }
    /// <summary>The words; null once its time is over.</summary>
    public Sealed<string>? Text { get; set; }
    /// <summary>Last day on which it stands.</summary>
    public DateOnly Until { get; set; }
    /// <summary>Who wrote it.</summary>
    public Guid ById { get; set; }
    /// <summary>When.</summary>
    public DateTimeOffset MadeAt { get; set; }
}

/// <summary>The agreed way of showing one item, without a diagnosis.</summary>
public sealed class AdaptationRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>The child.</summary>
    public Guid PersonId { get; set; }
    /// <summary>The item.</summary>
    public Guid ItemId { get; set; }
    /// <summary>How it is shown, in the agreed words.</summary>
    public Sealed<string>? Wording { get; set; }
    /// <summary>When it was agreed.</summary>
    public DateOnly AgreedOn { get; set; }
    /// <summary>Who agreed it for the club.</summary>
    public Guid ById { get; set; }
}

/// <summary>A child's size on a day. The laptop only, and only where the club has a passphrase.</summary>
public sealed class SizeRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>The child.</summary>
    public Guid PersonId { get; set; }
    /// <summary>The day.</summary>
    public DateOnly On { get; set; }
    /// <summary>Grams.</summary>
    public Sealed<int> Grams { get; set; }
    /// <summary>Who entered it.</summary>
    public Guid ById { get; set; }
}

/// <summary>
/// What an adult must know of a child in an emergency, in a few words under one heading. Stored only under the club's lock; a note that is
/// taken out is deleted, so that nothing of its words stays.
/// </summary>
public sealed class CareNoteRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>The child.</summary>
    public Guid PersonId { get; set; }
    /// <summary>The heading, as the core numbers it.</summary>
    public int Heading { get; set; }
    /// <summary>The words.</summary>
    [ClosedByLock]
    public Sealed<string> Text { get; set; }
    /// <summary>Who wrote it.</summary>
    public Guid ById { get; set; }
    /// <summary>When.</summary>
    public DateTimeOffset MadeAt { get; set; }
}

/// <summary>The day on which the family was last asked what to know of a child in an emergency, whatever the answer was.</summary>
public sealed class CareAskedRow : IClubRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <summary>The child.</summary>
    public Guid PersonId { get; set; }
    /// <summary>The day.</summary>
    public DateOnly On { get; set; }
    /// <summary>Who asked.</summary>
    public Guid ById { get; set; }
}

/// <summary>A salted digest of an erased child's name and birth date, so that reading an old file never brings the child back.</summary>
public sealed class ErasedRow : IClubRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <summary>The digest.</summary>
    public byte[] Digest { get; set; } = [];
    /// <summary>When.</summary>
    public DateTimeOffset ErasedAt { get; set; }
}
