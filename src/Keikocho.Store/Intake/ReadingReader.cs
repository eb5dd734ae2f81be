using System.Text.Json;
using Keikocho.Core.Intake;
using Keikocho.Store.Engines;
using Keikocho.Store.Kernel;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.Intake;

/// <summary>One reading in the list.</summary>
/// <param name="Id">The reading.</param>
/// <param name="Kind">Roster, register or sign-off grid.</param>
/// <param name="Stage">Where it stands.</param>
/// <param name="FileName">The file's name.</param>
/// <param name="ProgrammeId">The programme.</param>
/// <param name="At">When it was undone, saved, or first looked at.</param>
public sealed record ListedReading(Guid Id, ReadingKind Kind, ReadingStage Stage, string FileName, Guid? ProgrammeId, DateTimeOffset At);

/// <summary>Reads readings.</summary>
public static class ReadingReader
{
    // What was said of values and marks that differ holds for the day it was said on, not for the next reading of the file.
    private static readonly string[] OnlyOnce = ["differs:", "mark:", "known:"];

    /// <summary>What was answered when this very file was saved before; nothing where it was not.</summary>
    public static Answers EarlierAnswers(KeikochoDb db, ReadingKind kind, byte[] hash)
    {
        ArgumentNullException.ThrowIfNull(db);
        var before = db.Readings.AsNoTracking().Where(r => r.Kind == kind && r.FileHash == hash && (r.Stage == ReadingStage.Saved || r.Stage == ReadingStage.Undone))
            .AsEnumerable().OrderBy(r => r.SavedAt).LastOrDefault();
        return before is null ? Core.Intake.Answers.None
            : new Answers(Answers(before).ByKey.Where(pair => !OnlyOnce.Any(start => pair.Key.StartsWith(start, StringComparison.Ordinal))).ToDictionary());
    }

    /// <summary>Those that were not dropped, newest first.</summary>
    public static IReadOnlyList<ListedReading> List(KeikochoDb db, int most)
    {
        ArgumentNullException.ThrowIfNull(db);
        return
        [
            .. db.Readings.Where(r => r.Stage != ReadingStage.Dropped).OrderByDescending(r => r.MadeAt).Take(most)
                .Select(r => new { r.Id, r.Kind, r.Stage, r.FileName, r.ProgrammeId, r.MadeAt, r.SavedAt, r.UndoneAt }).AsEnumerable()
                .Select(r => new ListedReading(r.Id, r.Kind, r.Stage, Seal.Open(r.FileName), r.ProgrammeId, r.UndoneAt ?? r.SavedAt ?? r.MadeAt)),
        ];
    }

    /// <summary>One reading; null when there is none.</summary>
    public static ReadingRow? Find(KeikochoDb db, Guid reading)
    {
        ArgumentNullException.ThrowIfNull(db);
        return db.Readings.AsNoTracking().FirstOrDefault(r => r.Id == reading);
    }

    /// <summary>The answers given so far.</summary>
    public static Answers Answers(ReadingRow row)
    {
        ArgumentNullException.ThrowIfNull(row);
        return row.Answers is { } held ? new Answers(JsonSerializer.Deserialize<Dictionary<string, string>>(Seal.Open(held))!) : Core.Intake.Answers.None;
    }

    /// <summary>What is stored of an open reading's file; null once it is saved or dropped.</summary>
    public static PackedFile? File(ReadingRow row)
    {
        ArgumentNullException.ThrowIfNull(row);
        return row.Tables is { } tables ? SheetPack.Unpack(Seal.Open(tables)) : null;
    }

    /// <summary>The file's name.</summary>
    public static string FileName(ReadingRow row)
    {
        ArgumentNullException.ThrowIfNull(row);
        return Seal.Open(row.FileName);
    }
}
