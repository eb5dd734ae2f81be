using System.Collections;
using Keikocho.Core.Evening;
using Keikocho.Store.Club;
using Keikocho.Store.Marks;

namespace Keikocho.Store.Demo;

/// <summary>The marks, lesson by lesson, made while they are walked through.</summary>
internal sealed class DemoRegisters(DemoMaking making, DemoCast cast, IReadOnlyList<DeviceRow> devices, DemoEvidence evidence, DemoKnocks knocks) : IEnumerable<LessonMarks>
{
    /// <summary>The small demo's tablet; its marks clash with the laptop's at three lessons.</summary>
    private const int Tablet = 1;

    public IEnumerator<LessonMarks> GetEnumerator()
    {
        var sequences = new int[devices.Count];
        var special = making.Size == DemoSize.Small ? Specials() : [];
        foreach (var lesson in making.Lessons)
            if (lesson.HasRegister(making.Today)) yield return new LessonMarks(lesson.Row, Marks(lesson, sequences, special.GetValueOrDefault(lesson.Number)));
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    private enum Special
    {
        None,
        Clash,
        Undone,
        Corrected,
    }

    private Dictionary<int, Special> Specials()
    {
        var kept = making.Kept[0];
        return new Dictionary<int, Special>
        {
            [kept[^2].Number] = Special.Undone,
            // An evening without teens: the correction of the next morning keeps its place in the laptop's count.
            [kept[^3].Number] = Special.Corrected,
            [kept[^4].Number] = Special.Clash,
            [kept[^12].Number] = Special.Clash,
            [kept[^30].Number] = Special.Clash,
        };
    }

    /// <summary>The adult who acts on the device at a lesson.</summary>
    public Guid ActingAdult(DemoLesson lesson) =>
        cast.Adults[making.Size == DemoSize.Large ? lesson.Hour.Hall * 5 : lesson.Hour.Hall].Id;

    private readonly record struct Tapped(Stay Stay, MarkKind Kind, int Minute, int Second, int Order, DemoSeen? Seen = null, DemoKnock? Knock = null);

    private List<MarkRow> Marks(DemoLesson lesson, int[] sequences, Special special)
    {
        var laptop = making.Size == DemoSize.Large ? lesson.Hour.Hall : 0;
        var by = ActingAdult(lesson);
        var tapped = new List<Tapped>(64);
        foreach (var stay in cast.ByProgramme[lesson.Hour.Programme])
        {
            if (!stay.IsOn(lesson.Row.Date)) continue;
            var tap = DemoTap.Of(making.Seed, stay, lesson);
            tapped.Add(new Tapped(stay, tap.Kind, tap.Minute, tap.Second, tapped.Count));
            if (tap.LeftMinute is { } left) tapped.Add(new Tapped(stay, MarkKind.Left, left, tap.Second, tapped.Count));
            // Falls are entered when they are over, the rest at the end of the lesson, each for the whole end of the mat at once.
            foreach (var seen in evidence.Of(stay.Person.Id, lesson))
                tapped.Add(new Tapped(stay, seen.Kind, seen.Kind == MarkKind.Fall ? lesson.Hour.HalfTime + 1 : lesson.Hour.End - 2, 0, tapped.Count, seen));
        }

        foreach (var knock in knocks.At(lesson)) tapped.Add(new Tapped(knock.Stay, MarkKind.Knock, knock.Minute, knock.Second, tapped.Count, Knock: knock));
        tapped.Sort(static (a, b) => (a.Minute, a.Second, a.Order).CompareTo((b.Minute, b.Second, b.Order)));
        var marks = new List<MarkRow>(tapped.Count + 4);
        var mistaken = special == Special.Undone ? tapped.FirstOrDefault(t => t.Kind == MarkKind.Absent).Stay : null;
        var suggestions = new List<MarkRow>();
        foreach (var tap in tapped)
        {
            if (tap.Seen is { } seen)
            {
                var eyes = evidence.EyesOf(lesson, tap.Stay.Person.Id);
                var mark = SeenMark(lesson, laptop, sequences, tap, seen, eyes);
                marks.Add(mark);
                if (!eyes.Signs(seen.Kind)) suggestions.Add(mark);
                continue;
            }

            if (tap.Knock is { } knock)
            {
                var mark = Mark(lesson, laptop, sequences, by, tap.Stay.Person.Id, MarkKind.Knock, tap.Minute, tap.Second);
                (mark.Id, mark.Code, mark.At) = (knock.Id, (int)knock.Activity, null);
                marks.Add(mark);
                continue;
            }

            if (mistaken is not null && tap.Minute > lesson.Hour.Start + 2)
            {
                // The finger slipped to the tile beside; Undo a few seconds later.
                var slip = Mark(lesson, laptop, sequences, by, mistaken.Person.Id, MarkKind.Present, lesson.Hour.Start + 2, 58);
                marks.Add(slip);
                var undo = Mark(lesson, laptop, sequences, by, mistaken.Person.Id, MarkKind.Cleared, lesson.Hour.Start + 3, 0);
                undo.Replaces = slip.Id;
                marks.Add(undo);
                mistaken = null;
            }

            marks.Add(Mark(lesson, laptop, sequences, by, tap.Stay.Person.Id, tap.Kind, tap.Minute, tap.Second));
        }

        if (evidence.AreConfirmed(lesson)) marks.AddRange(suggestions.Select(s => Confirmation(lesson, laptop, sequences, s)));
        if (special == Special.Clash) AddClashes(lesson, sequences, tapped, marks);
        if (special == Special.Corrected) AddCorrection(lesson, laptop, sequences, marks);
        return marks;
    }

    private void AddClashes(DemoLesson lesson, int[] sequences, List<Tapped> tapped, List<MarkRow> marks)
    {
        var by = cast.Adults[2].Id;
        var onTime = tapped.Where(t => t.Kind == MarkKind.Present && t.Minute <= lesson.Hour.Start).Take(2).ToList();
        if (onTime.Count < 2) return;
        marks.Add(Mark(lesson, Tablet, sequences, by, onTime[0].Stay.Person.Id, MarkKind.Present, lesson.Hour.Start + 11, 5));
        marks.Add(Mark(lesson, Tablet, sequences, by, onTime[1].Stay.Person.Id, MarkKind.Absent, lesson.Hour.Start + 12, 40));
    }

    private void AddCorrection(DemoLesson lesson, int laptop, int[] sequences, List<MarkRow> marks)
    {
        if (marks.Find(m => m.Kind == MarkKind.Absent) is not { } wrong) return;
        var right = Mark(lesson, laptop, sequences, cast.Head.Id, wrong.PersonId, MarkKind.Corrected, lesson.Hour.Start - 2, 0);
        right.Replaces = wrong.Id;
        right.Code = (int)MarkKind.Present;
        right.MadeAt = CorrectedAt(lesson);
        right.ReceivedAt = right.MadeAt.AddMilliseconds(15);
        marks.Add(right);
    }

    /// <summary>The morning after.</summary>
    public static DateTimeOffset CorrectedAt(DemoLesson lesson) => LondonTime.At(lesson.Row.Date.AddDays(1), 9 * 60 + 10);

    private MarkRow SeenMark(DemoLesson lesson, int device, int[] sequences, Tapped tap, DemoSeen seen, DemoEyes eyes)
    {
        var mark = Mark(lesson, device, sequences, eyes.By, tap.Stay.Person.Id, seen.Kind, tap.Minute, tap.Second);
        mark.At = null;
        mark.ItemId = seen.Item;
        mark.Code = seen.Code | (eyes.Signs(seen.Kind) ? MarkCode.ByRight : 0);
        return mark;
    }

    /// <summary>The head instructor stands behind it when the lesson is over.</summary>
    private MarkRow Confirmation(DemoLesson lesson, int device, int[] sequences, MarkRow of)
    {
        var mark = Mark(lesson, device, sequences, cast.Head.Id, of.PersonId, MarkKind.Confirmed, lesson.Hour.End, 30);
        mark.At = null;
        mark.ItemId = of.ItemId;
        mark.Code = MarkCode.ByRight;
        mark.Replaces = of.Id;
        return mark;
    }

    private MarkRow Mark(DemoLesson lesson, int device, int[] sequences, Guid by, Guid person, MarkKind kind, int minute, int second)
    {
        var madeAt = LondonTime.At(lesson.Row.Date, minute, second);
        var sequence = ++sequences[device];
        return new MarkRow
        {
            Club = 1,
            Id = making.Ids.Of(device == Tablet && making.Size == DemoSize.Small ? DemoPart.TabletMark : DemoPart.Mark, madeAt, device, sequence),
            DeviceId = devices[device].Id,
            Sequence = sequence,
            LessonId = lesson.Row.Id,
            PersonId = person,
            ById = by,
            MadeAt = madeAt,
            ReceivedAt = madeAt.AddMilliseconds(15),
            Kind = kind,
            At = DemoMaking.Time(minute),
        };
    }
}
