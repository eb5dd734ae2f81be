using System.Collections.Immutable;
using Keikocho.App.Club;
using Keikocho.App.Sightings;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Core.Partners;
using Keikocho.Store.Book;
using Keikocho.Store.Calendar;
using Keikocho.Store.Evening;
using Keikocho.Store.Marks;
using Keikocho.Store.People;
using Keikocho.Store.Sealing;

namespace Keikocho.App.Pairs;

/// <summary>A child of the register with all that pairs ask.</summary>
/// <param name="PersonId">Who.</param>
/// <param name="Name">As lists show it.</param>
/// <param name="Register">Place on the register.</param>
/// <param name="End">The end tonight.</param>
/// <param name="IsHere">Marked here and not gone.</param>
/// <param name="Age">Whole years; null where no birth date is held.</param>
/// <param name="IsNewcomer">A newcomer.</param>
/// <param name="Steps">Steps up the ladder.</param>
/// <param name="Family">The same for siblings.</param>
/// <param name="Size">The newest size; null where none is held or the lock is shut. It leaves this record for a sum only.</param>
/// <param name="Evidence">What the club saw.</param>
public sealed record PairsChild(
    Guid PersonId, string Name, int Register, MatEnd End, bool IsHere, int? Age, bool IsNewcomer, int? Steps, string? Family, HeldSize? Size, ChildEvidence Evidence);

/// <summary>An adult who is here and could partner a child.</summary>
/// <param name="PersonId">Who.</param>
/// <param name="Name">As called.</param>
/// <param name="IsFree">Proposed: does not run an end.</param>
public sealed record PairsAdult(Guid PersonId, string Name, bool IsFree);

