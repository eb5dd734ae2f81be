using Keikocho.Core.Safety;
using Keikocho.Store.Engines;
using Keikocho.Store.Kernel;

namespace Keikocho.Store.Safety;

/// <summary>Reads knocks with their records: two statements, however many there are.</summary>
public static class KnockReader
{
    private const string Knocks = """
        SELECT k."Id", k."PersonId", k."LessonId", k."On", k."Activity", k."NearMiss", k."MadeAt",
            (SELECT m."ById" FROM "Marks" AS m WHERE m."Club" = k."Club" AND m."Id" = k."Id" AND m."LessonId" = k."LessonId")
        FROM "Knocks" AS k WHERE k."Club" = @club AND k.
        """;

    private const string Lines = """
        SELECT l."Id", l."KnockId", l."Kind", l."On", l."Words", l."ById", l."MadeAt"
        FROM "KnockLines" AS l JOIN "Knocks" AS k ON k."Club" = l."Club" AND k."Id" = l."KnockId" WHERE l."Club" = @club AND k.
        """;

    /// <summary>One; null when there is none.</summary>
    public static HeldKnock? One(ReadSession reading, Guid knock) => Read(reading, "Id", [knock]) is [var one, ..] ? one : null;

    /// <summary>Those of one child, newest first.</summary>
    public static IReadOnlyList<HeldKnock> OfPerson(ReadSession reading, Guid person) => Read(reading, "PersonId", [person]);

    /// <summary>Those of these children, newest first.</summary>
    public static ILookup<Guid, HeldKnock> OfPeople(ReadSession reading, IReadOnlyCollection<Guid> people) => Read(reading, "PersonId", people).ToLookup(k => k.PersonId);

    /// <summary>Those of lessons, newest first: of an evening, give all its lessons.</summary>
    public static IReadOnlyList<HeldKnock> OfLessons(ReadSession reading, IReadOnlyCollection<Guid> lessons) => Read(reading, "LessonId", lessons);

    private static IReadOnlyList<HeldKnock> Read(ReadSession reading, string column, IReadOnlyCollection<Guid> asked)
    {
        ArgumentNullException.ThrowIfNull(reading);
        if (asked.Count == 0) return [];
        var ids = new IdList([.. asked.Distinct()]);
        var where = $"\"{column}\" IN ({ids.Names})";
        var knocks = reading.Rows(
            Knocks + where,
            row => new HeldKnock(row.Id(), row.Id(), row.Id(), row.Day(), (KnockActivity)row.Whole(), row.Yes(), MadeAt: row.Instant(), ById: row.IdIfAny(), Lines: []),
            [.. ids.Values]);
        if (knocks.Count == 0) return [];
        var lines = reading.Rows(
            Lines + where,
            row => new HeldKnockLine(row.Id(), row.Id(), (KnockLine)row.Whole(), row.DayIfAny(), Seal.Open(row.SealedIfAny<string>()), row.Id(), row.Instant()),
            [.. ids.Values]);
        return InOrder(knocks, lines);
    }

    /// <summary>As inside a write transaction.</summary>
    internal static IReadOnlyList<HeldKnock> OfPerson(WriteSession session, Guid person)
    {
        var knocks = session.Db.Knocks.Where(k => k.PersonId == person).ToList();
        if (knocks.Count == 0) return [];
        var ids = knocks.Select(k => k.Id).ToList();
        var lines = session.Db.KnockLines.Where(l => ids.Contains(l.KnockId)).ToList()
            .Select(l => new HeldKnockLine(l.Id, l.KnockId, l.Kind, l.On, Seal.Open(l.Words), l.ById, l.MadeAt));
        return InOrder(knocks.Select(k => new HeldKnock(k.Id, k.PersonId, k.LessonId, k.On, (KnockActivity)k.Activity, k.NearMiss, null, k.MadeAt, [])), lines);
    }

    /// <summary>Knocks with their lines, newest first, and the lines as they were written.</summary>
    internal static IReadOnlyList<HeldKnock> InOrder(IEnumerable<HeldKnock> knocks, IEnumerable<HeldKnockLine> lines)
    {
        var own = lines.OrderBy(l => l.MadeAt).ThenBy(l => l.Id).ToLookup(l => l.KnockId);
        return [.. knocks.Select(k => k with { Lines = [.. own[k.Id]] }).OrderByDescending(k => k.On).ThenByDescending(k => k.MadeAt).ThenBy(k => k.Id)];
    }
}
