using System.Globalization;
using System.Text.Json;
using Keikocho.Core.Evening;
using Keikocho.Core.Intake;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;
using Keikocho.Store.Kernel;

namespace Keikocho.Store.Intake;

/// <summary>A file to be read in.</summary>
/// <param name="Id">Id of the reading, made by the caller; the same id again opens nothing twice.</param>
/// <param name="FileName">The file's name.</param>
/// <param name="Hash">SHA-256 of the file.</param>
/// <param name="Kind">Roster, register or sign-off grid.</param>
/// <param name="ProgrammeId">The programme it is for.</param>
/// <param name="File">What is kept of it.</param>
/// <param name="SheetNumber">The sheet to be read, from 1.</param>
public sealed record NewReading(Guid Id, string FileName, byte[] Hash, ReadingKind Kind, Guid ProgrammeId, PackedFile File, int SheetNumber);

/// <summary>What came of saving.</summary>
public abstract record SaveOutcome
{
    private SaveOutcome() { }

    /// <summary>Saved, and on disk.</summary>
    public sealed record Saved(ReadingSummary Summary) : SaveOutcome;

    /// <summary>Doubts are open; nothing was saved.</summary>
    public sealed record NotSettled(int Open) : SaveOutcome;

    /// <summary>The club has changed since it was looked at, and something else would be saved; nothing was.</summary>
    public sealed record Stale : SaveOutcome;

    /// <summary>It is not there, or saved, dropped or undone already; nothing was saved.</summary>
    public sealed record NotOpen : SaveOutcome;

    /// <summary>The independent check found a fault in the reading itself; nothing was saved.</summary>
    public sealed record Faulty(string Fault) : SaveOutcome;
}

/// <summary>Readings of the club's own files: opened, answered, saved, taken back.</summary>
public sealed class ReadingStore(WriterQueue writer)
{
    /// <summary>Opens a reading. A file that was saved before brings its answers along.</summary>
    /// <returns>Whether answers were taken over.</returns>
    public Task<bool> OpenAsync(NewReading asked, Guid? by, CancellationToken cancel) => writer.RunAsync(session =>
    {
        var db = session.Db;
        if (db.Readings.Any(r => r.Id == asked.Id)) return false;
        var answers = ReadingReader.EarlierAnswers(db, asked.Kind, asked.Hash).ByKey.ToDictionary();
        var known = answers.Count > 0;
        answers.TryAdd(ReadAgain.SheetKey, asked.SheetNumber.ToString(CultureInfo.InvariantCulture));
        db.Readings.Add(new ReadingRow
        {
            Club = session.Club,
            Id = asked.Id,
            Kind = asked.Kind,
            FileName = Seal.Close(asked.FileName),
            FileHash = asked.Hash,
            Tables = Seal.Close(SheetPack.Pack(Kept(asked.File, new Answers(answers)))),
            Answers = Close(answers),
            ProgrammeId = asked.ProgrammeId,
            ById = by,
            MadeAt = session.Now,
        });
        db.SaveChanges();
        return known;
    }, cancel);

    /// <summary>Keeps answers; an empty one takes an answer back. Kind and programme may be changed with them.</summary>
    /// <returns>False when the reading is not open.</returns>
    public Task<bool> AnswerAsync(Guid reading, IReadOnlyDictionary<string, string> given, ReadingKind? kind, Guid? programme, CancellationToken cancel) => writer.RunAsync(session =>
    {
        var row = session.Db.Readings.FirstOrDefault(r => r.Id == reading && r.Stage == ReadingStage.Open);
        if (row is null) return false;
        var answers = ReadingReader.Answers(row).ByKey.ToDictionary();
        foreach (var (key, answer) in given)
            if (answer.Length == 0) answers.Remove(key);
            else answers[key] = answer;
        row.Answers = Close(answers);
        row.Kind = kind ?? row.Kind;
        if (programme is { } other && session.Db.Programmes.Any(p => p.Id == other)) row.ProgrammeId = other;
        // A column that is now said to be medical or a size goes from what is stored.
        if (given.Keys.Any(key => key.StartsWith(ReadAgain.ColumnKey, StringComparison.Ordinal)))
            row.Tables = Seal.Close(SheetPack.Pack(Kept(SheetPack.Unpack(Seal.Open(row.Tables!.Value)), new Answers(answers))));
        session.Db.SaveChanges();
        return true;
    }, cancel);

    /// <summary>Drops an open reading: what was stored of the file goes.</summary>
    public Task<bool> DropAsync(Guid reading, CancellationToken cancel) => writer.RunAsync(session =>
    {
        var row = session.Db.Readings.FirstOrDefault(r => r.Id == reading && r.Stage == ReadingStage.Open);
        if (row is null) return false;
        (row.Stage, row.Tables, row.Answers) = (ReadingStage.Dropped, null, null);
        session.Db.SaveChanges();
        return true;
    }, cancel);

