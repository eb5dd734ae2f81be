using System.Collections.Immutable;
using Keikocho.App.Club;
using Keikocho.App.Evening;
using Keikocho.App.Sightings;
using Keikocho.Core.Attendance;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Store.Book;
using Keikocho.Store.Calendar;
using Keikocho.Store.Marks;
using Keikocho.Store.Safety;
using Keikocho.Store.Syllabus;

namespace Keikocho.App.Tonight;

/// <summary>A child at an end tonight: what anybody on the mat may see.</summary>
/// <param name="PersonId">Who.</param>
/// <param name="Name">The name as called.</param>
/// <param name="Rank">The rank that is worn; null for none recorded.</param>
/// <param name="Words">"lesson 7 of 14", "first evening", or the rank.</param>
/// <param name="IsHere">Marked present and not left.</param>
public sealed record TonightChild(Guid PersonId, string Name, RankRow? Rank, string Words, bool IsHere);

/// <summary>One end of the mat tonight.</summary>
/// <param name="Here">Those on the mat, or everybody expected before anybody is marked; in register order.</param>
/// <param name="NotHere">Those not on the mat, once somebody is marked.</param>
public sealed record TonightEnd(ImmutableArray<TonightChild> Here, ImmutableArray<TonightChild> NotHere);

/// <summary>The evening at a glance.</summary>
/// <param name="Lesson">The lesson.</param>
/// <param name="Line">Day, hours, which lesson of the term.</param>
/// <param name="IsToday">Whether it is today's.</param>
/// <param name="IsToCome">Whether its day is still to come.</param>
/// <param name="Closed">Name of the closure; null when it is held.</param>
/// <param name="Adults">The sum of the adults, from those marked here.</param>
/// <param name="AdultsLine">The top line: needed, here, short by.</param>
/// <param name="FirstAider">Who can give first aid, or that nobody can.</param>
/// <param name="NoFirstAider">Nobody here can, and children are.</param>
/// <param name="Numbers">How many children are here or likely.</param>
/// <param name="Anyone">Whether anybody is marked yet.</param>
/// <param name="Test">The next promotion test; null when none is set.</param>
/// <param name="Beginners">The beginners' end.</param>
/// <param name="Main">The main group.</param>
/// <param name="Care">Whom to take care of.</param>
/// <param name="Evening">The lessons of this evening.</param>
/// <param name="NoFallIsMarked">Nobody on the register has a fall marked: the gates say nothing of any one child.</param>
/// <param name="Suggestions">Marks that wait for somebody who may confirm them.</param>
/// <param name="Reviews">Stand-downs whose review day has come; whose they are stands on the laptop's own page.</param>
/// <param name="OpenSlips">Knocks of this evening whose slip waits to be handed over; for the laptop alone.</param>
public sealed record TonightView(
    LessonRow Lesson,
    string Line,
    bool IsToday,
    bool IsToCome,
    string? Closed,
    AdultsAnswer Adults,
    string AdultsLine,
    string FirstAider,
    bool NoFirstAider,
    string Numbers,
    bool Anyone,
    DateOnly? Test,
    TonightEnd Beginners,
    TonightEnd Main,
    ImmutableArray<TonightLine> Care,
    ImmutableArray<(Guid LessonId, string Programme)> Evening,
    bool NoFallIsMarked,
    int Suggestions,
    int Reviews,
    ImmutableArray<(Guid KnockId, string Words)> OpenSlips)
{
    /// <summary>Reads the evening of a lesson.</summary>
    public static TonightView Of(OpenClub club, LessonRow lesson, Reckonings reckonings)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(lesson);
        ArgumentNullException.ThrowIfNull(reckonings);
        var book = club.Book;
        var programme = book.Programme(lesson.ProgrammeId)!;
        var states = AttendanceReader.OfLesson(club.Reading, lesson.Id);
        var reckoning = reckonings.Of(club, programme);
        var register = book.RegisterOf(programme.Id, lesson.Date).DistinctBy(e => e.PersonId).ToList();
        var names = CallNames.Show([.. register.Select(e => book.Person(e.PersonId)!).Select(p =>
            new NamedChild(new PersonId(p.Id), p.CallName, p.Family, book.RankOf(p.Id, programme.LadderId)?.Name))]);
        var anyone = states.Values.Any(s => s.Word != AttendanceWord.Untouched);
        var ends = names.Select(n => (n.Person.Value, n.Name, End: book.EndOf(n.Person.Value, programme, lesson, lesson.Date))).ToList();

        TonightEnd EndOf(MatEnd end)
        {
            var children = ends.Where(e => e.End == end).Select(e => Child(book, programme, lesson, reckoning, states, e.Value, e.Name, end)).ToList();
            return anyone
                ? new TonightEnd([.. children.Where(c => c.IsHere)], [.. children.Where(c => !c.IsHere)])
                : new TonightEnd([.. children], []);
        }

        var beginners = EndOf(MatEnd.Beginners);
        var main = EndOf(MatEnd.Main);
        var adults = CountAdults(book, lesson, states, ends.Select(e => (e.Value, e.End)));
        var childrenHere = beginners.Here.Concat(main.Here).Count(c => c.IsHere);
        var place = EveningLesson.InTerm(book, lesson);
        var seen = EvidenceReader.Of(club.Reading, [.. ends.Select(e => e.Value)], null, lesson.Date);
        var care = ends.Select(e => new CareChild(
            e.Value, e.Name, reckoning.Children.GetValueOrDefault(e.Value), states.GetValueOrDefault(e.Value)?.Clash is AttendanceClash.OnTimeAndLate or AttendanceClash.PresentAndAbsent, seen[e.Value])).ToList();
        var noFall = care.Count > 0 && TakeCare.NoFallIsMarked(care);
        return new TonightView(
            lesson,
            $"{lesson.Date.WithWeekday()}, {lesson.Start.Plain()} to {lesson.End.Plain()}" + (place is { } p ? $", lesson {p.Number} of {p.Of}" : ""),
            lesson.Date == club.Today,
            lesson.Date > club.Today,
            book.Closure(lesson.ClosureId)?.Name,
            adults,
            AdultsLineOf(adults, childrenHere),
            adults.FirstAiders.Count > 0 ? string.Join(", ", adults.FirstAiders) : childrenHere > 0 ? "nobody here" : "nobody marked yet",
            adults.FirstAiders.Count == 0 && childrenHere > 0,
            NumbersOf(reckoning, register, states, anyone, childrenHere, ClubRules.Prior(book, lesson.Date)),
            anyone,
            reckoning.TestOn,
            beginners,
            main,
            TakeCare.Of(book, lesson, [.. care.Where(c => !anyone || states.GetValueOrDefault(c.PersonId)?.Word == AttendanceWord.Present)], !noFall),
            [.. EveningLesson.SameEvening(book, lesson).Select(l => (l.Id, book.Programme(l.ProgrammeId)!.Name))],
            noFall,
            seen.Values.Sum(s => s.Suggestions),
            seen.Values.Sum(s => ChildGates.Standing(book, s, lesson.Date).ForReview.Count),
            [.. KnockSlips.OpenOf(club.Reading, [.. EveningLesson.SameEvening(book, lesson).Select(l => l.Id)])
                .Select(s => (s.KnockId, KnockSlips.Words([book.Person(s.PersonId)?.CallName ?? "a child"])))]);
    }

    private static TonightChild Child(
        ClubBook book, ProgrammeRow programme, LessonRow lesson, ProgrammeReckoning reckoning,
        Dictionary<Guid, AttendanceRow> states, Guid person, string name, MatEnd end)
    {
        var rank = book.RankOf(person, programme.LadderId);
        var words = end == MatEnd.Beginners && reckoning.Children.TryGetValue(person, out var own)
            ? LessonWords(own, own.Time.Lessons, lesson.Date <= reckoning.AsOf && states.GetValueOrDefault(person) is { Counts: true })
            : end == MatEnd.Beginners ? "first evening" : rank?.Name ?? "no rank recorded";
        return new TonightChild(person, name, rank, words, states.GetValueOrDefault(person)?.Word == AttendanceWord.Present);
    }

    /// <summary>Which lesson it is; after the bow out the count holds tonight's already.</summary>
    private static string LessonWords(ChildReckoning own, int asked, bool isCounted)
    {
        if (own.LessonsEver - (isCounted ? 1 : 0) == 0) return "first evening";
        var before = own.Clock.Attended - (isCounted ? 1 : 0);
        return before < asked ? $"lesson {before + 1} of {asked}" : $"{own.Clock.Attended} lessons, {asked} asked";
    }

    private static AdultsAnswer CountAdults(
        ClubBook book, LessonRow lesson, Dictionary<Guid, AttendanceRow> states, IEnumerable<(Guid Person, MatEnd End)> children)
    {
        bool Here(Guid person) => states.GetValueOrDefault(person)?.Word == AttendanceWord.Present;
        var byAge = children.Where(c => Here(c.Person)).Select(c => AgesOfEvening.Child(book, c.Person, c.End, lesson.Date)).ToList();
        var present = book.DutiesOn(lesson.Date).DistinctBy(d => d.PersonId).Where(d => Here(d.PersonId)).Select(d => AgesOfEvening.Adult(book, d, lesson.Date)).ToList();
        return EnoughAdults.Count(new AdultsSnapshot(lesson.Date, byAge, present, null, ClubRules.Adults(book, lesson.Date)));
    }

    private static string AdultsLineOf(AdultsAnswer adults, int childrenHere) => childrenHere == 0
        ? $"{adults.Hall.Have} here, no child yet"
        : $"{adults.Hall.Needed} needed, {adults.Hall.Have} here" + (adults.Hall.ShortBy > 0 ? $", short by {adults.Hall.ShortBy}" : "");

    private static string NumbersOf(
        ProgrammeReckoning reckoning, List<EnrolmentRow> register, Dictionary<Guid, AttendanceRow> states, bool anyone, int here, PriorRule rule)
    {
        if (anyone) return $"{here} here of {register.Count}";
        if (register.Count == 0) return "nobody on the register";
        var rates = register
            .Where(e => states.GetValueOrDefault(e.PersonId)?.Word is not (AttendanceWord.Excused or AttendanceWord.Absent))
            .Select(e => reckoning.Children.TryGetValue(e.PersonId, out var own) ? own.Chance.A / (own.Chance.A + own.Chance.B) : reckoning.Attendance.Prior.Mean)
            .ToList();
        var range = PoissonBinomial.Of(rates).Likely(rule.LikelyPercent);
        return $"{register.Count}, likely {range.From} to {range.To}";
    }
}
