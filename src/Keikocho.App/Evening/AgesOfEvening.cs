using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Store.Book;
using Keikocho.Store.People;

namespace Keikocho.App.Evening;

/// <summary>Children and adults of an evening as the sum of the adults counts them.</summary>
public static class AgesOfEvening
{
    /// <summary>A child at an end.</summary>
    public static ChildrenAtEnd Child(ClubBook book, Guid person, MatEnd end, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(book);
        return new ChildrenAtEnd(end, On(book.Person(person)?.Born, day));
    }

    /// <summary>Somebody with a duty who is there; without a birth date a leader, and whom nobody has seen to be an adult, count as under 18.</summary>
    public static AdultPresent Adult(ClubBook book, DutyRow duty, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(duty);
        var person = book.Person(duty.PersonId)!;
        var isUnder18 = On(person.Born, day) is { } age ? age < 18 : duty.Kind == DutyKind.JuniorLeader || !person.SeenAdult;
        return new AdultPresent(person.CallName, null, isUnder18, duty.VettedUntil, duty.FirstAidUntil);
    }

    private static int? On(DateOnly? born, DateOnly day) => born is { } date && date <= day ? Age.On(date, day, LeapBirthday.FirstMarch) : null;
}
