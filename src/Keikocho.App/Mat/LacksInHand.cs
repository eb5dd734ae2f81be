using System.Collections.Concurrent;
using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Globalization;
using Keikocho.App.Club;
using Keikocho.App.PromotionTests;
using Keikocho.Core.Kernel;
using Keikocho.Store.Calendar;
using Keikocho.Store.Hall;
using Keikocho.Store.Marks;
using Keikocho.Store.Starter;

namespace Keikocho.App.Mat;

/// <summary>
/// What instructors' tablets get of each child for the next test. A tablet asks every few seconds how the evening stands and is told in a
/// word whether this has changed; only then it asks for it, and only then it is made anew: once, however many tablets there are.
/// </summary>
public sealed class LacksInHand(TestReckoning tests)
{
    private const int Most = 64;
    private static readonly ImmutableArray<MatPhrase> Phrases = [.. StarterPhrases.All.Select(p => new MatPhrase(p.Key, p.Seen, p.Next))];
    private readonly ConcurrentDictionary<Guid, (string At, MatLessonLacks Lacks)> made = new();
    private int makings;

    /// <summary>How many lessons were made so far.</summary>
    public int Makings => makings;

    /// <summary>
    /// What everything below rests on, in a word: people, calendar and syllabus, marks of evenings that are over, and which evening is the
    /// last that counts. Taps of tonight leave it alone until tonight is over.
    /// </summary>
    public static string At(OpenClub club, IEnumerable<LessonRow> lessons)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(lessons);
        var now = club.Revisions;
        var ends = lessons.Select(l => l.ProgrammeId).Distinct().Select(p => (Programme: p, AsOf: Reckonings.AsOf(club.Book, p, club.Today, club.Clock.LocalTime))).ToList();
        var marks = ends.Any(e => e.AsOf == club.Today) ? PastStates.MarksAt(club.Reading, [.. club.Book.LessonsOn(club.Today).Select(l => l.Id)]) : 0;
        return string.Create(CultureInfo.InvariantCulture, $"{now.People}.{now.Calendar}.{now.Past}.{string.Join('.', ends.Select(e => e.AsOf.DayNumber))}.{marks}");
    }

    /// <summary>The children of the evening that a tablet has joined.</summary>
    public MatLacks Of(OpenClub club, JoinRow join)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(join);
        var lessons = MatLessons.Of(club, join);
        var at = At(club, lessons);
        return new MatLacks(at, Phrases, [.. lessons.Select(l => One(club, l, at))]);
    }

    private MatLessonLacks One(OpenClub club, LessonRow lesson, string at)
    {
        if (made.TryGetValue(lesson.Id, out var known) && known.At == at) return known.Lacks;
        Interlocked.Increment(ref makings);
        var lacks = Make(club, lesson);
        if (made.Count > Most) made.Clear();
        made[lesson.Id] = (at, lacks);
        return lacks;
    }

    private MatLessonLacks Make(OpenClub club, LessonRow lesson)
    {
        var book = club.Book;
        var list = tests.OfRegister(club, book.Programme(lesson.ProgrammeId)!);
        var hasTest = list.TestId != Guid.Empty;
        var children = list.Children.ToFrozenDictionary(c => c.Person.Id, c => LackWords.Of(c, hasTest));
        var top = list.AtTheTop.Select(p => p.Id).ToFrozenSet();
        return new MatLessonLacks(
            lesson.Id,
            hasTest ? $"Test on {list.TestOn.WithWeekday()}" : "No test is set",
            $"Counted up to {list.AsOf.WithWeekday()}; what is seen tonight comes on top.",
            [.. book.RegisterOf(lesson.ProgrammeId, lesson.Date).Select(e => e.PersonId).Distinct().Where(p => book.Person(p) is { IsErased: false })
                .Select(p => children.TryGetValue(p, out var lacks) ? lacks : top.Contains(p) ? LackWords.AtTheTop(p) : LackWords.NotAtIt(p))]);
    }
}
