using System.Collections.Immutable;
using System.Globalization;
using Keikocho.Core.Evening;
using Keikocho.Core.Safety;
using Keikocho.Store.Engines;
using Keikocho.Store.Kernel;
using Keikocho.Store.Safety;

namespace Keikocho.Store.Marks;

/// <summary>An agreed other way of showing an item.</summary>
/// <param name="ItemId">The item.</param>
/// <param name="Wording">How it is shown.</param>
/// <param name="AgreedOn">When it was agreed.</param>
/// <param name="ById">Who agreed it for the club.</param>
public sealed record HeldWay(Guid ItemId, string Wording, DateOnly AgreedOn, Guid ById);

/// <summary>An item chosen from a pool.</summary>
/// <param name="Requirement">Key of the rank and of its requirement.</param>
/// <param name="ItemId">The item.</param>
public sealed record HeldChoice(string Requirement, Guid ItemId);

/// <summary>Everything that the club saw of one child, and what stands for it.</summary>
/// <param name="PersonId">The child.</param>
/// <param name="Items">Evenings by item, oldest first; an item that nobody saw is not there.</param>
/// <param name="Falls">Every fall that stands.</param>
/// <param name="OnTheMat">Days of lessons attended from the day asked for, in order, each once.</param>
/// <param name="StandDowns">Every stand-down, lifted ones too, oldest first.</param>
/// <param name="Ways">Agreed ways that hold.</param>
/// <param name="Choices">Items chosen from pools.</param>
/// <param name="MatCutAt">Where days on the mat before this one were left out; null when all are there. A fall gate needs all of them.</param>
public sealed record ChildEvidence(
    Guid PersonId,
    IReadOnlyDictionary<Guid, IReadOnlyList<SeenEvening>> Items,
    IReadOnlyList<FallMark> Falls,
    ImmutableArray<DateOnly> OnTheMat,
    ImmutableArray<HeldStandDown> StandDowns,
    ImmutableArray<HeldWay> Ways,
    ImmutableArray<HeldChoice> Choices,
    DateOnly? MatCutAt = null)
{
    /// <summary>Evenings of items, and falls, that wait for somebody who may confirm them.</summary>
    public int Suggestions => Items.Values.Sum(e => e.Count(s => !s.Confirmed)) + Falls.Count(f => !f.Confirmed);
}

/// <summary>A mark that another took back or took the place of; both stay in the file.</summary>
/// <param name="Before">What was marked.</param>
/// <param name="After">What took it back or stands instead.</param>
/// <param name="On">Day of the lesson.</param>
public sealed record SeenChange(MarkRow Before, MarkRow After, DateOnly On);

/// <summary>The marks of something seen of one child.</summary>
/// <param name="Standing">Those that still speak, newest lesson first.</param>
/// <param name="Changes">What was taken back or corrected, newest lesson first.</param>
public sealed record SeenHistory(IReadOnlyList<(StandingMark Mark, DateOnly On)> Standing, IReadOnlyList<SeenChange> Changes);

/// <summary>Reads what was seen of children, and what stands for them: one statement, however many children there are.</summary>
public static class EvidenceReader
{
    private const int Item = 1, Fall = 2, Choice = 3, Days = 4, StandDown = 5, Way = 6;

    private const string StandDownColumns = """
        "From", "Id", "ById", "WhoseWord", "Scope", "ReviewOn", "MadeAt", "LiftedOn", "LiftedById", "LiftedWhy", "LiftEnteredOn"
        """;

    // In the place of these columns, where a row is not about what stands.
    private const string Nothing = """
        CAST(NULL AS date), CAST(NULL AS uuid), CAST(NULL AS uuid), CAST(NULL AS bytea), 0, CAST(NULL AS date), CAST(0 AS bigint), CAST(NULL AS date), CAST(NULL AS uuid), CAST(NULL AS bytea), CAST(NULL AS date)
        """;

