using Keikocho.App.Club;
using Keikocho.Core.Kernel;
using Keikocho.Paper.Register;
using Keikocho.Store.Book;
using Keikocho.Store.Calendar;
using Keikocho.Store.Marks;
using Keikocho.Store.People;

namespace Keikocho.App.Papers;

/// <summary>Which lesson of the first course, or which trial, a lesson is for each child at the beginners' end.</summary>
internal sealed class OwnClocks
{
    private readonly ClubBook _book;
    private readonly ProgrammeRow _programme;
    private readonly LessonRow _lesson;
    private readonly Dictionary<Guid, int> _attendedBefore;
    private readonly HashSet<Guid> _registered;

    public OwnClocks(OpenClub club, ProgrammeRow programme, LessonRow lesson)
    {
        (_book, _programme, _lesson) = (club.Book, programme, lesson);
        _attendedBefore = AttendanceReader.AttendedSinceStart(club.Db, programme.Id, lesson.Date.AddDays(-1));
        _registered = PeopleReader.WithARegistration(club.Db);
    }

    /// <summary>The note beside the name; null in the main group, or where the club has not said how long its first course is.</summary>
    public LessonNote? NoteOf(Guid child)
    {
        if (_book.EndOf(child, _programme, _lesson, _lesson.Date) != MatEnd.Beginners) return null;
        var number = _attendedBefore.GetValueOrDefault(child) + 1;
        // Only a child without a registration tries; whether the form was signed is nowhere in the file, so beyond the last trial
        // the lesson of the first course is all that is said.
        if (_programme.TrialLessons is { } trials && number <= trials && !_registered.Contains(child)) return LessonNote.TrialLesson(number, trials);
        return _programme.FirstCourseLessons is { } lessons ? LessonNote.FirstCourse(number, lessons) : null;
    }
}
