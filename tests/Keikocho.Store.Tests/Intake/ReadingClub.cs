using System.Security.Cryptography;
using Keikocho.Core.Evening;
using Keikocho.Core.Intake;
using Keikocho.Store.Calendar;
using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Keikocho.Store.Intake;
using Keikocho.Store.Marks;
using Keikocho.Testing;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.Tests.Intake;

/// <summary>A club made on the first evening, and short ways to read files into it.</summary>
internal sealed class ReadingClub : IAsyncDisposable
{
    public static readonly AttendanceRules Rules = new();
    private readonly FixedTime time;

    private ReadingClub(Engine engine, FixedTime time)
    {
        (Engine, this.time) = (engine, time);
        Writer = new WriterQueue(engine, time);
        Readings = new ReadingStore(Writer);
    }

    public Engine Engine { get; }
    public WriterQueue Writer { get; }
    public ReadingStore Readings { get; }
    public Guid Device { get; } = new(1, 2, 3, new byte[8]);
    public Guid Head { get; private set; }
    public Guid Programme { get; private set; }
    public DateOnly Today => IntakeFiles.Today;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public static async Task<ReadingClub> MakeAsync(Engine engine, params DayOfWeek[] evenings)
    {
        var time = FixedTime.At("2026-11-25T12:00");
        await engine.UpgradeAsync(time.GetUtcNow(), Cancel);
        var club = new ReadingClub(engine, time);
        await new ClubStore(club.Writer).MakeAsync(new NewClub("Lockside", "Maren", "Holt", "Juniors", "Europe/London", PaperChoice.A4), club.Device, club.Today, Cancel);
        await using var db = engine.OpenDb();
        club.Programme = db.Programmes.Single().Id;
        club.Head = db.People.Single().Id;
        var hall = db.Halls.Single().Id;
        foreach (var evening in evenings)
            await new CalendarStore(club.Writer).AddHourAsync(new NewHour(club.Programme, hall, evening, new LessonTimes(new(17, 30), new(18, 45), new(17, 45), new(17, 55), new(18, 7)), new(2026, 9, 1)), club.Head, club.Device, Cancel);
        return club;
    }

    /// <summary>Opens a file.</summary>
    public async Task<Guid> OpenAsync(string file, ReadingKind? kind = null)
        => await OpenAsync(file, await File.ReadAllBytesAsync(IntakeFiles.PathOf(file), Cancel), kind);

    public async Task<Guid> OpenAsync(string name, byte[] bytes, ReadingKind? kind = null)
    {
        var syllabus = Ask(db => SyllabusNames.On(db, db.Programmes.Single(p => p.Id == Programme).LadderId, Today));
        var fresh = FreshFile.Of(Assert.IsType<TableReading.Read>(IntakeFiles.Read(bytes, name)), Today, kind, syllabus);
        time.Step(TimeSpan.FromMinutes(1));
        var id = Guid.CreateVersion7(time.GetUtcNow());
        await Readings.OpenAsync(new NewReading(id, name, SHA256.HashData(bytes), fresh.Kind!.Value, Programme, fresh.File, fresh.SheetNumber), Head, Cancel);
        return id;
    }

    public ReadingView View(Guid reading)
    {
        using var db = Engine.OpenDb();
        var row = ReadingReader.Find(db, reading)!;
        return ReadAgain.Read(row.Kind, ReadingReader.File(row)!.Sheets, ReadingReader.Answers(row), ClubFacts.Load(db, row.ProgrammeId!.Value, row.Kind, Today)!, Today);
    }

    /// <summary>Settles every doubt with its proposal, or what is chosen here, or an offer that keeps most.</summary>
    public async Task<ReadingView> SettleAsync(Guid reading, Func<Doubt, string?>? choose = null)
    {
        for (var round = 0; round < 60; round++)
        {
            var view = View(reading);
            Assert.Empty(view.Faults());
            if (view.IsSettled) return view;
            await Readings.AnswerAsync(reading, view.AskedNow.ToDictionary(d => d.Key, d => choose?.Invoke(d) ?? d.Proposed ?? (d.Offers.FirstOrDefault(o => o.Code is "leave-out" or "keep" or "one") ?? d.Offers[0]).Code), null, null, Cancel);
        }

        throw new InvalidOperationException("The doubts do not end.");
    }

    public async Task<ReadingSummary> SaveAsync(Guid reading)
        => Assert.IsType<SaveOutcome.Saved>(await Readings.SaveAsync(reading, View(reading).Fingerprint(), Today, Rules, Head, Device, Cancel)).Summary;

    public async Task<ReadingSummary> ReadAsync(string file, Func<Doubt, string?>? choose = null)
    {
        var id = await OpenAsync(file);
        await SettleAsync(id, choose);
        return await SaveAsync(id);
    }

    public T Ask<T>(Func<KeikochoDb, T> question)
    {
        using var db = Engine.OpenDb();
        return question(db);
    }

    /// <summary>Everything that a reading may touch, as text; equal before a reading and after its undo.</summary>
    public string Everything()
    {
        using var db = Engine.OpenDb();
        var text = new List<string>();
        void Add<T>(string name, IEnumerable<T> rows) => text.AddRange(rows.Select(row => $"{name} {System.Text.Json.JsonSerializer.Serialize(row)}").Order(StringComparer.Ordinal));
        Add("person", db.People.AsNoTracking());
        Add("contact", db.Contacts.AsNoTracking());
        Add("registration", db.Registrations.AsNoTracking());
        Add("consent", db.Consents.AsNoTracking());
        Add("enrolment", db.Enrolments.AsNoTracking());
        Add("award", db.Awards.AsNoTracking());
        Add("ladder", db.Ladders.AsNoTracking());
        Add("rank", db.Ranks.AsNoTracking());
        Add("programme", db.Programmes.AsNoTracking());
        Add("lesson", db.Lessons.AsNoTracking());
        Add("evening", db.Evenings.AsNoTracking());
        Add("closure", db.Closures.AsNoTracking());
        Add("state", db.Attendances.AsNoTracking().Where(a => a.Word != AttendanceWord.Untouched));
        return string.Join('\n', text);
    }

    /// <summary>Every stored state is what its marks say.</summary>
    public void StatesAreWhatTheMarksSay()
    {
        using var db = Engine.OpenDb();
        var lessons = db.Lessons.AsNoTracking().ToDictionary(l => l.Id);
        var folded = db.Marks.AsNoTracking().AsEnumerable().GroupBy(m => (m.LessonId, m.PersonId)).Select(g => FoldMarks.Fold(lessons[g.Key.LessonId], g.Key.PersonId, [.. g], Rules)).OfType<AttendanceRow>();
        static string Text(AttendanceRow row) => System.Text.Json.JsonSerializer.Serialize(row);
        Assert.Equal(folded.Select(Text).Order(StringComparer.Ordinal), db.Attendances.AsNoTracking().AsEnumerable().Select(Text).Order(StringComparer.Ordinal));
    }

    public async ValueTask DisposeAsync() => await Writer.DisposeAsync();
}
