using System.Collections.Immutable;
using Keikocho.App.Club;
using Keikocho.App.People;
using Keikocho.App.PromotionTests;
using Keikocho.App.Syllabus;
using Keikocho.Core.Calendar;
using Keikocho.Core.Kernel;
using Keikocho.Store.Book;
using Keikocho.Store.Calendar;
using Keikocho.Store.Marks;
using Keikocho.Store.People;

namespace Keikocho.App.Students;

/// <summary>What one child's page is reckoned with.</summary>
/// <param name="Reckonings">Clocks.</param>
/// <param name="Tests">Promotion tests.</param>
/// <param name="Editions">Editions made ready.</param>
public sealed record StudentSums(Reckonings Reckonings, TestReckoning Tests, EditionsInHand Editions);

/// <summary>Another child of the family.</summary>
/// <param name="PersonId">Who.</param>
/// <param name="Name">Full name.</param>
/// <param name="HasPage">Whether that person is or was on a register.</param>
public sealed record SiblingLine(Guid PersonId, string Name, bool HasPage);

/// <summary>An award that stands, with its id for a correction.</summary>
/// <param name="AwardId">The award.</param>
/// <param name="Belt">The rank.</param>
/// <param name="Words">When, and how the club knows.</param>
/// <param name="By">Who recorded it; null where nobody is known.</param>
public sealed record AwardLine(Guid AwardId, WornBelt Belt, string Words, string? By);

/// <summary>The next lesson at which a child may work at the other end for once.</summary>
/// <param name="LessonId">The lesson.</param>
/// <param name="Words">"today" or its day.</param>
public sealed record EndChange(Guid LessonId, string Words);

