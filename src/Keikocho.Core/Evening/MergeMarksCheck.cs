using Keikocho.Core.Safety;

namespace Keikocho.Core.Evening;

/// <summary>
/// Judges a merge by laying the tablets' marks side by side: every state is judged from its own marks by the checks of the folds, and
/// every clash is looked for again, pair by pair of tablets.
/// </summary>
public static class MergeMarksCheck
{
    /// <summary>What is wrong with <paramref name="answer"/>, a sentence each; empty when it is right.</summary>
    public static IReadOnlyList<string> Objections(MergeSnapshot snapshot, MergeResult answer)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        ArgumentNullException.ThrowIfNull(answer);
        var rules = snapshot.Rules ?? new AttendanceRules();
        var marks = new SortedMarks(snapshot);
        var objections = new List<string>();
        void Expect(bool holds, string what)
        {
            if (!holds) objections.Add(what);
        }

        Expect(answer.Kept == snapshot.Marks.Select(m => m.Id).Distinct().Count(), "Every different mark is kept.");
        Expect(answer.Kept + answer.Repeats == snapshot.Marks.Count, "What is not kept came before.");
        Expect(answer.Knocks.Count == snapshot.Marks.Where(m => m.Kind == MarkKind.Knock).Select(m => m.Id).Distinct().Count(), "Every knock is shown.");

        var presence = marks.OfPresence.ToLookup(m => (m.Lesson, m.Person));
        Expect(answer.Register.Count == presence.Count, "The register has a line for each child and lesson that was marked.");
        foreach (var line in answer.Register)
        {
            TabletMark[] own = [.. presence[(line.Lesson, line.Person)]];
            Expect(own.Length > 0 && marks.Lesson(own[0]).On == line.On, "A line of the register is on the day of its lesson.");
            objections.AddRange(FoldAttendanceCheck.Objections([.. own.Select(SortedMarks.Presence)], snapshot.Lessons.Single(l => l.Lesson == line.Lesson).Times, rules, line.State));
            var clash = answer.Clashes.Any(c => c.Person == line.Person && c.On == line.On && c.Kind is MergeClashKind.PresentAndAbsent or MergeClashKind.OnTimeAndLate);
            Expect(line.State.Clash == AttendanceClash.None || clash, "A register on which tablets differ is shown as a clash.");
        }

        var items = marks.OfItems.ToLookup(m => (m.Mark.Person, m.Item), m => marks.Sighting(m.Mark));
        foreach (var line in answer.Sightings)
        {
            objections.AddRange(FoldSightingsCheck.Objections([.. items[(line.Person, line.Item)]], line.Evenings));
            foreach (var evening in line.Evenings)
            {
                var shown = answer.Clashes.Count(c => c.Kind == MergeClashKind.SeenDifferently && c.Person == line.Person && c.Item == line.Item && c.On == evening.On);
                Expect(shown == (evening.Word is null ? 1 : 0), "An evening that counts as nothing is a clash, and only such a one.");
            }
        }

        foreach (var none in items.Where(own => answer.Sightings.All(s => (s.Person, s.Item) != own.Key)))
            objections.AddRange(FoldSightingsCheck.Objections([.. none], []));

        foreach (var own in marks.OfFalls.GroupBy(m => m.Person))
        {
            FallMark[] shown = [.. answer.Falls.Where(f => f.Person == own.Key).SelectMany(f => f.Seen)
                .OrderBy(f => f.On).ThenBy(f => f.Device.Value).ThenBy(f => f.Sequence)];
            var judged = FoldFalls.Fold([.. own.Select(marks.Tap)]);
            Expect(shown.Length == judged.Count && judged.All(shown.Contains), "Every fall that stands is shown.");
            objections.AddRange(FoldFallsCheck.Objections([.. own.Select(marks.Tap)], judged));
        }

        foreach (var fall in answer.Falls)
        {
            Expect(fall.IsClean == fall.Seen.All(s => s.Clean), "The worse stands on a fall.");
            var differ = fall.Seen.Any(a => fall.Seen.Any(b => a.Device != b.Device)) && fall.Seen.Any(s => s.Clean) && fall.Seen.Any(s => !s.Clean);
            var way = new FallWay(fall.Direction, fall.Side);
            Expect(answer.Clashes.Any(c => c.Person == fall.Person && c.On == fall.On && c.Because is HeadTouchStands h && h.Way == way) == differ, "Tablets that differ on a fall are shown, both.");
        }

        return objections;
    }
}