    /// <summary>Everything about these children; who has nothing yet is in it all the same.</summary>
    /// <param name="reading">The session.</param>
    /// <param name="people">The children.</param>
    /// <param name="matFrom">First day of the days on the mat; null for all, which a fall gate needs: an absence before it is not seen.</param>
    /// <param name="to">Last day of the days on the mat.</param>
    public static Dictionary<Guid, ChildEvidence> Of(ReadSession reading, IReadOnlyCollection<Guid> people, DateOnly? matFrom, DateOnly to)
    {
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(people);
        if (people.Count == 0) return [];
        var ids = new IdList([.. people.Distinct()]);
        var rows = reading.Rows(
            string.Create(CultureInfo.InvariantCulture, $"""
            SELECT {Item}, "PersonId", "ItemId", "Evenings", {Nothing} FROM "ItemStates" WHERE "Club" = @club AND "PersonId" IN ({ids.Names})
            UNION ALL SELECT {Fall}, "PersonId", NULL, "Falls", {Nothing} FROM "FallStates" WHERE "Club" = @club AND "PersonId" IN ({ids.Names})
            UNION ALL SELECT {Choice}, "PersonId", "ItemId", "Requirement", {Nothing} FROM "ChosenItems" WHERE "Club" = @club AND "PersonId" IN ({ids.Names})
            UNION ALL SELECT {Days}, "PersonId", NULL, string_agg(CAST("Date" AS text), ' '), {Nothing} FROM "Attendances"
                WHERE "Club" = @club AND "PersonId" IN ({ids.Names}) AND "Date" >= @from AND "Date" <= @to AND "Counts" = @yes GROUP BY "PersonId"
            UNION ALL SELECT {StandDown}, "PersonId", NULL, NULL, {StandDownColumns} FROM "StandDowns" WHERE "Club" = @club AND "PersonId" IN ({ids.Names})
            UNION ALL SELECT {Way}, "PersonId", "ItemId", NULL, "AgreedOn", "Id", "ById", "Wording", 0, NULL, 0, NULL, NULL, NULL, NULL
                FROM "Adaptations" WHERE "Club" = @club AND "PersonId" IN ({ids.Names})
            """),
            row =>
            {
                var seen = new SeenRow(row.Whole(), row.Id(), row.IdIfAny(), row.TextIfAny());
                return seen.What switch
                {
                    StandDown => seen with { Held = Held(row, seen.Person) },
                    Way => seen with { Agreed = new WayRow(seen.ItemId!.Value, row.Day(), row.Id(), row.Id(), Seal.Open(row.SealedIfAny<string>())) },
                    _ => seen,
                };
            },
            [("@from", matFrom ?? DateOnly.MinValue), ("@to", to), ("@yes", true), .. ids.Values]).ToLookup(s => s.Person);
        return people.Distinct().ToDictionary(id => id, id => OneChild(id, rows[id]) with { MatCutAt = matFrom });
    }

    /// <summary>Every stand-down of these children, without the rest; one statement.</summary>
    public static ILookup<Guid, HeldStandDown> StandDownsOf(ReadSession reading, IReadOnlyCollection<Guid> people)
    {
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(people);
        if (people.Count == 0) return Array.Empty<HeldStandDown>().ToLookup(s => s.PersonId);
        var ids = new IdList([.. people.Distinct()]);
        return reading.Rows(
            $"""SELECT "PersonId", {StandDownColumns} FROM "StandDowns" WHERE "Club" = @club AND "PersonId" IN ({ids.Names})""",
            row => Held(row, row.Id()),
            [.. ids.Values]).OrderBy(s => s.From).ThenBy(s => s.MadeAt).ThenBy(s => s.Id).ToLookup(s => s.PersonId);
    }

    /// <summary>All marks of something seen of one child that still speak, newest lesson first; one statement.</summary>
    public static IReadOnlyList<(StandingMark Mark, DateOnly On)> MarksOf(ReadSession reading, Guid person) => HistoryOf(reading, person).Standing;

