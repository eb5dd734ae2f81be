using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;
using Keikocho.Store.Kernel;

namespace Keikocho.Store.Promotion;

/// <summary>What came of it.</summary>
public enum TestOutcome
{
    /// <summary>Stored.</summary>
    Stored,
    /// <summary>It stands so already; nothing was changed.</summary>
    AlreadyStored,
    /// <summary>There is no such test or child, or nothing to take back.</summary>
    Unknown,
    /// <summary>A reason is needed.</summary>
    NotSaid,
    /// <summary>The results are locked, or the list was changed elsewhere since it was read.</summary>
    TooLate,
}

/// <summary>Verdicts that were set against the sum, and the lists that were closed. Rows are only added; the newest holds.</summary>
public sealed class PromotionStore(WriterQueue writer)
{
    /// <summary>Sets a verdict of one child at one test; 0 takes an earlier one back.</summary>
    /// <param name="id">Made with the form; the same id again changes nothing.</param>
    /// <param name="test">The test.</param>
    /// <param name="person">The child.</param>
    /// <param name="verdict">As the core numbers it, or 0.</param>
    /// <param name="why">The reason; needed for a verdict.</param>
    /// <param name="by">The instructor.</param>
    /// <param name="device">Where.</param>
    /// <param name="cancel">Counts only while it waits.</param>
    public Task<TestOutcome> OverruleAsync(Guid id, Guid test, Guid person, int verdict, string? why, Guid by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        var db = session.Db;
        if (verdict is < 0 or > 3 || (verdict > 0 && string.IsNullOrWhiteSpace(why))) return TestOutcome.NotSaid;
        if (db.Overrules.Any(o => o.Id == id)) return TestOutcome.AlreadyStored;
        if (db.PromotionTests.FirstOrDefault(t => t.Id == test) is not { } row || !db.People.Any(p => p.Id == person && p.ErasedAt == null)) return TestOutcome.Unknown;
        if (row.ResultsLockedAt is not null) return TestOutcome.TooLate;
        var newest = db.Overrules.Where(o => o.TestId == test && o.PersonId == person).OrderByDescending(o => o.MadeAt).ThenByDescending(o => o.Id).FirstOrDefault();
        if (verdict == 0 && newest is not { Verdict: not 0 }) return TestOutcome.Unknown;
        // Two words of one moment are in the order in which they were stored.
        var at = newest is not null && newest.MadeAt >= session.Now ? newest.MadeAt.AddMilliseconds(1) : session.Now;
        db.Overrules.Add(new OverruleRow
        {
            Club = session.Club,
            Id = id,
            TestId = test,
            PersonId = person,
            Verdict = verdict,
            Why = Seal.Close(verdict == 0 ? "" : why!.Trim()),
            ById = by,
            MadeAt = at,
        });
        db.SaveChanges();
        Revise.People(session);
        session.Note(TrailKind.VerdictOverruled, person, by, device);
        return TestOutcome.Stored;
    }, cancel);

    /// <summary>Closes the list of a test: keeps the answer as it is, with the hash of its inputs.</summary>
    /// <param name="id">Made with the form.</param>
    /// <param name="test">The test.</param>
    /// <param name="inputHash">SHA-256 of the questions.</param>
    /// <param name="version">Version of the sum.</param>
    /// <param name="answer">The list, as JSON.</param>
    /// <param name="by">The instructor.</param>
    /// <param name="device">Where.</param>
    /// <param name="cancel">Counts only while it waits.</param>
    public Task<TestOutcome> CloseListAsync(Guid id, Guid test, byte[] inputHash, string version, string answer, Guid by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        if (session.Db.PromotionTests.FirstOrDefault(t => t.Id == test) is not { } row) return TestOutcome.Unknown;
        if (row.ListClosedAt is not null) return TestOutcome.AlreadyStored;
        row.ListClosedAt = session.Now;
        Keep(session, id, test, inputHash, version, answer, session.Now, by);
        session.Db.SaveChanges();
        Revise.Calendar(session);
        session.Note(TrailKind.AnswerKept, test, by, device);
        return TestOutcome.Stored;
    }, cancel);

    /// <summary>Keeps a closed list with one more decision in it.</summary>
    /// <param name="id">Made with the form; the same id again changes nothing.</param>
    /// <param name="test">The test.</param>
    /// <param name="basis">The kept list that was decided on: a list that was changed elsewhere meanwhile is not written over.</param>
    /// <param name="answer">The list with the decision, as JSON.</param>
    /// <param name="by">The instructor.</param>
    /// <param name="device">Where.</param>
    /// <param name="cancel">Counts only while it waits.</param>
    public Task<TestOutcome> DecideAsync(Guid id, Guid test, Guid basis, string answer, Guid by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        var db = session.Db;
        if (db.KeptAnswers.Any(k => k.Id == id)) return TestOutcome.AlreadyStored;
        if (db.PromotionTests.FirstOrDefault(t => t.Id == test) is not { ListClosedAt: not null } row) return TestOutcome.Unknown;
        var newest = db.KeptAnswers.Where(k => k.SubjectId == test && k.Kind == TestReader.ListKind).OrderByDescending(k => k.MadeAt).ThenByDescending(k => k.Id).FirstOrDefault();
        if (row.ResultsLockedAt is not null || newest?.Id != basis) return TestOutcome.TooLate;
        var at = newest.MadeAt >= session.Now ? newest.MadeAt.AddMilliseconds(1) : session.Now;
        Keep(session, id, test, newest.InputHash, newest.SumVersion, answer, at, by);
        db.SaveChanges();
        session.Note(TrailKind.AnswerKept, test, by, device);
        return TestOutcome.Stored;
    }, cancel);

    private static void Keep(WriteSession session, Guid id, Guid test, byte[] inputHash, string version, string answer, DateTimeOffset at, Guid by) =>
        session.Db.KeptAnswers.Add(new KeptAnswerRow
        {
            Club = session.Club,
            Id = id,
            Kind = TestReader.ListKind,
            SubjectId = test,
            InputHash = inputHash,
            SumVersion = version,
            Answer = Seal.Close(answer),
            MadeAt = at,
            ById = by,
        });
}
