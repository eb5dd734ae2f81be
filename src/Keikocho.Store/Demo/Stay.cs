using Keikocho.Store.Calendar;
using Keikocho.Store.People;

namespace Keikocho.Store.Demo;

/// <summary>One stay of one person on one programme's register, with what the demo knows about it.</summary>
internal sealed class Stay
{
    /// <summary>Its number; draws about this child use it.</summary>
    public required int Number { get; init; }
    /// <summary>Who.</summary>
    public required PersonRow Person { get; init; }
    /// <summary>Order by the name that is called.</summary>
    public required string Key { get; init; }
    /// <summary>Index of the programme.</summary>
    public required int Programme { get; init; }
    /// <summary>First lesson.</summary>
    public required DateOnly From { get; init; }
    /// <summary>Last day; null while it goes on.</summary>
    public required DateOnly? To { get; init; }
    /// <summary>How often the child comes, in thousandths.</summary>
    public required int ComesPerMille { get; init; }
    /// <summary>First day of a long absence.</summary>
    public DateOnly? AwayFrom { get; init; }
    /// <summary>The lesson of the return; from then on the child misses none.</summary>
    public DateOnly? BackOn { get; init; }
    /// <summary>The lesson of a knock: the child was there, and went home early.</summary>
    public DateOnly? KnockOn { get; set; }
    /// <summary>The day from which the child may come again after a knock; the adults know why it does not come before.</summary>
    public DateOnly? MayComeOn { get; set; }
    /// <summary>Steps of the ladder above the first that the child brought along.</summary>
    public int StartRank { get; init; }
    /// <summary>The rank was given by another club.</summary>
    public bool Transferred { get; init; }
    /// <summary>Leaving is marked at the door when the lesson is over.</summary>
    public bool SignsOut { get; init; }
    /// <summary>The row.</summary>
    public required EnrolmentRow Enrolment { get; init; }

    /// <summary>On the register on this day.</summary>
    public bool IsOn(DateOnly day) => From <= day && (To is null || To >= day);
}
