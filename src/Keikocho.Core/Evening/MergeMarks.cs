using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;

namespace Keikocho.Core.Evening;

/// <summary>
/// Merges the marks of several tablets. Nothing is thrown away, nothing across tablets depends on an order, and no clock is asked: the
/// lesson that a tablet joined names the evening of its marks.
/// </summary>
public static class MergeMarks
{
    /// <summary>Merges.</summary>
    /// <exception cref="ArgumentException">A mark of an unknown lesson or person, or two different marks with one id.</exception>
    public static MergeResult Merge(MergeSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        var rules = snapshot.Rules ?? new AttendanceRules();
        var marks = new SortedMarks(snapshot);
        var place = snapshot.People.Select((p, i) => (p.Person, i)).ToDictionary(p => p.Person, p => p.i);
        var tablets = marks.All.Select(m => m.Device).Distinct().OrderBy(d => d.Value).Select((d, i) => (d, i + 1)).ToDictionary(d => d.d, d => d.Item2);
        var named = (snapshot.Devices ?? []).GroupBy(d => d.Device).ToDictionary(g => g.Key, g => g.First().Name);
        string Place(DeviceId device) => named.GetValueOrDefault(device) ?? $"tablet {tablets[device]}";
        string Who(TabletMark m) => $"{Place(m.Device)}, {marks.Person(m.By).Name}";
        var clashes = new List<MergeClash>();

        var register = new List<MergedAttendance>();
        foreach (var own in marks.OfPresence.GroupBy(m => (m.Lesson, m.Person)).OrderBy(g => marks.Lesson(g.First()).On).ThenBy(g => marks.Lesson(g.First()).Times.Start)
            .ThenBy(g => g.Key.Lesson.Value).ThenBy(g => place[g.Key.Person]))
        {
            var lesson = marks.Lesson(own.First());
            var folded = FoldAttendance.Explain([.. own.Select(SortedMarks.Presence)], lesson.Times, rules);
            register.Add(new MergedAttendance(lesson.On, lesson.Lesson, own.Key.Person, folded.State, folded.Reasons));
            if (folded.State.Clash == AttendanceClash.None) continue;
            var speaking = folded.Trail.Where(t => t.Fate == MarkFate.Speaks && t.Mark.Kind != MarkKind.Confirmed).Select(t => t.Mark.Id).ToHashSet();
            var kind = folded.State.Clash == AttendanceClash.PresentAndAbsent ? MergeClashKind.PresentAndAbsent : MergeClashKind.OnTimeAndLate;
            clashes.Add(new MergeClash(kind, own.Key.Person, lesson.On, null,
                [.. InOrder(own.Where(m => speaking.Contains(m.Id)), tablets).Select(m => $"{Who(m)}: {MergeWords.Presence(m)}")],
                new DevicesDisagree(folded.State.Clash)));
        }

        var sightings = new List<MergedSightings>();
        foreach (var own in marks.OfItems.GroupBy(m => (m.Mark.Person, m.Item)).OrderBy(g => place[g.Key.Person]).ThenBy(g => g.Key.Item.Value))
        {
            var evenings = FoldSightings.Fold([.. own.Select(m => marks.Sighting(m.Mark))]);
            if (evenings.Count == 0) continue;
            sightings.Add(new MergedSightings(own.Key.Person, own.Key.Item, evenings));
            foreach (var evening in evenings.Where(e => e.Word is null))
            {
                clashes.Add(new MergeClash(MergeClashKind.SeenDifferently, own.Key.Person, evening.On, own.Key.Item,
                    [.. InOrder(own.Select(m => m.Mark).Where(m => m.Word is not null && marks.Lesson(m).On == evening.On), tablets).Select(m => $"{Who(m)}: {MergeWords.Seen(m.Word!.Value)}")],
                    new SeenDifferently(evening.On)));
            }
        }

        var falls = new List<MergedFalls>();
        foreach (var own in marks.OfFalls.GroupBy(m => m.Person).OrderBy(g => place[g.Key]))
        {
            foreach (var evening in FoldFalls.Fold([.. own.Select(marks.Tap)]).GroupBy(f => (f.On, f.Direction, f.Side)).OrderBy(g => g.Key))
            {
                FallMark[] seen = [.. evening];
                var (touched, clean) = (seen.Any(f => !f.Clean), seen.Any(f => f.Clean));
                falls.Add(new MergedFalls(own.Key, evening.Key.On, evening.Key.Direction, evening.Key.Side, clean && !touched, seen));
                if (touched && clean && seen.Select(f => f.Device).Distinct().Count() > 1)
                    clashes.Add(new MergeClash(MergeClashKind.FallSeenDifferently, own.Key, evening.Key.On, null,
                        [.. seen.Select(f => $"{Place(f.Device)}, {f.By}: {FallWords.Stage(f.Stage)} {(f.Clean ? "clean" : "head touched")}")],
                        new HeadTouchStands(evening.Key.On, new FallWay(evening.Key.Direction, evening.Key.Side))));
            }
        }

        MergedKnock[] knocks = [.. marks.Knocks.OrderBy(m => marks.Lesson(m).On).ThenBy(m => place[m.Person]).ThenBy(m => m.Id.Value).Select(m => new MergedKnock(m.Person, marks.Lesson(m).On, m.Id))];
        MergeClash[] inOrder = [.. clashes.OrderBy(c => place[c.Person]).ThenBy(c => c.On).ThenBy(c => c.Kind)];
        var reasons = new List<Reason> { new AllAreKept(marks.Count, tablets.Count, snapshot.Marks.Count - marks.Count) };
        reasons.AddRange(inOrder.Select(c => new ClashOf(marks.Person(c.Person).Name, c)));
        foreach (var device in tablets.OrderBy(t => t.Value).Select(t => t.Key))
        {
            var wrong = marks.All.Where(m => m.Device == device && DateOnly.FromDateTime(m.MadeAt.DateTime) != marks.Lesson(m).On).ToArray();
            if (wrong.Length > 0) reasons.Add(new ClockIsWrong(Place(device), wrong.Length));
        }

        var headline = $"{Words.Count(marks.Count, "mark")} of {Words.Count(tablets.Count, "tablet")}, "
            + (inOrder.Length == 0 ? "no clash" : Words.Count(inOrder.Length, "clash", "clashes"));
        return new MergeResult(headline, marks.Count, snapshot.Marks.Count - marks.Count, register, sightings, falls, knocks, inOrder, reasons, rules.Used());
    }

    private static IOrderedEnumerable<TabletMark> InOrder(IEnumerable<TabletMark> marks, Dictionary<DeviceId, int> tablets) =>
        marks.OrderBy(m => tablets[m.Device]).ThenBy(m => m.Sequence).ThenBy(m => m.Id.Value);
}
