using System.CommandLine;
using System.Globalization;
using System.Security.Cryptography;
using System.Text.Json;
using Keikocho.App.Club;
using Keikocho.App.Commands;
using Keikocho.App.Shared;
using Keikocho.Core.Evening;
using Keikocho.Core.Intake;
using Keikocho.Core.Kernel;
using Keikocho.Store.Book;
using Keikocho.Store.Engines;
using Keikocho.Store.Intake;

namespace Keikocho.App.Import;

/// <summary>
/// <c>keikocho import FILE --club CLUBFILE</c>: reads one of the club's own files in. Without all doubts settled it lists them, changes
/// nothing and ends with 1.
/// </summary>
public static class ImportVerb
{
    private static readonly JsonSerializerOptions AnswersJson = new() { WriteIndented = true, Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The verb.</summary>
    public static Command Build()
    {
        var file = new Argument<string>("FILE") { Description = "The spreadsheet: .xlsx or text with separators" };
        var club = new Option<string>("--club") { Description = "The club's file", Required = true };
        var kind = new Option<string?>("--kind") { Description = "roster, register or sign-offs; guessed without it" };
        kind.AcceptOnlyFromAmong("roster", "register", "sign-offs");
        var programme = new Option<string?>("--programme") { Description = "The programme's name, where the club has several" };
        var answers = new Option<string?>("--answers") { Description = "A JSON file with answers by their keys" };
        var template = new Option<string?>("--write-answers") { Description = "Writes the answers given and those proposed into this file, to be filled in" };
        var proposed = new Option<bool>("--take-proposed") { Description = "Takes every proposed answer" };
        var json = new Option<bool>("--json") { Description = "Answers in JSON" };
        var verb = new Command("import", "Read in the club's own spreadsheet: the children, the register so far, or what was signed off") { file, club, kind, programme, answers, template, proposed, json };
        verb.SetAction(async (parsed, stopping) =>
        {
            var asked = new Asked(
                parsed.GetValue(file)!, parsed.GetValue(club)!,
                parsed.GetValue(kind) is { } said ? ReadingWords.KindOf(said) : null,
                parsed.GetValue(programme), parsed.GetValue(answers), parsed.GetValue(template), parsed.GetValue(proposed), parsed.GetValue(json));
            return await RunAsync(asked, parsed.InvocationConfiguration.Output, parsed.InvocationConfiguration.Error, TimeProvider.System, stopping);
        });
        return verb;
    }

    private sealed record Asked(string File, string Club, ReadingKind? Kind, string? Programme, string? Answers, string? Template, bool TakeProposed, bool Json);

    private static async Task<int> RunAsync(Asked asked, TextWriter output, TextWriter complaints, TimeProvider time, CancellationToken stopping)
    {
        var bytes = await BytesAsync(asked.File, stopping);
        var given = await AnswersAsync(asked.Answers, stopping);
        if (!File.Exists(asked.Club)) throw new RefusalException($"There is no club's file {asked.Club}; make the club first by opening it: keikocho {asked.Club}");
        var engine = new SqliteEngine(asked.Club);
        try
        {
            await engine.UpgradeAsync(time.GetUtcNow(), stopping);
            await using var db = engine.OpenDb();
            using var reading = engine.OpenReading();
            var club = db.Clubs.FirstOrDefault() ?? throw new RefusalException($"{asked.Club} has no club yet; open it once and answer the first page: keikocho {asked.Club}");
            var today = new ClubClock(time, club.Zone).Today;
            var programme = Programme(db, asked.Programme);
            var read = ReadTable.Read(new MemoryStream(bytes, writable: false), asked.File, ReadLimits.Proposed, null, stopping) switch
            {
                TableReading.Read good => good,
                TableReading.Refused refused => throw new RefusalException(refused.Sentence),
                var other => throw new InvalidOperationException($"There is no word for {other}."),
            };
            var ladder = db.Programmes.Single(p => p.Id == programme).LadderId;
            var fresh = FreshFile.Of(read, today, asked.Kind, SyllabusNames.On(db, ladder, today));
            var kind = asked.Kind ?? fresh.Kind ?? throw new RefusalException($"'{Path.GetFileName(asked.File)}' looks neither like children nor like a register or a sign-off grid; say which with --kind roster, --kind register or --kind sign-offs.");
            var facts = ClubFacts.Load(db, programme, kind, today)!;
            // The very file that was saved before brings its answers along; what is given now goes before them.
            foreach (var (key, answer) in ReadingReader.EarlierAnswers(db, kind, SHA256.HashData(bytes)).ByKey)
                if (!given.ByKey.ContainsKey(key)) given = given.With(key, answer);
            var answers = new Answers(given.ByKey.ContainsKey(ReadAgain.SheetKey) ? given.ByKey : given.With(ReadAgain.SheetKey, fresh.SheetNumber.ToString(CultureInfo.InvariantCulture)).ByKey);
            var view = Read(kind, fresh.File, ref answers, facts, today, asked.TakeProposed);
            if (asked.Template is { } template) await WriteTemplateAsync(template, answers, view, stopping);
            if (!view.IsSettled)
            {
                await TellOpenAsync(view, fresh.File, asked.Json, output);
                var open = view.Open.Count();
                await complaints.WriteLineAsync($"{(open == 1 ? "1 question is" : $"{open} questions are")} open, so nothing was changed; answer {(open == 1 ? "it" : "them")} with --answers FILE (--write-answers FILE makes one), or take what is proposed with --take-proposed.");
                return ExitCode.Refused;
            }

            return await SaveAsync(engine, time, asked, new NewReading(
                Guid.CreateVersion7(time.GetUtcNow()), Path.GetFileName(asked.File), SHA256.HashData(bytes), kind, programme, fresh.File, fresh.SheetNumber),
                answers, today, ClubRules.Attendance(BookStore.Read(reading, today), today), output, complaints, stopping);
        }
        catch (StoreRefusal refusal)
        {
            throw new RefusalException(refusal.Message);
        }
        finally
        {
            engine.Release();
        }
    }

    private static ReadingView Read(ReadingKind kind, PackedFile file, ref Answers answers, ClubFacts facts, DateOnly today, bool takeProposed)
    {
        while (true)
        {
            var view = ReadAgain.Read(kind, file.Sheets, answers, facts, today);
            if (!takeProposed || !view.AskedNow.Any(doubt => doubt.Proposed is not null)) return view;
            answers = answers.WithProposed(view.AskedNow);
        }
    }

    private static async Task<int> SaveAsync(
        SqliteEngine engine, TimeProvider time, Asked asked, NewReading reading, Answers answers, DateOnly today, AttendanceRules rules, TextWriter output, TextWriter complaints, CancellationToken stopping)
    {
        await using var writer = new WriterQueue(engine, time);
        var readings = new ReadingStore(writer);
        await readings.OpenAsync(reading, null, stopping);
        await readings.AnswerAsync(reading.Id, answers.ByKey, null, null, stopping);
        var outcome = await readings.SaveAsync(reading.Id, null, today, rules, null, null, stopping);
        if (outcome is SaveOutcome.Saved { Summary: var summary })
        {
            if (asked.Json) await output.WriteLineAsync(SumJson.Write(new { saved = true, counts = summary.Counts, sentences = summary.Sentences }));
            else
                foreach (var sentence in summary.Sentences) await output.WriteLineAsync(sentence);
            return ExitCode.Done;
        }

        await readings.DropAsync(reading.Id, stopping);
        await complaints.WriteLineAsync(outcome is SaveOutcome.Faulty { Fault: var fault }
            ? $"Nothing was saved: the check of the reading found that it contradicts itself ({fault})"
            : "Nothing was saved: somebody changed the club at the same moment; do it once more.");
        return ExitCode.Refused;
    }

    private static async Task TellOpenAsync(ReadingView view, PackedFile file, bool json, TextWriter output)
    {
        if (json)
        {
            await output.WriteLineAsync(SumJson.Write(new
            {
                saved = false,
                doubts = view.AskedNow.Select(doubt => new { doubt.Key, doubt.Sentence, offers = doubt.Offers, doubt.Proposed, typed = doubt.Typed == TypedAnswer.None ? null : doubt.Typed.ToString() }),
            }));
            return;
        }

        foreach (var note in file.Notes.Concat(view.Notes)) await output.WriteLineAsync(note);
        var number = 0;
        foreach (var doubt in view.AskedNow)
        {
            await output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"{++number}. {doubt.Sentence}"));
            await output.WriteLineAsync($"   {doubt.Key}");
            foreach (var offer in doubt.Offers) await output.WriteLineAsync($"     {offer.Code}: {offer.Words}{(offer.Code == doubt.Proposed ? " (proposed)" : "")}");
            if (doubt.Typed != TypedAnswer.None) await output.WriteLineAsync($"     =...: {(doubt.Typed == TypedAnswer.Date ? "a date, =2026-03-14" : doubt.Typed == TypedAnswer.Year ? "a year, =2026" : "what is right, after the =")}");
        }
    }

    private static async Task WriteTemplateAsync(string path, Answers answers, ReadingView view, CancellationToken stopping)
    {
        var all = answers.ByKey.ToDictionary();
        foreach (var doubt in view.AskedNow) all.TryAdd(doubt.Key, doubt.Proposed ?? "");
        try
        {
            await File.WriteAllTextAsync(path, JsonSerializer.Serialize(all, AnswersJson) + "\n", stopping);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new RefusalException($"{path} cannot be written ({e.Message.TrimEnd('.')}); name another file with --write-answers.");
        }
    }

    private static Guid Programme(KeikochoDb db, string? name)
    {
        var all = db.Programmes.OrderBy(p => p.Position).ToList();
        var names = string.Join(", ", all.Select(p => $"'{p.Name}'"));
        if (name is null) return all.Count == 1 ? all[0].Id : throw new RefusalException($"The club has several programmes ({names}); say which with --programme.");
        return all.FirstOrDefault(p => NameFold.Fold(p.Name) == NameFold.Fold(name))?.Id ?? throw new RefusalException($"The club has no programme '{name}'; it has {names}.");
    }

    private static async Task<Answers> AnswersAsync(string? path, CancellationToken stopping)
    {
        if (path is null) return Answers.None;
        try
        {
            var all = JsonSerializer.Deserialize<Dictionary<string, string>>(await BytesAsync(path, stopping)) ?? [];
            return new Answers(all.Where(pair => pair.Value is { Length: > 0 }).ToDictionary());
        }
        catch (JsonException e)
        {
            throw new RefusalException($"The answers in {path} are no JSON object of keys and texts (line {(e.LineNumber + 1)?.ToString(CultureInfo.InvariantCulture)}); mend it, or have one made with --write-answers.");
        }
    }

    private static async Task<byte[]> BytesAsync(string path, CancellationToken stopping)
    {
        try
        {
            if (Directory.Exists(path)) throw new RefusalException($"{path} is a folder; name the file in it.");
            var size = new FileInfo(path).Length;
            if (size > ReadLimits.Proposed.FileBytes)
                throw new RefusalException($"'{Path.GetFileName(path)}' has {size >> 20} MB, more than the {ReadLimits.Proposed.FileBytes >> 20} MB that are read; save the sheet of the children alone and read that.");
            return await File.ReadAllBytesAsync(path, stopping);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new RefusalException($"There is no file {path}; name the club's spreadsheet.");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new RefusalException($"{path} cannot be read ({e.Message.TrimEnd('.')}); close it in the program it is open in, or name another file.");
        }
    }
}
