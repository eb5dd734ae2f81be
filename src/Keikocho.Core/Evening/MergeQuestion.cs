using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;

namespace Keikocho.Core.Evening;

/// <summary>Somebody whom the marks speak of, or who made them.</summary>
/// <param name="Person">Who.</param>
/// <param name="Name">As called.</param>
/// <param name="Confirms">May sign off: an adult with that right on that day.</param>
public sealed record MergePerson(PersonId Person, string Name, bool Confirms = false);

/// <summary>A lesson that the tablets joined.</summary>
/// <param name="Lesson">Its id; it names the day of a mark, whatever a clock says.</param>
/// <param name="On">Its day.</param>
/// <param name="Times">Its hours.</param>
public sealed record MergeLesson(LessonId Lesson, DateOnly On, LessonTimes Times);

/// <summary>A mark as a tablet made it.</summary>
/// <param name="Id">Its own id; the same mark sent twice is one mark.</param>
/// <param name="Device">Which tablet.</param>
/// <param name="Sequence">The tablet's own count: the only order that is used, and only within one tablet.</param>
/// <param name="Lesson">The lesson that the tablet had joined.</param>
/// <param name="Person">The child.</param>
/// <param name="By">Who acted.</param>
/// <param name="Kind">What it says.</param>
/// <param name="MadeAt">By the tablet's clock; shown, never used.</param>
/// <param name="ReceivedAt">By the laptop's clock; shown, never used.</param>
/// <param name="At">Local time of an arrival or a leaving.</param>
/// <param name="Item">The item of a sighting.</param>
/// <param name="Word">What was seen of it.</param>
/// <param name="Fall">What was seen of a fall.</param>
/// <param name="Replaces">The mark that it takes back, corrects or confirms.</param>
/// <param name="CorrectedTo">For a correction of presence, what holds instead.</param>
/// <param name="Confirms">Who made it might sign off on that day; left out, as the people say.</param>
/// <param name="LateWithoutTime">A "late" from a file that came without a time.</param>
public sealed record TabletMark(
    MarkId Id,
    DeviceId Device,
    int Sequence,
    LessonId Lesson,
    PersonId Person,
    PersonId By,
    MarkKind Kind,
    DateTimeOffset MadeAt,
    DateTimeOffset? ReceivedAt = null,
    TimeOnly? At = null,
    ItemId? Item = null,
    SeenWord? Word = null,
    FallShown? Fall = null,
    MarkId? Replaces = null,
    MarkKind? CorrectedTo = null,
    bool? Confirms = null,
    bool LateWithoutTime = false);

/// <summary>A device by the name that the answer calls it.</summary>
/// <param name="Device">Which.</param>
/// <param name="Name">"tablet 2", "laptop".</param>
public sealed record MergeDevice(DeviceId Device, string Name);

/// <summary>The marks of several tablets.</summary>
/// <param name="Lessons">The lessons that they joined.</param>
/// <param name="People">Children and adults, in register order.</param>
/// <param name="Marks">In any order, as they arrived.</param>
/// <param name="Rules">How presence is folded; may be left out.</param>
/// <param name="Devices">Names of devices; one without is called by a number.</param>
public sealed record MergeSnapshot(
    IReadOnlyList<MergeLesson> Lessons, IReadOnlyList<MergePerson> People, IReadOnlyList<TabletMark> Marks, AttendanceRules? Rules = null,
    IReadOnlyList<MergeDevice>? Devices = null);
