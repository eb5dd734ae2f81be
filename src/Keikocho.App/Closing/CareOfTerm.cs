using System.Collections.Immutable;
using Keikocho.App.Club;
using Keikocho.Core.Club;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Store.Calendar;
using Keikocho.Store.Marks;
using Keikocho.Store.People;
using Keikocho.Store.Safety;

namespace Keikocho.App.Closing;

/// <summary>A family to ring.</summary>
/// <param name="PersonId">The child.</param>
/// <param name="Name">Full name.</param>
/// <param name="Words">Why.</param>
public sealed record RingLine(Guid PersonId, string Name, string Words);

/// <summary>What is looked at when an evening closes, over the term: for adults, on the laptop.</summary>
/// <param name="Since">First day of what is counted.</param>
/// <param name="Ring">Whom to ring this week.</param>
/// <param name="Leaders">The leaders' share, a sentence each.</param>
/// <param name="Knocks">Knocks by activity, a sentence each; empty where there was none.</param>
public sealed record CareOfTerm(DateOnly Since, ImmutableArray<RingLine> Ring, ImmutableArray<string> Leaders, ImmutableArray<string> Knocks)
{
    private const int LookBackDays = 120;

    /// <summary>Reads it as of an evening.</summary>
    public static CareOfTerm Of(OpenClub club, IReadOnlyList<LessonRow> evening)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(evening);
        var on = evening[0].Date;
        var since = club.Book.TermOn(on)?.From ?? on.AddDays(-LookBackDays);
        return new CareOfTerm(
            since,
            [.. evening.Select(l => l.ProgrammeId).Distinct().SelectMany(p => RingOf(club, club.Book.Programme(p)!, on))],
            [.. LeadersOf(club, since, on)],
            [.. KnocksOf(club, since, on)]);
    }

    private static IEnumerable<RingLine> RingOf(OpenClub club, ProgrammeRow programme, DateOnly on)
    {
        var book = club.Book;
        var from = on.AddDays(-LookBackDays);
        var register = book.RegisterOf(programme.Id, on).DistinctBy(e => e.PersonId).Where(e => book.Person(e.PersonId) is { IsErased: false }).ToList();
        var states = PastStates.Read(club.Reading, programme.Id, [.. register.Select(e => e.PersonId)], from, on).ToDictionary(s => (s.PersonId, s.LessonId), s => s.Word);
        var missing = PastStates.WithoutRegister(club.Reading, programme.Id, from, on);
        var held = book.LessonsOf(programme.Id).Where(l => l.Date >= from && l.Date <= on && l.ClosureId is null && !missing.Contains(l.Id)).ToList();
        var children = register.Select(e => new ChildLessons(
            e.PersonId.ToString("D"),
            book.EndOf(e.PersonId, programme, null, on) == MatEnd.Beginners,
            [.. held.Where(l => l.Date >= e.From).Select(l => (l.Date, Was: Was(states.GetValueOrDefault((e.PersonId, l.Id)), l.Date < on))).Where(l => l.Was is not null).Select(l => new HeldLesson(l.Date, l.Was!.Value))]));
        return SlippingAway.List(new SlippingQuestion(on, [.. children], FloorAndCareRules.Slipping(book, on))).Ring.Select(r =>
        {
            var person = book.Person(Guid.Parse(r.Child))!;
            var last = r.LastThere is { } day ? $"last there on {day.Full()}" : "not there since joining, or not for long";
            return new RingLine(person.Id, person.FullName, $"{Shared.Counted.Of(r.Missed, "lesson")} missed running since {r.Since.Full()}, {last}{(r.InFirstCourse ? "; first course" : "")}");
        });
    }

    // Tonight nobody is absent before somebody says so; of an evening that is over, who has no mark was not there.
    private static LessonWas? Was(AttendanceWord word, bool isOver) => word switch
    {
        AttendanceWord.Present or AttendanceWord.Left => LessonWas.There,
        AttendanceWord.Excused => LessonWas.Excused,
        AttendanceWord.Absent => LessonWas.Missed,
        _ => isOver ? LessonWas.Missed : null,
    };

    /// <summary>
    /// A leader trains at a lesson whose register they are on, unless they marked others there: then, and at every other lesson, they
    /// helped.
    /// </summary>
    private static IEnumerable<string> LeadersOf(OpenClub club, DateOnly since, DateOnly on)
    {
        var book = club.Book;
        Guid[] leaders = [.. book.DutiesOn(on).Where(d => d.Kind == DutyKind.JuniorLeader).Select(d => d.PersonId).Distinct().Where(id => book.Person(id) is { IsErased: false })];
        if (leaders.Length == 0) return [];
        var hands = MarksOfLessons.HandsAt(club.Reading, leaders, since, on);
        var present = book.Programmes.SelectMany(p => PastStates.Read(club.Reading, p.Id, leaders, since, on).Where(s => s.Word is AttendanceWord.Present or AttendanceWord.Left)
            .Select(s => (s.PersonId, s.LessonId, OnIt: book.EnrolmentsOfPerson(s.PersonId).Any(e => e.ProgrammeId == p.Id && e.IsOn(s.Date))))).ToList();
        var there = present.Select(s => (s.PersonId, Trained: s.OnIt && !hands.Contains((s.PersonId, s.LessonId))))
            .Concat(hands.Except(present.Select(s => (s.PersonId, s.LessonId))).Select(h => (h.PersonId, Trained: false)))
            .ToLookup(s => s.PersonId, s => s.Trained);
        var question = leaders.Select(id => new LeaderEvenings(
            book.Person(id)!.CallName, there[id].Count(t => !t), there[id].Count(t => t),
            book.Tests.Where(t => t.Date >= on && book.EnrolmentsOfPerson(id).Any(e => e.ProgrammeId == t.ProgrammeId && e.IsOn(on))).Select(t => (DateOnly?)t.Date).FirstOrDefault()));
        return LeadersShare.Reckon(new LeadersQuestion([.. question], FloorAndCareRules.Leaders(book, on))).Reasons.Select(r => r.Sentence);
    }

    private static IEnumerable<string> KnocksOf(OpenClub club, DateOnly since, DateOnly on)
    {
        var knocks = KnockSlips.Between(club.Reading, since, on);
        var near = NearMissReader.Between(club.Reading, since, on);
        if (knocks.Count + near.Count == 0) return [];
        var hurt = knocks.Count(k => !k.NearMiss);
        // A knock without a register that evening is still a child who was there.
        var all = Math.Max(hurt, PastStates.ChildEvenings(club.Reading, since, on));
        var each = KnockActivities.All.Select(a => (
                a.Activity, a.Words, Own: knocks.Where(k => KnockActivities.Words(k.Activity) == a.Words).ToList(),
                Near: near.Count(n => KnockActivities.Words(n.Activity) == a.Words)))
            .Where(a => a.Own.Count + a.Near > 0)
            // Everybody who is there warms up and falls; how many were there for anything else is not written down.
            .Select(a => new ActivityCount(a.Words, a.Activity is KnockActivity.WarmUp or KnockActivity.Falls ? all : null, a.Own.Count(k => !k.NearMiss), a.Own.Count(k => k.NearMiss) + a.Near));
        return KnocksByActivity.Reckon(new KnocksQuestion(all, [.. each], FloorAndCareRules.Knocks(club.Book, on))).Reasons.Select(r => r.Sentence);
    }
}