    /// <summary>Saves a settled reading in one transaction, against the club as it is at that moment.</summary>
    /// <param name="reading">Which.</param>
    /// <param name="fingerprint">What was looked at (<see cref="ReadingView.Fingerprint"/>); null where nobody looked.</param>
    /// <param name="today">The club's date today.</param>
    /// <param name="rules">How marks are folded.</param>
    /// <param name="by">The acting adult.</param>
    /// <param name="device">The device.</param>
    /// <param name="cancel">Counts only while it waits.</param>
    public Task<SaveOutcome> SaveAsync(Guid reading, string? fingerprint, DateOnly today, AttendanceRules rules, Guid? by, Guid? device, CancellationToken cancel) => writer.RunAsync<SaveOutcome>(session =>
    {
        var db = session.Db;
        var row = db.Readings.FirstOrDefault(r => r.Id == reading);
        if (row is not { Stage: ReadingStage.Open, Tables: { } tables, ProgrammeId: { } programme } || ClubFacts.Load(db, programme, row.Kind, today) is not { } facts) return new SaveOutcome.NotOpen();
        var answers = ReadingReader.Answers(row);
        var view = ReadAgain.Read(row.Kind, SheetPack.Unpack(Seal.Open(tables)).Sheets, answers, facts, today);
        if (!view.IsSettled) return new SaveOutcome.NotSettled(view.Open.Count());
        if (fingerprint is not null && fingerprint != view.Fingerprint()) return new SaveOutcome.Stale();
        if (view.Faults() is [var fault, ..]) return new SaveOutcome.Faulty(fault);
        row.ById = by;
        var summary = row.Kind switch
        {
            ReadingKind.Roster => new SaveRoster(session, row, view, facts, today).Save(),
            ReadingKind.SignOffs => new SaveSignOffs(session, row, view, facts).Save(),
            _ => new SaveRegister(session, row, view, facts, rules).Save(),
        };
        row.Stage = ReadingStage.Saved;
        row.SavedAt = session.Now;
        row.Summary = summary.Close();
        row.Tables = null;
        row.Answers = Close(WithRanks(answers, view));
        session.Note(TrailKind.FileRead, row.Id, by, device, row.FileHash);
        return new SaveOutcome.Saved(summary);
    }, cancel);

    /// <summary>Takes a saved reading back.</summary>
    /// <returns>What was done; null when it is not saved, or undone already.</returns>
    public Task<ReadingSummary?> UndoAsync(Guid reading, AttendanceRules rules, Guid? by, Guid? device, CancellationToken cancel) => writer.RunAsync<ReadingSummary?>(session =>
    {
        var row = session.Db.Readings.FirstOrDefault(r => r.Id == reading && r.Stage == ReadingStage.Saved);
        if (row is null) return null;
        var summary = new UndoReading(session, row, rules).Undo(ReadingSummary.Of(row)!);
        // The undo's own questions have let go of what the context held.
        row = session.Db.Readings.Single(r => r.Id == reading);
        row.Stage = ReadingStage.Undone;
        row.UndoneAt = session.Now;
        row.Summary = summary.Close();
        session.Note(TrailKind.ReadingUndone, row.Id, by, device);
        return summary;
    }, cancel);

    private static PackedFile Kept(PackedFile file, Answers answers)
    {
        var chosen = ReadAgain.SheetNumber(answers, file.Sheets.Count) - 1;
        var said = ReadAgain.Said(answers);
        return said.Count == 0 ? file : file with { Sheets = [.. file.Sheets.Select((sheet, i) => i == chosen ? SheetPack.Kept(sheet, said) : sheet)] };
    }

    // The spellings that made one rank are known the next time the file comes.
    private static Dictionary<string, string> WithRanks(Answers answers, ReadingView view)
    {
        var all = answers.ByKey.ToDictionary();
        foreach (var rank in view.Ladder?.Ranks ?? [])
            foreach (var spelling in rank.Spellings.Where(spelling => NameFold.Fold(spelling) != NameFold.Fold(rank.Name))) all[$"rank:{NameFold.Fold(spelling)}"] = "rank:" + rank.Name;
        // Words that were left out of the ladder stay left out.
        foreach (var word in view.Ladder is null ? [] : view.Roster!.Lines.Select(line => line.Child.Rank).Where(word => word.Length > 0 && view.Ladder.Of(word) is null).Distinct(StringComparer.Ordinal))
            all[$"rank:{NameFold.Fold(word)}"] = "leave-out";
        return all;
    }

    private static Sealed<string> Close(IReadOnlyDictionary<string, string> answers) => Seal.Close(JsonSerializer.Serialize(answers));
}
