using Keikocho.Store.Engines;

namespace Keikocho.Store.Syllabus;

/// <summary>Reads the draft of a ladder. Drafts are not in the book: only their own pages ask for them.</summary>
public static class DraftReader
{
    /// <summary>The ladder's draft in one question; null while it has none.</summary>
    public static EditionDraft? Of(ReadSession reading, Guid? ladder)
    {
        ArgumentNullException.ThrowIfNull(reading);
        if (ladder is not { } some) return null;
        // Only the last step's document is fetched: each holds the whole draft.
        var rows = reading.Rows(
            """
            SELECT e."Id", d."Step", d."Said", d."MadeAt", d."ById",
                CASE WHEN d."Step" = (SELECT max(l."Step") FROM "EditionDrafts" AS l WHERE l."Club" = @club AND l."EditionId" = e."Id") THEN d."Document" END
            FROM "Editions" AS e JOIN "EditionDrafts" AS d ON d."Club" = e."Club" AND d."EditionId" = e."Id"
            WHERE e."Club" = @club AND e."LadderId" = @ladder AND e."PublishedAt" IS NULL ORDER BY d."Step"
            """,
            row => (Id: row.Id(), Step: new DraftStep(row.Whole(), row.Text(), row.Instant(), row.IdIfAny()), Document: row.TextIfAny()),
            ("@ladder", some));
        return rows.Count == 0 ? null : new EditionDraft(rows[^1].Id, some, EditionDocument.Read(rows[^1].Document!), [.. rows.Select(r => r.Step)]);
    }
}