/// <summary>
/// One child's page, for the adults who teach, on the laptop: names, ranks, lessons, the child's own clock, and whom to ring. No size,
/// nothing medical, no other child but siblings.
/// </summary>
/// <param name="Person">Name and birth date.</param>
/// <param name="Programme">The programme whose register it is about.</param>
/// <param name="Others">Other programmes of this child.</param>
/// <param name="Line">Age, end, newcomer, with us since.</param>
/// <param name="Belt">What the child wears.</param>
/// <param name="NextBelt">The belt after it; null at the top of the ladder.</param>
/// <param name="IsOnRegister">Whether the child is on this register today.</param>
/// <param name="Path">Belts over time; null while the club has no term.</param>
/// <param name="Card">This term's lessons; null while the club has no term.</param>
/// <param name="Clock">The child's own clock; null off the register.</param>
/// <param name="Return">What to see again after a break; null when nothing is asked.</param>
/// <param name="AgeOut">Who leaves when; null where the club has no leaving age, or it is past.</param>
/// <param name="File">Whom to ring, knocks, wishes, and what the lines below are made of.</param>
/// <param name="Registration">The registration in words.</param>
/// <param name="Photo">The photo consent in words.</param>
/// <param name="Siblings">Siblings.</param>
/// <param name="Awards">Rank history, oldest first.</param>
/// <param name="End">The end at which the child works from today on.</param>
/// <param name="NextLesson">The next lesson, for a change of end for once; null without any.</param>
/// <param name="Ranks">Ranks of the ladder, lowest first.</param>
/// <param name="LastDay">Last day on this register; null while it goes on.</param>
/// <param name="Seen">Falls, sightings, stand-downs, agreed ways.</param>
/// <param name="Ready">What the next rank asks and how it stands; null off the register.</param>
public sealed record StudentView(
    BookPerson Person,
    ProgrammeRow Programme,
    ImmutableArray<(Guid Id, string Name)> Others,
    string Line,
    WornBelt Belt,
    WornBelt? NextBelt,
    bool IsOnRegister,
    BeltPath? Path,
    TermCard? Card,
    OwnClock? Clock,
    ReturnAnswer? Return,
    AgeOutAnswer? AgeOut,
    ChildFile File,
    string Registration,
    string Photo,
    ImmutableArray<SiblingLine> Siblings,
    ImmutableArray<AwardLine> Awards,
    MatEnd End,
    EndChange? NextLesson,
    ImmutableArray<(Guid Id, string Name)> Ranks,
    DateOnly? LastDay,
    StudentSeen Seen,
    StudentReady? Ready)
{
    /// <summary>What is taken off the least time for the next rank; null where nothing is and nothing may be.</summary>
    public TimeOffView? TimeOff { get; private init; }

    /// <summary>Reads it; null when nobody of this id is or was on a register.</summary>
    public static StudentView? Of(OpenClub club, StudentSums sums, Guid id, Guid? programmeId)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(sums);
        var (book, today) = (club.Book, club.Today);
        var enrolments = book.EnrolmentsOfPerson(id);
        if (book.Person(id) is not { IsErased: false } person || enrolments.Length == 0) return null;
        var programmes = book.Programmes.Where(p => enrolments.Any(e => e.ProgrammeId == p.Id)).ToList();
        var programme = programmes.FirstOrDefault(p => p.Id == programmeId)
            ?? programmes.FirstOrDefault(p => enrolments.Any(e => e.ProgrammeId == p.Id && e.IsOn(today)))
            ?? programmes[^1];
        var own = enrolments.Where(e => e.ProgrammeId == programme.Id).OrderBy(e => e.From).ToList();
        var isOn = own.Any(e => e.IsOn(today));
        var reckoning = isOn ? sums.Reckonings.Of(club, programme) : null;
        var reckoned = reckoning?.Children.GetValueOrDefault(id);
        var joined = enrolments.Min(e => e.From);
        var end = book.EndOf(id, programme, null, today);
        var file = ChildFileReader.Of(club.Reading, id, programme.Id, TermCard.TermFor(book, today)?.From, today);
        var evidence = EvidenceReader.Of(club.Reading, [id], null, today)[id];
        var ready = reckoned is null ? null : StudentReady.Of(club, sums.Tests, sums.Editions, programme, evidence);
        return new StudentView(
            person,
            programme,
            [.. programmes.Where(p => p.Id != programme.Id).Select(p => (p.Id, p.Name))],
            LineOf(book, person, end, reckoned, joined, own, today),
            WornBelt.Of(book, id, programme.LadderId),
            BeltPath.NextOf(book, id, programme),
            isOn,
            BeltPath.Of(book, id, programme, joined, today, reckoning?.TestOn),
            TermCard.Of(book, programme, own, file.Lessons.ToDictionary(s => s.LessonId), reckoned?.Clock.RegisterMissing.ToHashSet() ?? [], today),
            reckoned is null ? null : OwnClock.Of(club, programme, person, reckoning!, reckoned, ready?.Child is { IsByOlder: true }),
            reckoned?.LastLesson is { } last && ReturnAfterAbsence.Reckon(today, last, StudentRules.Return(book, today)) is { SeeAgain.Count: > 0 } back ? back : null,
            isOn ? AgeOutOf(book, programme, person, today) : null,
            file,
            RegistrationWords(file, today),
            file.Photo switch
            {
                null => "photographs: nobody was asked yet",
                true => $"may be photographed, said on {file.PhotoSaidOn!.Value.Full()}",
                false => $"no photographs, said on {file.PhotoSaidOn!.Value.Full()}",
            },
            [.. file.Siblings.Select(book.Person).OfType<BookPerson>().Where(p => !p.IsErased).OrderBy(p => p.FullName, StringComparer.Ordinal).ThenBy(p => p.Id)
                .Select(p => new SiblingLine(p.Id, p.FullName, book.EnrolmentsOfPerson(p.Id).Length > 0))],
            [.. book.AwardsOf(id).Where(a => a.LadderId == programme.LadderId)
                .Select(a => new AwardLine(a.Id, WornBelt.Of(book.Rank(a.RankId)!), AwardWords.Of(a), a.ById is { } by ? book.Person(by)?.FullName : null))],
            end,
            NextLessonOf(book, programme, today),
            [.. book.Ranks.Where(r => r.LadderId == programme.LadderId).Select(r => (r.Id, r.Name))],
            own[^1].To,
            StudentSeen.Of(club, programme, person, evidence),
            ready)
        {
            TimeOff = ready?.Child?.Target is { } target && TimeOffView.Of(book, programme, id, target) is { IsShown: true } off ? off : null,
        };
    }

    private static string LineOf(ClubBook book, BookPerson person, MatEnd end, ChildReckoning? reckoned, DateOnly joined, List<EnrolmentRow> own, DateOnly today)
    {
        var age = StudentRules.Age(book, person, today) is { } years ? $"{years} {(years == 1 ? "year" : "years")} old" : "birth date not known";
        var since = $"with us since {joined.MonthAndYear()}";
        if (!own.Any(e => e.IsOn(today))) return own[^1].To is { } last && last < today ? $"{age}, {since}, on this register to {last.Full()}" : $"{age}, on this register from {own[^1].From.Full()}";
        var newcomer = reckoned switch { { LessonsEver: 0 } => "newcomer, no lesson yet, ", { IsNewcomer: true } => "newcomer, ", _ => "" };
        return $"{age}, {newcomer}{(end == MatEnd.Beginners ? "beginners’ end" : "main group")}, {since}";
    }

    private static AgeOutAnswer? AgeOutOf(ClubBook book, ProgrammeRow programme, BookPerson person, DateOnly today)
    {
        if (StudentRules.AgeOut(book, today) is not { } rule || person.Born is not { } born) return null;
        var ladder = book.Ranks.Where(r => r.LadderId == programme.LadderId).Select(r => r.Position).ToList();
        var answer = Core.Calendar.AgeOut.Reckon(new AgeOutSnapshot(
            today,
            born,
            book.RankOf(person.Id, programme.LadderId)?.Position ?? WornBelt.StartOf(book, programme.LadderId)?.Position ?? 0,
            ladder.Count == 0 ? 0 : ladder.Max(),
            [.. book.Tests.Where(t => t.ProgrammeId == programme.Id).Select(t => t.Date)],
            [.. book.Terms.Select(t => new TermDays(t.From, t.To))],
            rule));
        // Whoever is older is in a programme that the leaving age is not meant for.
        return answer.LeavesOn < today ? null : answer;
    }

    private static string RegistrationWords(ChildFile file, DateOnly today) => file switch
    {
        { IsRegistered: false } => "no registration with the national body is recorded",
        { RegisteredUntil: null } => "registered with the national body; nobody has said until when",
        { RegisteredUntil: { } until } when until < today => $"registration ended on {until.Full()}",
        { RegisteredUntil: { } until } => $"registered to {until.Full()}",
    };

    private static EndChange? NextLessonOf(ClubBook book, ProgrammeRow programme, DateOnly today) =>
        book.LessonsOf(programme.Id).FirstOrDefault(l => l.Date >= today && l.ClosureId is null) is { } next
            ? new EndChange(next.Id, next.Date == today ? "today’s lesson" : $"the lesson on {next.Date.Brief()}")
            : null;
}
