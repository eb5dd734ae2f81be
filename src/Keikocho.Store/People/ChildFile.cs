using Keikocho.Core.Evening;
using Keikocho.Store.Safety;

namespace Keikocho.Store.People;

/// <summary>A contact with the personal values opened.</summary>
/// <param name="Id">The contact.</param>
/// <param name="Name">Name; null where not known.</param>
/// <param name="Relation">Mother, father, carer ...; null where not known.</param>
/// <param name="Phone">Telephone number as it was given; null where not known.</param>
/// <param name="Barred">True where this contact may not collect the child.</param>
public sealed record OpenContact(Guid Id, string? Name, string? Relation, string? Phone, bool Barred);

/// <summary>A lesson of one child, as a stamp shows it.</summary>
/// <param name="LessonId">The lesson.</param>
/// <param name="Word">What is said of it.</param>
/// <param name="Late">Came late.</param>
/// <param name="Counts">Counts as a lesson attended.</param>
/// <param name="Arrived">When the child came; null where nobody said.</param>
/// <param name="LeftAt">When the child left; null where nobody said.</param>
public sealed record LessonState(Guid LessonId, AttendanceWord Word, bool Late, bool Counts, TimeOnly? Arrived, TimeOnly? LeftAt);

/// <summary>What only one child's own page shows, beside what was seen of the child; no list does.</summary>
/// <param name="Contacts">Whom to ring, in the order of ringing.</param>
/// <param name="IsRegistered">Whether a registration with the national body was ever entered.</param>
/// <param name="RegisteredUntil">Last day of cover by the newest registration; null where that was not said.</param>
/// <param name="Photo">Whether photographs are allowed, by the newest word; null where nobody was asked.</param>
/// <param name="PhotoSaidOn">The day of that word.</param>
/// <param name="Siblings">The other members of the child's families, by id.</param>
/// <param name="Wishes">Wishes that go on, apart before together, oldest first.</param>
/// <param name="Knocks">Knocks with their records, newest first.</param>
/// <param name="Lessons">The lessons of one programme that the child has a state at.</param>
public sealed record ChildFile(
    IReadOnlyList<OpenContact> Contacts,
    bool IsRegistered,
    DateOnly? RegisteredUntil,
    bool? Photo,
    DateOnly? PhotoSaidOn,
    IReadOnlyList<Guid> Siblings,
    IReadOnlyList<PairWish> Wishes,
    IReadOnlyList<HeldKnock> Knocks,
    IReadOnlyList<LessonState> Lessons);
