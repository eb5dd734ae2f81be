using Keikocho.Core.Evening;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Marks;

namespace Keikocho.Store.Demo;

/// <summary>What was seen of one child and the items of the next rank in one term: not yet, prompted, good, and good again.</summary>
internal sealed class DemoSightings(DemoMaking making, DemoSyllabus syllabus)
{
    /// <summary>What is critical was seen within so many days before today.</summary>
    private const int LatelyDays = 21;

    /// <summary>Plans one term.</summary>
    /// <param name="stay">The child.</param>
    /// <param name="term">Index of the term.</param>
    /// <param name="step">The rank worn, from 0.</param>
    /// <param name="lessons">Lessons of the term at which the child stayed to the end, before its test.</param>
    /// <param name="progress">How far the child has come.</param>
    /// <param name="child">The child as a sheet takes it, without what was asked before.</param>
    /// <param name="plan">Takes each thing seen.</param>
    public void Plan(Stay stay, int term, int step, IReadOnlyList<DemoLesson> lessons, DemoProgress progress, SheetChild child, Action<DemoLesson, DemoSeen> plan)
    {
        var prepared = syllabus.On(making.Terms[term].From);
        var edition = prepared.Edition;
        if (lessons.Count == 0 || step + 1 >= edition.Ranks.Count) return;
        var sheet = MakeSheet.Make(
            new SheetSnapshot(
                edition, edition.Ranks[step + 1].Key, making.Terms[term].Test, DemoSyllabus.UnitOf(term), [syllabus.AgeRule],
                child with { AskedBefore = AskedBefore(edition, step) }),
            prepared);
        var draw = Draw.About(making.Seed, DemoPart.Seen, stay.Number, term);
        List<Item> shown = [], asked = [], critical = [];
        foreach (var line in sheet.Lines)
        {
            foreach (var on in line.Items)
            {
                if (on.Item.Kind == ItemKind.Fall) continue;
                (IsAsked(on.Item.Kind) ? asked : shown).Add(on.Item);
                if (line.Critical) critical.Add(on.Item);
            }
        }

        // What may be drawn by lot is shown by all: nobody knows before the draw.
        shown.AddRange(MayBeDrawn(edition, step + 1));
        var present = term == making.Terms.Count - 1;
        Shown([.. shown.DistinctBy(i => i.Key)], lessons, progress, present, ref draw, plan);
        Asked([.. asked.DistinctBy(i => i.Key)], lessons, progress, ref draw, plan);
        var late = lessons.Where(l => l.Row.Date >= making.Today.AddDays(-LatelyDays)).ToList();
        if (!present || progress == DemoProgress.Few || late.Count == 0) return;
        foreach (var item in critical.DistinctBy(i => i.Key)) plan(late[draw.Below(late.Count)], Seen(item, SeenWord.Good));
    }

    private void Shown(List<Item> items, IReadOnlyList<DemoLesson> lessons, DemoProgress progress, bool present, ref Draw draw, Action<DemoLesson, DemoSeen> plan)
    {
        Shuffle(items, ref draw);
        var short_ = draw.Below(Math.Max(1, items.Count));
        for (var n = 0; n < items.Count; n++)
        {
            var words = new List<SeenWord>(4);
            if (draw.Chance(present ? 300 : 100)) words.Add(SeenWord.NotYet);
            if (draw.Chance(present ? 550 : 300)) words.Add(SeenWord.Prompted);
            var good = progress switch
            {
                DemoProgress.Done => 2,
                DemoProgress.Nearly => n == short_ ? 1 : 2,
                DemoProgress.Some => n % 3 == 2 ? draw.Below(2) : 2,
                _ => n % 4 == 0 ? 1 : 0,
            };
            if (progress == DemoProgress.Few && n % 2 == 1) continue;
            for (var i = 0; i < good; i++) words.Add(SeenWord.Good);
            // Later words count for more: what does not fit falls out in front.
            if (words.Count > lessons.Count) words.RemoveRange(0, words.Count - lessons.Count);
            var at = Math.Min((int)(n * 0.65 * lessons.Count / items.Count), lessons.Count - words.Count);
            for (var i = 0; i < words.Count; i++)
            {
                plan(lessons[at], Seen(items[n], words[i]));
                at += at + 2 <= lessons.Count - (words.Count - i - 1) ? 1 + draw.Below(2) : 1;
            }
        }
    }

    private void Asked(List<Item> items, IReadOnlyList<DemoLesson> lessons, DemoProgress progress, ref Draw draw, Action<DemoLesson, DemoSeen> plan)
    {
        for (var n = 0; n < items.Count; n++)
        {
            var at = n * lessons.Count / items.Count;
            var isRight = progress switch
            {
                DemoProgress.Done or DemoProgress.Nearly => true,
                DemoProgress.Some => !draw.Chance(200),
                _ => draw.Chance(300),
            };
            if (progress == DemoProgress.Few && !isRight) continue;
            if (draw.Chance(200) && at + 1 < lessons.Count) plan(lessons[at++], Seen(items[n], SeenWord.NotYet));
            plan(lessons[at], Seen(items[n], isRight ? SeenWord.Good : SeenWord.NotYet));
        }
    }

    private DemoSeen Seen(Item item, SeenWord word) => new(
        syllabus.ItemIds[item.Key],
        item.Kind is ItemKind.Word or ItemKind.Question ? MarkKind.Words : MarkKind.Sighting,
        EvidenceCode.OfWord(word));

    private static bool IsAsked(ItemKind kind) => kind is ItemKind.Word or ItemKind.Question or ItemKind.Etiquette;

    private static List<string> AskedBefore(Edition edition, int step) =>
        [.. edition.Ranks.Take(step + 1).SelectMany(r => r.Requirements).Where(r => r.Carry == Carry.OnceAskedStays).SelectMany(r => Named(r.Ask)).Distinct()];

    private static IEnumerable<Item> MayBeDrawn(Edition edition, int rank)
    {
        foreach (var drawn in edition.Ranks[rank].Requirements.Select(r => r.Ask).OfType<Ask.DrawnFromEarlier>())
        {
            var keys = edition.Ranks.Take(rank).Where(r => drawn.Ranks.Count == 0 || drawn.Ranks.Contains(r.Key)).SelectMany(r => r.Requirements).SelectMany(r => Named(r.Ask)).ToHashSet(StringComparer.Ordinal);
            foreach (var item in edition.Items)
                if (keys.Contains(item.Key) && item.Kind != ItemKind.Fall && (drawn.Kinds is null || drawn.Kinds.Contains(item.Kind))) yield return item;
        }
    }

    private static IReadOnlyList<string> Named(Ask ask) => ask switch
    {
        Ask.AllOf all => all.Items,
        Ask.AnyOf any => any.Items,
        Ask.FromPool pool => pool.Pool,
        _ => [],
    };

    private static void Shuffle(List<Item> items, ref Draw draw)
    {
        for (var i = items.Count - 1; i > 0; i--)
        {
            var other = draw.Below(i + 1);
            (items[i], items[other]) = (items[other], items[i]);
        }
    }
}
