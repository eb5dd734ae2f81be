using Keikocho.Core.Kernel;
using Keikocho.Store.Kernel;

namespace Keikocho.Store.Calendar;

/// <summary>A programme of the club.</summary>
public sealed class ProgrammeRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>Juniors, teens ...</summary>
    public string Name { get; set; } = "";
    /// <summary>Order on the pages, from 1.</summary>
    public int Position { get; set; }
    /// <summary>Its ladder.</summary>
    public Guid? LadderId { get; set; }
    /// <summary>Lessons of the first course; null where the club has not said.</summary>
    public int? FirstCourseLessons { get; set; }
    /// <summary>Weeks of the first course; null where the club has not said.</summary>
    public int? FirstCourseWeeks { get; set; }
    /// <summary>Lessons that a newcomer may try before the form is needed.</summary>
    public int? TrialLessons { get; set; }
}

/// <summary>A weekly hour of a programme; lessons are laid from it.</summary>
public sealed class WeeklyHourRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>The programme.</summary>
    public Guid ProgrammeId { get; set; }
    /// <summary>The hall.</summary>
    public Guid HallId { get; set; }
    /// <summary>Day of the week.</summary>
    public DayOfWeek Weekday { get; set; }
    /// <summary>The bow.</summary>
    public TimeOnly Start { get; set; }
    /// <summary>The bow out.</summary>
    public TimeOnly End { get; set; }
    /// <summary>Start of the falls.</summary>
    public TimeOnly UkemiFrom { get; set; }
    /// <summary>End of the falls.</summary>
    public TimeOnly UkemiTo { get; set; }
    /// <summary>On the mat before this time counts.</summary>
    public TimeOnly HalfTime { get; set; }
    /// <summary>First day on which it is the club's hour.</summary>
    public DateOnly From { get; set; }
    /// <summary>Last day, inclusive; null while it goes on.</summary>
    public DateOnly? To { get; set; }
}

/// <summary>A term.</summary>
public sealed class TermRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>Autumn 2026 ...</summary>
    public string Name { get; set; } = "";
    /// <summary>First day.</summary>
    public DateOnly From { get; set; }
    /// <summary>Last day, inclusive.</summary>
    public DateOnly To { get; set; }
}

/// <summary>Days on which the club does not meet. Its lessons are out of every count; their marks stay.</summary>
public sealed class ClosureRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>Spring holiday, hall lost ...</summary>
    public string Name { get; set; } = "";
    /// <summary>First day.</summary>
    public DateOnly From { get; set; }
    /// <summary>Last day, inclusive.</summary>
    public DateOnly To { get; set; }
    /// <summary>Only this programme; null for all.</summary>
    public Guid? ProgrammeId { get; set; }
    /// <summary>Only this hall; null for all.</summary>
    public Guid? HallId { get; set; }
    /// <summary>When it was entered.</summary>
    public DateTimeOffset MadeAt { get; set; }
}

/// <summary>The lessons of one date and hall: roll, adults and red folder belong to it.</summary>
public sealed class EveningRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>The date.</summary>
    public DateOnly Date { get; set; }
    /// <summary>The hall.</summary>
    public Guid HallId { get; set; }
    /// <summary>When the evening was closed by someone; null otherwise.</summary>
    public DateTimeOffset? ClosedAt { get; set; }
    /// <summary>By whom.</summary>
    public Guid? ClosedById { get; set; }
}

/// <summary>One dated lesson of one programme.</summary>
public sealed class LessonRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>The programme.</summary>
    public Guid ProgrammeId { get; set; }
    /// <summary>The evening.</summary>
    public Guid EveningId { get; set; }
    /// <summary>The date.</summary>
    public DateOnly Date { get; set; }
    /// <summary>The bow.</summary>
    public TimeOnly Start { get; set; }
    /// <summary>The bow out.</summary>
    public TimeOnly End { get; set; }
    /// <summary>Start of the falls.</summary>
    public TimeOnly UkemiFrom { get; set; }
    /// <summary>End of the falls.</summary>
    public TimeOnly UkemiTo { get; set; }
    /// <summary>On the mat before this time counts.</summary>
    public TimeOnly HalfTime { get; set; }
    /// <summary>The closure that takes it out; null when it is held.</summary>
    public Guid? ClosureId { get; set; }
    /// <summary>It was held but its register was forgotten: held, attended by nobody, left out of the rates.</summary>
    public bool RegisterMissing { get; set; }
}

/// <summary>A promotion test of one programme.</summary>
public sealed class PromotionTestRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>The programme.</summary>
    public Guid ProgrammeId { get; set; }
    /// <summary>The date.</summary>
    public DateOnly Date { get; set; }
    /// <summary>When its list was closed; null while open.</summary>
    public DateTimeOffset? ListClosedAt { get; set; }
    /// <summary>When its results were locked; null before.</summary>
    public DateTimeOffset? ResultsLockedAt { get; set; }
}

/// <summary>A person is on a programme's register from a day to a day.</summary>
public sealed class EnrolmentRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>The person.</summary>
    public Guid PersonId { get; set; }
    /// <summary>The programme.</summary>
    public Guid ProgrammeId { get; set; }
    /// <summary>First lesson.</summary>
    public DateOnly From { get; set; }
    /// <summary>Last day, inclusive; null while it goes on.</summary>
    public DateOnly? To { get; set; }
    /// <summary>Place in the register: fixed for a term, joiners at the end.</summary>
    public int Position { get; set; }
    /// <summary>
    /// Lessons count from this day, inclusive: the first lesson, or the day after the last promotion. Kept with the awards, so that
    /// one count answers "how many since".
    /// </summary>
    public DateOnly CountsFrom { get; set; }

    /// <summary>Whether the child is on the register on a day; first and last day included.</summary>
    public bool IsOn(DateOnly day) => From <= day && (To is null || To >= day);
}

/// <summary>The place of a child in a programme's register for one term, fixed when the term starts.</summary>
public sealed class RegisterPlaceRow : IClubRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <summary>The programme.</summary>
    public Guid ProgrammeId { get; set; }
    /// <summary>The term.</summary>
    public Guid TermId { get; set; }
    /// <summary>The child.</summary>
    public Guid PersonId { get; set; }
    /// <summary>From 1.</summary>
    public int Position { get; set; }
}

/// <summary>The step from the beginners' end to the main group, or a change of end for one evening.</summary>
public sealed class CrossingRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>The child.</summary>
    public Guid PersonId { get; set; }
    /// <summary>The programme.</summary>
    public Guid ProgrammeId { get; set; }
    /// <summary>The end from now on.</summary>
    public MatEnd End { get; set; }
    /// <summary>From this day.</summary>
    public DateOnly On { get; set; }
    /// <summary>Only this lesson; null for good.</summary>
    public Guid? LessonId { get; set; }
    /// <summary>Who said so; null for an import.</summary>
    public Guid? ById { get; set; }
    /// <summary>When it was entered.</summary>
    public DateTimeOffset MadeAt { get; set; }
}

/// <summary>The unit that a programme works on in a term.</summary>
public sealed class TermUnitRow : IClubRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <summary>The term.</summary>
    public Guid TermId { get; set; }
    /// <summary>The programme.</summary>
    public Guid ProgrammeId { get; set; }
    /// <summary>Key of the unit in the edition that holds.</summary>
    public string UnitKey { get; set; } = "";
}
