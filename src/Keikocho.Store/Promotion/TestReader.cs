using System.Globalization;
using Keikocho.Store.Engines;
using Keikocho.Store.Kernel;

namespace Keikocho.Store.Promotion;

/// <summary>A verdict that was set against the sum, its reason opened.</summary>
/// <param name="PersonId">The child.</param>
/// <param name="Verdict">What holds instead, as the core numbers it.</param>
/// <param name="Why">The reason.</param>
/// <param name="ById">The instructor.</param>
/// <param name="MadeAt">When.</param>
public sealed record HeldOverrule(Guid PersonId, int Verdict, string Why, Guid ById, DateTimeOffset MadeAt);

/// <summary>An item that a child keeps from the newest test.</summary>
/// <param name="PersonId">The child.</param>
/// <param name="ItemId">The item.</param>
/// <param name="Until">Last day on which it is kept.</param>
public sealed record HeldPass(Guid PersonId, Guid ItemId, DateOnly Until);

/// <summary>What the club holds about children and one test, beside what was seen of them.</summary>
/// <param name="AnyRegistration">Whether the club holds any registration at all.</param>
/// <param name="RegisteredUntil">Last day of the newest registration of a child; a child without one, or with one without a day, is not in it.</param>
/// <param name="Passes">Passes kept from the newest result.</param>
/// <param name="Overrules">The overrule that holds, by child.</param>
public sealed record TestPapersHeld(
    bool AnyRegistration,
    IReadOnlyDictionary<Guid, DateOnly> RegisteredUntil,
    ILookup<Guid, HeldPass> Passes,
    IReadOnlyDictionary<Guid, HeldOverrule> Overrules);

/// <summary>Reads what a promotion test asks of papers, results and verdicts.</summary>
public static class TestReader
{
    /// <summary>Kind of the kept answer that a closed list is.</summary>
    public const string ListKind = "putForwardList";

    private const int Registration = 1, Result = 2, Overrule = 3, Any = 4;

    /// <summary>Everything about these children and this test; one statement, however many children there are.</summary>
    /// <param name="reading">The session.</param>
    /// <param name="people">The children.</param>
    /// <param name="test">The test whose overrules are asked for; null for none.</param>
    public static TestPapersHeld Of(ReadSession reading, IReadOnlyCollection<Guid> people, Guid? test)
    {
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(people);
        var ids = new IdList([.. people.Distinct().DefaultIfEmpty()]);
        var rows = reading.Rows(
            string.Create(CultureInfo.InvariantCulture, $"""
            SELECT {Registration}, "PersonId", "Id", CAST(NULL AS uuid), CAST(NULL AS uuid), "Expires", 0, "MadeAt", CAST(NULL AS bytea)
                FROM "Registrations" WHERE "Club" = @club AND "PersonId" IN ({ids.Names})
            UNION ALL SELECT {Result}, r."PersonId", r."Id", r."Replaces", p."ItemId", r."CarriedUntil", r."Verdict", r."MadeAt", CAST(NULL AS bytea)
                FROM "Results" AS r LEFT JOIN "PartPasses" AS p ON p."Club" = r."Club" AND p."ResultId" = r."Id"
                WHERE r."Club" = @club AND r."PersonId" IN ({ids.Names})
            UNION ALL SELECT {Overrule}, "PersonId", "Id", "ById", CAST(NULL AS uuid), CAST(NULL AS date), "Verdict", "MadeAt", "Why"
                FROM "Overrules" WHERE "Club" = @club AND "TestId" = @test AND "PersonId" IN ({ids.Names})
            UNION ALL SELECT {Any}, "Club0"."PersonId", "Club0"."Id", CAST(NULL AS uuid), CAST(NULL AS uuid), CAST(NULL AS date), 0, "Club0"."MadeAt", CAST(NULL AS bytea)
                FROM (SELECT "PersonId", "Id", "MadeAt" FROM "Registrations" WHERE "Club" = @club LIMIT 1) AS "Club0"
            """),
            row => new Row(row.Whole(), row.Id(), row.Id(), row.IdIfAny(), row.IdIfAny(), row.DayIfAny(), row.Whole(), row.Instant(), Seal.Open(row.SealedIfAny<string>())),
            [("@test", test ?? Guid.Empty), .. ids.Values]);
        var of = rows.ToLookup(r => r.What);
        var until = new Dictionary<Guid, DateOnly>();
        foreach (var own in of[Registration].GroupBy(r => r.Person))
        {
            // As on the child's page: the newest entry speaks, and of one moment the later day.
            if (own.OrderBy(r => r.MadeAt).ThenBy(r => r.Day ?? DateOnly.MinValue).Last().Day is { } day) until[own.Key] = day;
        }

        var overrules = of[Overrule].GroupBy(r => r.Person).Select(g => g.OrderBy(r => r.MadeAt).ThenBy(r => r.Id).Last()).Where(r => r.Number != 0)
            .ToDictionary(r => r.Person, r => new HeldOverrule(r.Person, r.Number, r.Words ?? "", r.Other!.Value, r.MadeAt));
        return new TestPapersHeld(of[Any].Any(), until, Passes(of[Result]), overrules);
    }

    /// <summary>The newest kept list of a test, with when and by whom; null while none was kept. One statement.</summary>
    public static KeptAnswerRow? ListOf(ReadSession reading, Guid test)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return reading.Rows(
            """
            SELECT "Id", "InputHash", "SumVersion", "Answer", "MadeAt", "ById" FROM "KeptAnswers"
            WHERE "Club" = @club AND "SubjectId" = @test AND "Kind" = @kind
            """,
            row => new KeptAnswerRow
            {
                Club = row.Club,
                Id = row.Id(),
                Kind = ListKind,
                SubjectId = test,
                InputHash = row.Bytes(),
                SumVersion = row.Text(),
                Answer = row.SealedIfAny<string>()!.Value,
                MadeAt = row.Instant(),
                ById = row.IdIfAny(),
            },
            ("@test", test), ("@kind", ListKind)).OrderBy(r => r.MadeAt).ThenBy(r => r.Id).LastOrDefault();
    }

    // A result that was corrected says nothing; a later one takes the place of an earlier one, and what was kept by it ends.
    private static ILookup<Guid, HeldPass> Passes(IEnumerable<Row> rows)
    {
        var results = rows.ToList();
        var replaced = results.Select(r => r.Other).OfType<Guid>().ToHashSet();
        return results.Where(r => !replaced.Contains(r.Id)).GroupBy(r => r.Person)
            .SelectMany(g => g.GroupBy(r => r.Id).OrderBy(r => r.First().MadeAt).ThenBy(r => r.Key).Last())
            .Where(r => r is { Day: not null, Item: not null })
            .Select(r => new HeldPass(r.Person, r.Item!.Value, r.Day!.Value)).ToLookup(p => p.PersonId);
    }

    private sealed record Row(int What, Guid Person, Guid Id, Guid? Other, Guid? Item, DateOnly? Day, int Number, DateTimeOffset MadeAt, string? Words);
}