/// <summary>One lesson as pairs see it.</summary>
/// <param name="Lesson">The lesson.</param>
/// <param name="Children">The whole register, in its order.</param>
/// <param name="Adults">Adults here.</param>
/// <param name="State">How the club's lock stands.</param>
/// <param name="RegisterTaken">Whether anybody is marked.</param>
/// <param name="Wishes">Wishes about two children.</param>
/// <param name="Together">Who worked together at earlier lessons.</param>
public sealed record PairsEvening(
    LessonRow Lesson, ImmutableArray<PairsChild> Children, ImmutableArray<PairsAdult> Adults, LockState State, bool RegisterTaken,
    IReadOnlyList<PairWish> Wishes, IReadOnlyList<WorkedTogether> Together)
{
    /// <summary>So many lessons back somebody's partners are looked up.</summary>
    public const int LessonsBack = 12;

    /// <summary>Reads it.</summary>
    /// <param name="club">The club.</param>
    /// <param name="lesson">The lesson.</param>
    /// <param name="reckonings">Who is a newcomer.</param>
    /// <param name="known">What the club saw, where it was read already.</param>
    public static PairsEvening Of(OpenClub club, LessonRow lesson, Reckonings reckonings, IReadOnlyDictionary<Guid, ChildEvidence>? known = null)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(lesson);
        ArgumentNullException.ThrowIfNull(reckonings);
        var (book, reading) = (club.Book, club.Reading);
        var programme = book.Programme(lesson.ProgrammeId)!;
        var states = AttendanceReader.OfLesson(reading, lesson.Id);
        bool Here(Guid person) => states.GetValueOrDefault(person)?.Word == AttendanceWord.Present;
        var names = CallNames.Show([.. book.RegisterOf(programme.Id, lesson.Date).DistinctBy(e => e.PersonId).Select(e => book.Person(e.PersonId)!).Where(p => !p.IsErased).Select(p =>
            new NamedChild(new PersonId(p.Id), p.CallName, p.Family, book.RankOf(p.Id, programme.LadderId)?.Name))]);
        List<Guid> people = [.. names.Select(n => n.Person.Value)];
        var evidence = known ?? EvidenceReader.Of(reading, people, null, lesson.Date);
        var families = FamilyReader.Of(reading, people);
        var (state, key) = club.House.Lock.Now(reading);
        var sizes = Sizes(reading, people, lesson.Date, key);
        var reckoned = reckonings.Of(club, programme).Children;
        var leap = book.Setting("ageOut.leapBirthday", lesson.Date) == "1 March" ? LeapBirthday.FirstMarch : LeapBirthday.TwentyEighthFebruary;
        List<Guid> before = [.. book.LessonsOf(programme.Id).Where(l => l.ClosureId is null && l.Date < lesson.Date).Select(l => l.Id).TakeLast(LessonsBack).Reverse()];
        return new PairsEvening(
            lesson,
            [.. names.Select((n, place) => new PairsChild(
                n.Person.Value, n.Name, place + 1, book.EndOf(n.Person.Value, programme, lesson, lesson.Date), Here(n.Person.Value),
                book.Person(n.Person.Value)!.Born is { } born && born <= lesson.Date ? Age.On(born, lesson.Date, leap) : null,
                reckoned.GetValueOrDefault(n.Person.Value)?.IsNewcomer ?? true,
                book.RankOf(n.Person.Value, programme.LadderId)?.Position,
                families.GetValueOrDefault(n.Person.Value),
                sizes.GetValueOrDefault(n.Person.Value),
                evidence[n.Person.Value]))],
            [.. AdultsHere(book, lesson, Here, club.Acting?.Id)],
            state,
            states.Values.Any(s => s.Word != AttendanceWord.Untouched),
            PairWishReader.On(reading, lesson.Date),
            [.. TogetherReader.OfLessons(reading, before).Select(l => new WorkedTogether(new PersonId(l.One), new PersonId(l.Other), before.IndexOf(l.Lesson) + 1))]);
    }

    /// <summary>The children of an end.</summary>
    public IEnumerable<PairsChild> At(MatEnd end) => Children.Where(c => c.End == end);

    /// <summary>The question of one end.</summary>
    /// <param name="club">The club, for gates and settings.</param>
    /// <param name="end">The end.</param>
    /// <param name="drill">What is done.</param>
    /// <param name="isIn">Who is in it.</param>
    /// <param name="adults">Names of adults who can partner, the first to be asked first.</param>
    public PartnersQuestion Question(OpenClub club, MatEnd end, PairsDrill drill, Func<PairsChild, bool> isIn, IReadOnlyList<string> adults)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(drill);
        var day = Lesson.Date;
        var limits = ClubRules.Limits(club.Book, day);
        var activity = drill.Activity == PairsActivity.Throwing ? limits.Of(drill.Activity) with { Name = drill.Name } : limits.Of(drill.Activity);
        IEnumerable<TwoChildren> Wished(bool apart) => Wishes.Where(w => w.Apart == apart).Select(w => new TwoChildren(new PersonId(w.OneId), new PersonId(w.OtherId)));
        return new PartnersQuestion(
            day,
            activity,
            [.. At(end).Where(isIn).Select(c => Asked(club.Book, c, drill, day))],
            adults,
            ClubRules.Partners(club.Book, day),
            [.. Wished(true)],
            [.. Wished(false)],
            Together,
            [.. new[] { PairsActivity.TurnIns, PairsActivity.Holds }.Where(a => a != drill.Activity).Select(limits.Of)]);
    }

    private static PartnersChild Asked(ClubBook book, PairsChild child, PairsDrill drill, DateOnly day)
    {
        var standing = ChildGates.Standing(book, child.Evidence, day);
        var mayFall = drill.Planned is { } planned && MayBePaired.MayFall(ChildGates.Of(book, child.Evidence, day, planned), standing);
        return new PartnersChild(
            new PersonId(child.PersonId), child.Name, child.Register, child.Age, mayFall, standing.MayHaveContact, standing.MayBeOnTheMat,
            child.Size?.Grams is { } grams ? grams / 1000m : null, child.Size?.Grams is null ? null : child.Size.On, child.IsNewcomer, child.Steps, child.Family);
    }

    private static Dictionary<Guid, HeldSize> Sizes(Store.Engines.ReadSession reading, List<Guid> people, DateOnly day, OpenedLock? key)
    {
        if (key is null) return [];
        try
        {
            return SizeReader.Newest(reading, people, day, key);
        }
        catch (ObjectDisposedException)
        {
            // Shut while this page was being made: as if it had been shut before.
            return [];
        }
    }

    // Of 18 and over, marked here. Whoever holds the laptop, and the head instructor, run an end.
    private static IEnumerable<PairsAdult> AdultsHere(ClubBook book, LessonRow lesson, Func<Guid, bool> here, Guid? acting) =>
        book.DutiesOn(lesson.Date).Where(d => here(d.PersonId) && d.Kind is DutyKind.HeadInstructor or DutyKind.Instructor or DutyKind.Assistant)
            .GroupBy(d => d.PersonId).Select(own => (Person: book.Person(own.Key), Duties: own.ToList()))
            .Where(a => a.Person is { IsErased: false } p && here(p.Id) && SignOff.IsAdult(p.Born, p.SeenAdult, lesson.Date))
            .Select(a => new PairsAdult(a.Person!.Id, a.Person.CallName, a.Person.Id != acting && a.Duties.All(d => d.Kind != DutyKind.HeadInstructor)));
}
