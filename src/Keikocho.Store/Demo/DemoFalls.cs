using Keikocho.Core.Evening;
using Keikocho.Core.Safety;
using Keikocho.Store.Marks;
using Keikocho.Store.Safety;
using Keikocho.Store.Starter;

namespace Keikocho.Store.Demo;

/// <summary>
/// The falls of one child through the terms: a stage by what is worn and how long the child has come, shown again from the ground up
/// after a break or a lifted stand-down, seldom a touched head.
/// </summary>
internal static class DemoFalls
{
    /// <summary>A break of so many days shuts the gates; the proposal of the fall gate.</summary>
    private static readonly int Away = new FallGateRule().AwayDays;

    /// <summary>Plans them.</summary>
    /// <param name="making">The club.</param>
    /// <param name="stay">The child.</param>
    /// <param name="lessons">The lessons at which the child was, oldest first.</param>
    /// <param name="stepOn">The rank worn on a day, from 0.</param>
    /// <param name="part">What the demo promises of this child.</param>
    /// <param name="standDowns">The child's stand-downs.</param>
    /// <param name="plan">Takes each fall.</param>
    public static void Plan(
        DemoMaking making, Stay stay, IReadOnlyList<DemoPresence> lessons, Func<DateOnly, int> stepOn, FallPart part, IReadOnlyList<StandDownRow> standDowns, Action<DemoLesson, DemoSeen> plan)
    {
        if (part == FallPart.DoesNotFall) return;
        var draw = Draw.About(making.Seed, DemoPart.Falls, stay.Number);
        DateOnly? before = null;
        var again = false;
        var last = lessons.LastOrDefault(l => l.Falls && !Forbidden(standDowns, l.Lesson.Row.Date)).Lesson?.Number;
        for (var i = 0; i < lessons.Count; i++)
        {
            var (lesson, isThere, _) = lessons[i];
            var day = lesson.Row.Date;
            again |= (before is { } earlier && day.DayNumber - earlier.DayNumber >= Away) || standDowns.Any(s => s.LiftedOn is { } lifted && lifted <= day && !(before >= lifted));
            before = day;
            // The child who came back shows the falls again some other evening.
            if (!isThere || Forbidden(standDowns, day) || day >= stay.BackOn) continue;
            var present = lesson.Term == making.Terms.Count - 1;
            var step = stepOn(day);
            var watched = again || lesson.Number == last || (step == 0 ? i % 2 == 0 : i % (present ? 4 : 12) == 0);
            if (!watched) continue;
            var stage = Stage(step, i);
            foreach (var way in FallWay.All)
            {
                // In earlier terms the fall forward is left out where not everything is shown anew.
                if (way.Direction == FallDirection.Front && !again && !present) continue;
                var highest = way.Direction == FallDirection.Front ? Math.Min(stage, 3) : stage;
                // Of the large club two stages are enough.
                var from = !again ? highest : making.Size == DemoSize.Small ? 1 : Math.Max(1, highest - 1);
                var touched = highest == stage && (step == 0 && present ? draw.Chance(12) : draw.Chance(3));
                if (part == FallPart.TouchedLately && lesson.Number == last && way is { Direction: FallDirection.Side, Side: FallSide.Left }) touched = true;
                for (var s = from; s <= highest; s++)
                {
                    var clean = s < highest || !touched;
                    if (StarterFalls.Table.Has(way, s)) plan(lesson, new DemoSeen(MarkCode.Falls, MarkKind.Fall, EvidenceCode.OfFall(way, s, clean)));
                }
            }

            again = false;
        }
    }

    private static bool Forbidden(IReadOnlyList<StandDownRow> standDowns, DateOnly day) =>
        standDowns.Any(s => s.From <= day && (s.LiftedOn is not { } lifted || day < lifted));

    /// <summary>Lying, squatting and standing in the first lessons; with each belt a little more.</summary>
    private static int Stage(int step, int lesson) => step switch
    {
        0 => lesson < 3 ? 1 : lesson < 7 ? 2 : 3,
        1 => 4,
        2 => 5,
        _ => 6,
    };
}

/// <summary>What the demo promises of one child's falls.</summary>
internal enum FallPart
{
    /// <summary>Nothing special.</summary>
    Ordinary,
    /// <summary>No fall was ever marked, and no word of it.</summary>
    DoesNotFall,
    /// <summary>The head touched on the last evening.</summary>
    TouchedLately,
}
