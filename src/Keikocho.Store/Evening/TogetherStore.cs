using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;

namespace Keikocho.Store.Evening;

/// <summary>Groups that stand at one end of a lesson, for one activity.</summary>
/// <param name="Round">Which making of pairs of the evening, from 1.</param>
/// <param name="Links">Two who work together each; a three is two of them, the middle in both.</param>
public sealed record StandingLinks(int Round, IReadOnlyList<(Guid One, Guid Other)> Links);

/// <summary>Who works together.</summary>
public sealed class TogetherStore(WriterQueue writer)
{
    /// <summary>
    /// Puts these together, one round more; answers the round. Where they repair a round that stands, what is no more of it is undone, and
    /// the round stays.
    /// </summary>
    /// <param name="lesson">The lesson.</param>
    /// <param name="activity">The activity, as the core numbers it.</param>
    /// <param name="links">Two who work together each.</param>
    /// <param name="repairs">The round that they repair; null for a new one.</param>
    /// <param name="by">Who.</param>
    /// <param name="device">Where.</param>
    /// <param name="cancel">Counts only while it waits.</param>
    public Task<int?> UseAsync(Guid lesson, int activity, IReadOnlyList<(Guid One, Guid Other)> links, int? repairs, Guid by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        var db = session.Db;
        if (!db.Lessons.Any(l => l.Id == lesson)) return (int?)null;
        var asked = links.Select(l => Ordered(l.One, l.Other)).ToHashSet();
        var people = asked.SelectMany(l => new[] { l.One, l.Other }).Distinct().ToList();
        if (db.People.Count(p => people.Contains(p.Id) && p.ErasedAt == null) != people.Count) return null;
        var round = repairs ?? 1 + (db.Togethers.Where(t => t.LessonId == lesson).Select(t => (int?)t.Round).Max() ?? 0);
        foreach (var row in db.Togethers.Where(t => t.LessonId == lesson && t.Round == round && t.UndoneAt == null).ToList())
        {
            if (!asked.Remove(Ordered(row.OneId, row.OtherId))) row.UndoneAt = session.Now;
        }

        foreach (var (one, other) in asked.OrderBy(l => l.One).ThenBy(l => l.Other))
            db.Togethers.Add(new TogetherRow { Club = session.Club, Id = session.NewId(), LessonId = lesson, OneId = one, OtherId = other, Round = round, Activity = activity, MadeAt = session.Now });
        db.SaveChanges();
        session.Note(TrailKind.TogetherChanged, lesson, by, device);
        return round;
    }, cancel);

    private static (Guid One, Guid Other) Ordered(Guid one, Guid other) => one.CompareTo(other) < 0 ? (one, other) : (other, one);
}

/// <summary>Reads who worked together.</summary>
public static class TogetherReader
{
    /// <summary>Links of lessons that hold, with the lesson's id.</summary>
    public static IReadOnlyList<(Guid Lesson, Guid One, Guid Other)> OfLessons(ReadSession reading, IReadOnlyCollection<Guid> lessons)
    {
        ArgumentNullException.ThrowIfNull(reading);
        if (lessons.Count == 0) return [];
        var ids = new IdList(lessons);
        return reading.Rows(
            $"""SELECT "LessonId", "OneId", "OtherId" FROM "Togethers" WHERE "Club" = @club AND "UndoneAt" IS NULL AND "LessonId" IN ({ids.Names})""",
            row => (row.Id(), row.Id(), row.Id()), [.. ids.Values]);
    }

    /// <summary>The rounds of a lesson for one activity that hold, newest first.</summary>
    public static IReadOnlyList<StandingLinks> Rounds(ReadSession reading, Guid lesson, int activity)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return
        [
            .. reading.Rows(
                """SELECT "Round", "OneId", "OtherId" FROM "Togethers" WHERE "Club" = @club AND "LessonId" = @lesson AND "Activity" = @activity AND "UndoneAt" IS NULL""",
                row => (Round: row.Whole(), One: row.Id(), Other: row.Id()), ("@lesson", lesson), ("@activity", activity))
            .GroupBy(r => r.Round).OrderByDescending(r => r.Key).Select(r => new StandingLinks(r.Key, [.. r.Select(l => (l.One, l.Other))])),
        ];
    }
}
