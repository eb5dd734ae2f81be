using System.Globalization;
using System.Security.Cryptography;
using Keikocho.App.Club;
using Keikocho.App.Shared;
using Keikocho.App.Shared.Parts;
using Keikocho.Store.Intake;
using Microsoft.AspNetCore.Mvc;

namespace Keikocho.App.Import;

/// <summary>Takes files, answers, the save and the undo.</summary>
public static class ImportPosts
{
    /// <summary>Adds the endpoints.</summary>
    public static void Map(WebApplication app)
    {
        var seen = new SeenByAttribute(Role.Instructor, Device.Laptop);
        // The whole file stays in memory: what is uploaded is never written to disk in the clear.
        app.MapPost(ImportAddress.Page, TakeAsync).WithMetadata(seen, new RequestSizeLimitAttribute(LargeFiles.MostBytes))
            .WithFormOptions(bufferBody: false, memoryBufferThreshold: (int)LargeFiles.MostBytes, bufferBodyLengthLimit: LargeFiles.MostBytes, multipartBodyLengthLimit: LargeFiles.MostBytes);
        app.MapPost(ImportAddress.Page + "/{id:guid}/answers", AnswerAsync).WithMetadata(seen);
        app.MapPost(ImportAddress.Page + "/{id:guid}/undo", UndoAsync).WithMetadata(seen);
    }

    private static async Task<IResult> TakeAsync(OpenClub club, ImportDesk desk, TimeProvider time, [FromForm] IFormCollection form, CancellationToken cancel)
    {
        var programme = Guid.TryParse(form["programme"], out var chosen) && club.Book.Programme(chosen) is not null ? chosen : club.Book.Programmes[0].Id;
        var kind = ReadingWords.KindOf(form["kind"].ToString());
        if (form.Files["file"] is not { Length: > 0 } file)
        {
            return OnePage.Of<ImportPage>(new Dictionary<string, object?>
            {
                [nameof(ImportPage.Errors)] = new List<FieldError> { new("file", "No file was chosen, or it is empty. Choose the spreadsheet that holds the list.") },
                [nameof(ImportPage.Kind)] = form["kind"].ToString(),
                [nameof(ImportPage.Programme)] = programme,
            });
        }

        using var copy = new MemoryStream((int)file.Length);
        await file.CopyToAsync(copy, cancel);
        var bytes = copy.ToArray();
        var name = Path.GetFileName(file.FileName.Replace('\\', '/'));
        var id = Guid.CreateVersion7(time.GetUtcNow());
        var (today, by) = (club.Today, club.Acting?.Id);
        var syllabus = SyllabusNames.Of(club.Book.EditionOn(club.Book.Programme(programme)?.LadderId, today)?.Edition);
        await desk.DoAsync(id, "Reading the file", async progress =>
        {
            var outcome = ReadTable.Read(new MemoryStream(bytes, writable: false), name, ReadLimits.Proposed, progress, CancellationToken.None);
            if (outcome is TableReading.Refused refused) return refused.Sentence;
            var fresh = FreshFile.Of((TableReading.Read)outcome, today, kind, syllabus);
            await desk.Readings.OpenAsync(
                new NewReading(id, name, SHA256.HashData(bytes), kind ?? fresh.Kind ?? ReadingKind.Roster, programme, fresh.File, fresh.SheetNumber), by, CancellationToken.None);
            return null;
        });
        return Redirects.SeeOther(ImportAddress.Of(id));
    }

    private static async Task<IResult> AnswerAsync(Guid id, OpenClub club, ImportDesk desk, [FromForm] IFormCollection form, CancellationToken cancel)
    {
        if (ReadingReader.Find(club.Db, id) is not { Stage: ReadingStage.Open } row) return NotOpen(id);
        var kind = ReadingWords.KindOf(form["kind"].ToString()) ?? row.Kind;
        Guid? programme = Guid.TryParse(form["programme"], out var chosen) ? chosen : null;
        var given = GivenAnswers.Read(form, ReadingReader.Answers(row), kind != row.Kind);
        var todo = form["do"].ToString();
        if (todo == "drop")
        {
            await desk.Readings.DropAsync(id, cancel);
            return Redirects.SeeOther(ImportAddress.Page, new FlashMessage("The file was dropped.", "Nothing of it is kept."));
        }

        if (!await desk.Readings.AnswerAsync(id, given, kind, programme, cancel)) return NotOpen(id);
        if (todo == "proposed")
        {
            var taken = 0;
            // One answer may bring up the next question; proposals are taken as long as there are any.
            for (var round = 0; round < 20; round++)
            {
                if (ReadingState.Now(club, id) is not { View: { } view }) break;
                var proposed = view.AskedNow.Where(doubt => doubt.Proposed is not null).ToDictionary(doubt => doubt.Key, doubt => doubt.Proposed!);
                if (proposed.Count == 0) break;
                taken += proposed.Count;
                await desk.Readings.AnswerAsync(id, proposed, null, null, cancel);
            }

            return Redirects.SeeOther(ImportAddress.Of(id), new FlashMessage(taken == 1 ? "1 proposed answer was taken." : string.Create(CultureInfo.InvariantCulture, $"{taken} proposed answers were taken."), "Each can be changed under “Settled” until the file is saved."));
        }

        if (todo != "save") return Redirects.SeeOther(Here(id, form));
        var (today, rules, by, device, looked) = (club.Today, club.AttendanceRules, club.Acting?.Id, club.Device, form["looked"].ToString());
        await desk.DoAsync(id, "Saving", async _ => await desk.Readings.SaveAsync(id, looked, today, rules, by, device, CancellationToken.None) switch
        {
            SaveOutcome.Saved or SaveOutcome.NotOpen => null,
            SaveOutcome.NotSettled { Open: var open } => open == 1 ? "Nothing was saved: 1 question is still open." : $"Nothing was saved: {open} questions are still open.",
            SaveOutcome.Stale => "Nothing was saved: an answer or the club has changed since this page was shown. Look at it as it is now, then save.",
            SaveOutcome.Faulty { Fault: var fault } => $"Nothing was saved: the check of the reading found that it contradicts itself ({fault})",
            var other => throw new InvalidOperationException($"There is no word for {other}."),
        });
        return Redirects.SeeOther(ImportAddress.Of(id));
    }

    private static async Task<IResult> UndoAsync(Guid id, OpenClub club, ImportDesk desk)
    {
        var (rules, by, device) = (club.AttendanceRules, club.Acting?.Id, club.Device);
        await desk.DoAsync(id, "Taking it back", async _ => await desk.Readings.UndoAsync(id, rules, by, device, CancellationToken.None) is null
            ? "It is not saved, or was taken back already; nothing was changed." : null);
        return Redirects.SeeOther(ImportAddress.Of(id));
    }

    private static IResult NotOpen(Guid id) => Redirects.SeeOther(ImportAddress.Of(id), new FlashMessage("Nothing was changed.", "This file is saved or dropped already.", NeedsALook: true));

    private static string Here(Guid id, IFormCollection form) => int.TryParse(form["lines"], NumberStyles.None, CultureInfo.InvariantCulture, out var page) && page > 1
        ? string.Create(CultureInfo.InvariantCulture, $"{ImportAddress.Of(id)}?lines={page}#lines-part") : ImportAddress.Of(id);
}
