using Keikocho.App.Club;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Core.Mat;
using Keikocho.Store.Calendar;
using Keikocho.Store.Club;
using Keikocho.Store.Evening;
using Keikocho.Store.Marks;

namespace Keikocho.App.Floor;

/// <summary>The mat of one lesson: numbers, no names.</summary>
/// <param name="Lesson">The lesson.</param>
/// <param name="Hall">The hall; null where the evening has none any more.</param>
/// <param name="Work">What the main group works on.</param>
/// <param name="Expected">Nobody is marked yet: everybody on the register is counted.</param>
/// <param name="Plan">The plan; null while the mat is not measured, or its measures cannot be planned.</param>
/// <param name="WhyNot">Why there is no plan; null where there is one.</param>
public sealed record FloorView(LessonRow Lesson, HallRow? Hall, MatWork Work, bool Expected, MatPlan? Plan, string? WhyNot)
{
    /// <summary>"throwing" or "technique", as an address writes it.</summary>
    public static string Value(MatWork work) => work == MatWork.Technique ? "technique" : "throwing";

    /// <summary>Reads it.</summary>
    public static FloorView Of(OpenClub club, LessonRow lesson, string? work)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(lesson);
        var book = club.Book;
        var activity = work == "technique" ? MatWork.Technique : MatWork.Throwing;
        var hall = book.HallOf(lesson);
        var programme = book.Programme(lesson.ProgrammeId)!;
        var states = AttendanceReader.OfLesson(club.Reading, lesson.Id);
        var register = book.RegisterOf(programme.Id, lesson.Date).Select(e => e.PersonId).Distinct().Where(id => book.Person(id) is { IsErased: false }).ToList();
        bool Here(Guid person) => states.GetValueOrDefault(person)?.Word == AttendanceWord.Present;
        var expected = !register.Any(Here);
        var ends = register.Where(id => expected || Here(id)).Select(id => book.EndOf(id, programme, lesson, lesson.Date)).ToList();
        if (hall is not { MatLengthCm: { } length, MatWidthCm: { } width })
            return new FloorView(lesson, hall, activity, expected, null, "The mat is not measured yet. Its length and width stand on the club’s page.");
        MatObstacle[] obstacles = [.. ObstacleReader.Of(club.Reading, hall.Id).Select(o => new MatObstacle(o.Name, o.FromLengthCm, o.FromWidthCm, o.LengthCm, o.WidthCm))];
        var question = new MatSnapshot(
            length, width, new MatGroup(ends.Count(e => e == MatEnd.Beginners)), new MatGroup(ends.Count(e => e == MatEnd.Main)), activity,
            Obstacles: obstacles, Rules: FloorAndCareRules.Mat(book, hall, lesson.Date));
        try
        {
            return new FloorView(lesson, hall, activity, expected, PlanMat.Plan(question), null);
        }
        catch (ArgumentException fault)
        {
            // Measures may have been stored before these limits; the sentence says what to mend.
            return new FloorView(lesson, hall, activity, expected, null, fault.Message.Split(" (Parameter")[0]);
        }
    }
}
