using Keikocho.Core.Evening;

namespace Keikocho.Store.Demo;

/// <summary>What one child does at one lesson: present, excused or absent, and when.</summary>
internal readonly record struct DemoTap(MarkKind Kind, int Minute, int Second, int? LeftMinute)
{
    /// <summary>
    /// A question of its own for each child and lesson: the same answer for who counts lessons and for who makes marks, whatever the order.
    /// </summary>
    public static DemoTap Of(int seed, Stay stay, DemoLesson lesson)
    {
        var draw = Draw.About(seed, DemoPart.Attendance, stay.Number, lesson.Number);
        var date = lesson.Row.Date;
        var hour = lesson.Hour;
        var away = stay.AwayFrom is { } from && date >= from && date < stay.BackOn;
        if (stay.KnockOn is { } knock)
        {
            // There, and home early; from the next day on told us, until it may come again.
            if (date == knock) return new DemoTap(MarkKind.Present, hour.Start - 3, 20, hour.HalfTime + DemoKnocks.LeftAfterHalfTime);
            if (date > knock && (stay.MayComeOn is not { } again || date < again)) return new DemoTap(MarkKind.Excused, hour.Start - 6, 40, null);
        }

        var sure = date == stay.From || (stay.BackOn is { } back && (date >= back || date == stay.AwayFrom!.Value.AddDays(-1)));
        var comes = draw.Chance(stay.ComesPerMille);
        var told = draw.Chance(400);
        var second = draw.Below(60);
        if (away || (!comes && !sure))
        {
            return told
                ? new DemoTap(MarkKind.Excused, hour.Start - draw.Between(5, 9), second, null)
                : new DemoTap(MarkKind.Absent, hour.HalfTime + 3, second, null);
        }

        var late = draw.Chance(50) && !sure;
        var arrived = late ? hour.Start + draw.Between(6, 34) : hour.Start + draw.Between(-8, 4);
        int? left = null;
        var how = draw.Below(1000);
        if (how < 6 && !late) left = hour.HalfTime - draw.Between(3, 12);
        else if (how < 20) left = hour.HalfTime + draw.Between(8, 22);
        else if (stay.SignsOut) left = hour.End + draw.Below(4);
        return new DemoTap(MarkKind.Present, arrived, second, left);
    }

    /// <summary>On the mat before half time.</summary>
    public bool Counts(DemoHour hour) => Kind == MarkKind.Present && Minute < hour.HalfTime;
}
