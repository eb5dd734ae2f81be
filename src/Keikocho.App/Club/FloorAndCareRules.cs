using Keikocho.Core.Club;
using Keikocho.Core.Mat;
using Keikocho.Core.Safety;
using Keikocho.Store.Book;
using Keikocho.Store.Club;

namespace Keikocho.App.Club;

/// <summary>The settings of the mat plan and of the sums of care, as this club has them on a day.</summary>
public static class FloorAndCareRules
{
    /// <summary>The mat plan; the clear strip is the hall's own where it was measured.</summary>
    public static MatRules Mat(ClubBook book, HallRow hall, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(hall);
        var proposed = new MatRules();
        return new MatRules(
            ClubRules.Whole(book, "mat.throwingPairM2", day, proposed.ThrowingPairM2),
            ClubRules.Whole(book, "mat.techniquePairM2", day, proposed.TechniquePairM2),
            Math.Min(1_000, hall.StripCm ?? ClubRules.Whole(book, "mat.clearStripCm", day, proposed.ClearStripCm)),
            ClubRules.Whole(book, "mat.obstacleMarginCm", day, proposed.ObstacleMarginCm),
            ClubRules.Whole(book, "mat.leastSideCm", day, proposed.LeastSideCm),
            ClubRules.Whole(book, "mat.beginnerPlaceM2", day, proposed.BeginnerPlaceM2),
            book.Setting("mat.floor", day) == "perPair" ? FloorRule.PerPair : FloorRule.PerChild);
    }

    /// <summary>Knocks by activity.</summary>
    public static KnocksRule Knocks(ClubBook book, DateOnly day)
    {
        var proposed = new KnocksRule();
        return new KnocksRule(
            ClubRules.Whole(book, "knocks.tooFewBelow", day, proposed.TooFewBelow), ClubRules.Whole(book, "knocks.intervalPercent", day, proposed.IntervalPercent));
    }

    /// <summary>Who is slipping away.</summary>
    public static SlippingRule Slipping(ClubBook book, DateOnly day)
    {
        var proposed = new SlippingRule();
        return new SlippingRule(ClubRules.Whole(book, "slipping.inFirstCourse", day, proposed.InFirstCourse), ClubRules.Whole(book, "slipping.after", day, proposed.After));
    }

    /// <summary>The emergency number as the club has set it.</summary>
    public static string EmergencyNumber(ClubBook book, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(book);
        return book.Setting(WatchFor.EmergencyNumber.Key, day) ?? WatchFor.EmergencyNumber.Proposed;
    }

    /// <summary>Care notes and the red folder.</summary>
    public static RedFolderRule Folder(ClubBook book, DateOnly day)
    {
        var proposed = new RedFolderRule();
        return new RedFolderRule(
            ClubRules.Whole(book, "care.askAgainMonths", day, proposed.AskAgainMonths), ClubRules.Whole(book, "folder.shredAfterDays", day, proposed.ShredAfterDays));
    }

    /// <summary>The leaders' share.</summary>
    public static LeadersRule Leaders(ClubBook book, DateOnly day) => new(ClubRules.Whole(book, "leaders.trainedPercent", day, new LeadersRule().TrainedPercent));
}
