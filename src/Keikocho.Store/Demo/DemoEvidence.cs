using Keikocho.Core.Evening;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Kernel;
using Keikocho.Store.People;

namespace Keikocho.Store.Demo;

/// <summary>What was seen of the children, planned once for the whole club; the marks are made of it lesson by lesson.</summary>
internal sealed class DemoEvidence
{
    private readonly DemoMaking making;
    private readonly DemoCast cast;
    private readonly DemoAwards awards;
    private readonly DemoCare care;
    private readonly DemoSightings sightings;
    private readonly Dictionary<Guid, SignOff> rights;
    private readonly Dictionary<(Guid Person, int Lesson), List<DemoSeen>> seen = [];
    private readonly int firstTerm;

    public DemoEvidence(DemoMaking making, DemoCast cast, DemoAwards awards, DemoPapers papers, DemoSyllabus syllabus, DemoCare care)
    {
        this.making = making;
        this.cast = cast;
        this.awards = awards;
        this.care = care;
        sightings = new DemoSightings(making, syllabus);
        rights = cast.Adults.Concat(cast.Leaders).ToDictionary(
            p => p.Id,
            p => SignOff.Of(papers.Duties.Where(d => d.PersonId == p.Id), Seal.Open(p.Born), p.AdultSeenById is not null, making.Terms[syllabus.FirstTerm].From));
        // The large club has no more than the children of today and their present term.
        firstTerm = making.Size == DemoSize.Large ? making.Terms.Count - 1 : syllabus.FirstTerm;
        // The term before tells how long a break was.
        var recent = making.Kept.Select(k => k.Where(l => l.Term >= firstTerm - 1 && l.Row.ClosureId is null).ToList()).ToArray();
        foreach (var stays in cast.Stays.Where(s => s.To is null || (making.Size == DemoSize.Small && s.To >= making.Terms[firstTerm].From)).GroupBy(s => s.Person.Id))
            Plan([.. cast.Stays.Count > 500 ? stays : cast.Stays.Where(s => s.Person.Id == stays.Key)], recent);
    }

    /// <summary>What was seen of a child at a lesson, in the order of marking.</summary>
    public IReadOnlyList<DemoSeen> Of(Guid person, DemoLesson lesson) => seen.TryGetValue((person, lesson.Number), out var known) ? known : [];

    /// <summary>Who enters what was seen of a child at a lesson.</summary>
    public DemoEyes EyesOf(DemoLesson lesson, Guid person)
    {
        if (making.Size == DemoSize.Large) return Eyes(cast.Adults[lesson.Hour.Hall * 5].Id);
        var kept = making.Kept[lesson.Hour.Programme];
        var isBeginner = awards.StepOn(person, lesson.Row.Date) == 0;
        var at = Draw.About(making.Seed, DemoPart.Actor, lesson.Number, isBeginner ? 1 : 0).Below(100);
        // What a leader saw at the last lesson waits to be confirmed; at the one before it was an assistant who may not sign off.
        if (isBeginner && lesson.Number == kept[^1].Number) return Eyes(cast.Leaders[0].Id);
        if (isBeginner && lesson.Number == kept[^2].Number) return Eyes(cast.Adults[3].Id);
        // At the beginners' end an assistant, one who may not sign off, or a leader; with the main group mostly the instructors.
        return Eyes(isBeginner
            ? at < 76 ? cast.Adults[2].Id : at < 88 ? cast.Adults[3].Id : cast.Leaders[0].Id
            : at < 60 ? cast.Head.Id : at < 92 ? cast.Adults[1].Id : cast.Leaders[2].Id);
    }

    /// <summary>Whether the head instructor stood behind the suggestions of a lesson that same evening; those of the last lessons wait.</summary>
    public bool AreConfirmed(DemoLesson lesson) => making.Kept[lesson.Hour.Programme] is var kept && lesson.Row.Date < kept[^1].Row.Date;

    private DemoEyes Eyes(Guid person) => new(person, rights[person].Sightings, rights[person].Falls);

    private void Plan(Stay[] stays, List<DemoLesson>[] recent)
    {
        var person = stays[^1].Person;
        var number = stays[^1].Number;
        var standDowns = care.StandDowns.Where(s => s.PersonId == person.Id).ToList();
        var lessons = new List<DemoPresence>();
        foreach (var stay in stays)
        {
            foreach (var lesson in recent[stay.Programme])
            {
                if (!stay.IsOn(lesson.Row.Date)) continue;
                var tap = DemoTap.Of(making.Seed, stay, lesson);
                if (tap.Counts(lesson.Hour)) lessons.Add(new DemoPresence(lesson, tap.Minute <= lesson.Hour.UkemiFrom, tap.LeftMinute is not { } left || left >= lesson.Hour.End));
            }
        }

        int StepOn(DateOnly day) => awards.StepOn(person.Id, day);
        DemoFalls.Plan(making, stays[^1], lessons, StepOn, care.PartOf(person), standDowns, (lesson, fall) =>
        {
            if (lesson.Term >= firstTerm) At(person.Id, lesson).Add(fall);
        });

        var ways = care.Ways.Where(w => w.PersonId == person.Id).ToList();
        var child = SheetChild.Plain(Seal.Open(person.Born)) with { Choices = care.ChoicesOf(person.Id) };
        for (var term = firstTerm; term < making.Terms.Count; term++)
        {
            var test = making.Terms[term].Test;
            var own = lessons.Where(l => l.Stayed && l.Lesson.Term == term && l.Lesson.Row.Date < test).Select(l => l.Lesson).ToList();
            if (own.Count == 0) continue;
            var step = StepOn(test);
            sightings.Plan(stays[^1], term, step, own, ProgressOf(number, term, step, person), child, (lesson, what) =>
            {
                // Without contact there is nothing to show but words.
                if (what.Kind == MarkKind.Sighting && standDowns.Any(s => s.Scope != (int)Core.Safety.StandDownScope.NoFalls && s.From <= lesson.Row.Date && !(s.LiftedOn <= lesson.Row.Date))) return;
                var list = At(person.Id, lesson);
                var same = list.FindIndex(s => s.Item == what.Item && s.Kind != MarkKind.Fall);
                if (same < 0) list.Add(what);
                else list[same] = what;
            });
        }
    }

    private DemoProgress ProgressOf(int number, int term, int step, PersonRow person)
    {
        if (term < making.Terms.Count - 1)
            return awards.StepOn(person.Id, making.Terms[term].Test.AddDays(1)) > step ? DemoProgress.Done : DemoProgress.Some;
        if (care.IsDone(person)) return DemoProgress.Done;
        return Draw.About(making.Seed, DemoPart.Progress, number).Below(100) switch
        {
            < 55 => DemoProgress.Done,
            < 75 => DemoProgress.Nearly,
            < 90 => DemoProgress.Some,
            _ => DemoProgress.Few,
        };
    }

    private List<DemoSeen> At(Guid person, DemoLesson lesson)
    {
        if (!seen.TryGetValue((person, lesson.Number), out var known)) seen.Add((person, lesson.Number), known = []);
        return known;
    }
}