    /// <summary>The same, and what was taken back or corrected; one statement.</summary>
    public static SeenHistory HistoryOf(ReadSession reading, Guid person)
    {
        ArgumentNullException.ThrowIfNull(reading);
        var marks = reading.Rows(
            $"""
            SELECT {EvidenceStatements.Columns} FROM "Marks" AS m JOIN "Lessons" AS l ON l."Club" = m."Club" AND l."Id" = m."LessonId"
            WHERE m."Club" = @club AND m."PersonId" = @person AND m."ItemId" IS NOT NULL
            """,
            EvidenceStatements.Row,
            ("@person", person));
        var byId = marks.ToDictionary(m => m.Mark.Id);
        return new SeenHistory(
            [.. StandingEvidence.Of([.. marks.Select(m => m.Mark)]).Select(m => (m, byId[m.Mark.Id].On))
                .OrderByDescending(m => m.On).ThenBy(m => m.m.Mark.DeviceId).ThenBy(m => m.m.Mark.Sequence)],
            [.. marks.Where(m => m.Mark.Replaces is { } first && m.Mark.Kind != MarkKind.Confirmed && byId.ContainsKey(first) && EvidenceCode.Says(byId[first].Mark) is not null)
                .OrderByDescending(m => m.On).ThenBy(m => m.Mark.DeviceId).ThenByDescending(m => m.Mark.Sequence)
                .Select(m => new SeenChange(byId[m.Mark.Replaces!.Value].Mark, m.Mark, m.On))]);
    }

    private static ChildEvidence OneChild(Guid id, IEnumerable<SeenRow> seen)
    {
        var rows = seen.ToLookup(s => s.What);
        // The newest wording of an item holds; one without words says "the usual way again".
        var ways = rows[Way].Select(r => r.Agreed!).GroupBy(w => w.ItemId)
            .Select(g => g.OrderBy(w => w.AgreedOn).ThenBy(w => w.Id).Last()).Where(w => w.Wording is not null)
            .OrderBy(w => w.AgreedOn).ThenBy(w => w.ItemId);
        return new ChildEvidence(
            id,
            rows[Item].ToDictionary(r => r.ItemId!.Value, r => SeenPack.Unpack(r.Text!)),
            rows[Fall].Select(r => FallPack.Unpack(r.Text!)).FirstOrDefault() ?? [],
            [.. rows[Days].SelectMany(r => DaysOf(r.Text!)).Distinct().Order()],
            [.. rows[StandDown].Select(r => r.Held!).OrderBy(s => s.From).ThenBy(s => s.MadeAt).ThenBy(s => s.Id)],
            [.. ways.Select(w => new HeldWay(w.ItemId, w.Wording!, w.AgreedOn, w.By))],
            [.. rows[Choice].Select(r => new HeldChoice(r.Text!, r.ItemId!.Value)).OrderBy(c => c.Requirement, StringComparer.Ordinal).ThenBy(c => c.ItemId)]);
    }

    // One text a child: of ten years, row by row, the days took longer to fetch than all the rest of a page.
    private static List<DateOnly> DaysOf(string packed)
    {
        var text = packed.AsSpan();
        var days = new List<DateOnly>();
        foreach (var range in text.Split(' ')) days.Add(PackedText.Day(text[range]));
        return days;
    }

    private static HeldStandDown Held(StoredRow row, Guid person)
    {
        var (from, id, by, words) = (row.Day(), row.Id(), row.Id(), Seal.Open(row.SealedIfAny<string>()));
        return new HeldStandDown(id, person, (StandDownScope)row.Whole(), from, row.DayIfAny(), words, by, row.Instant(), row.DayIfAny(), row.IdIfAny(), Seal.Open(row.SealedIfAny<string>()), row.DayIfAny());
    }

    private sealed record SeenRow(int What, Guid Person, Guid? ItemId, string? Text, HeldStandDown? Held = null, WayRow? Agreed = null);

    private sealed record WayRow(Guid ItemId, DateOnly AgreedOn, Guid Id, Guid By, string? Wording);
}
