using System.Security.Cryptography;
using System.Text;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;
using Keikocho.Store.Kernel;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.Promotion;

/// <summary>An answer that was told or printed, to be kept as it is.</summary>
/// <param name="Id">Made with the form; the same id again keeps nothing twice.</param>
/// <param name="Kind">Which paper.</param>
/// <param name="SubjectId">The child.</param>
/// <param name="Question">Everything that it was reckoned from, as JSON; only its hash is kept.</param>
/// <param name="SumVersion">Version of the sum.</param>
/// <param name="Answer">The answer as JSON.</param>
public sealed record NewKeptAnswer(Guid Id, string Kind, Guid SubjectId, string Question, string SumVersion, string Answer);

/// <summary>An answer as it was kept.</summary>
/// <param name="Id">Which.</param>
/// <param name="Kind">Which paper.</param>
/// <param name="SubjectId">The child.</param>
/// <param name="SumVersion">Version of the sum.</param>
/// <param name="Answer">The answer as JSON.</param>
/// <param name="MadeAt">When it was kept.</param>
/// <param name="ById">By whom.</param>
public sealed record HeldAnswer(Guid Id, string Kind, Guid SubjectId, string SumVersion, string Answer, DateTimeOffset MadeAt, Guid? ById);

/// <summary>Answers kept as they were told. Rows are only added: what was told stays what was told.</summary>
public sealed class KeptAnswerStore(WriterQueue writer)
{
    /// <summary>The page that a family was told.</summary>
    public const string ParentsPage = "parents-page";

    /// <summary>A requirement sheet that was printed for a child.</summary>
    public const string Sheet = "sheet";

    /// <summary>Keeps one.</summary>
    /// <param name="asked">What.</param>
    /// <param name="by">Who told or printed it.</param>
    /// <param name="device">Where.</param>
    /// <param name="cancel">Counts only while it waits.</param>
    /// <returns>Its id; that of the one kept before where the same was told from the same facts; null where there is no such child.</returns>
    public Task<Guid?> KeepAsync(NewKeptAnswer asked, Guid by, Guid device, CancellationToken cancel) => writer.RunAsync<Guid?>(session =>
    {
        var db = session.Db;
        if (db.KeptAnswers.Any(k => k.Id == asked.Id && k.SubjectId == asked.SubjectId && k.Kind == asked.Kind)) return asked.Id;
        if (!db.People.Any(p => p.Id == asked.SubjectId && p.ErasedAt == null)) return null;
        var hash = SHA256.HashData(Encoding.UTF8.GetBytes(asked.Question));
        var newest = db.KeptAnswers.AsNoTracking().Where(k => k.SubjectId == asked.SubjectId && k.Kind == asked.Kind).AsEnumerable()
            .OrderBy(k => k.MadeAt).ThenBy(k => k.Id).LastOrDefault();
        if (newest is not null && newest.InputHash.AsSpan().SequenceEqual(hash) && newest.SumVersion == asked.SumVersion) return newest.Id;
        db.KeptAnswers.Add(new KeptAnswerRow
        {
            Club = session.Club,
            Id = asked.Id,
            Kind = asked.Kind,
            SubjectId = asked.SubjectId,
            InputHash = hash,
            SumVersion = asked.SumVersion,
            Answer = Seal.Close(asked.Answer),
            MadeAt = session.Now,
            ById = by,
        });
        db.SaveChanges();
        session.Note(TrailKind.AnswerKept, asked.SubjectId, by, device, hash);
        return asked.Id;
    }, cancel);

    /// <summary>What was kept about one child, newest first.</summary>
    public static IReadOnlyList<HeldAnswer> Of(KeikochoDb db, Guid subject)
    {
        ArgumentNullException.ThrowIfNull(db);
        return [.. db.KeptAnswers.AsNoTracking().Where(k => k.SubjectId == subject && (k.Kind == ParentsPage || k.Kind == Sheet)).AsEnumerable()
            .OrderByDescending(k => k.MadeAt).ThenByDescending(k => k.Id).Select(Held)];
    }

    /// <summary>One of them; null where there is none of this id.</summary>
    public static HeldAnswer? Find(KeikochoDb db, Guid id)
    {
        ArgumentNullException.ThrowIfNull(db);
        return db.KeptAnswers.AsNoTracking().FirstOrDefault(k => k.Id == id && k.SubjectId != null && (k.Kind == ParentsPage || k.Kind == Sheet)) is { } row ? Held(row) : null;
    }

    private static HeldAnswer Held(KeptAnswerRow row) => new(row.Id, row.Kind, row.SubjectId!.Value, row.SumVersion, Seal.Open(row.Answer), row.MadeAt, row.ById);
}
