#:project ../src/Keikocho.Store/Keikocho.Store.csproj
#:property PublishAot=false
#:property KeikochoRole=bench
// How long 5,000 rows take to be previewed and saved: dotnet run -c Release bench/import.cs [rows] [folder]
// The files are made here from a fixed number: a roster, one child a row; and a register, one row a mark.
using System.Diagnostics;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Keikocho.Core.Evening;
using Keikocho.Store.Calendar;
using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Keikocho.Store.Intake;

var rows = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 5_000;
var folder = args.Length > 1 ? args[1] : Directory.CreateTempSubdirectory("keikocho-bench-").FullName;
var today = new DateOnly(2026, 11, 25);
string[] given = ["Ada", "Bo", "Cy", "Di", "Edda", "Finn", "Gus", "Hal", "Ida", "Jo", "Kit", "Lou", "Mo", "Nan", "Ola", "Pia"];
string[] syllables = ["bro", "cal", "dun", "el", "far", "gar", "hol", "ing", "ker", "lam", "mor", "ned", "os", "pel", "ro", "sta"];
string Name(int i) => $"{given[i % 16]},{char.ToUpperInvariant(syllables[i / 16 % 16][0])}{syllables[i / 16 % 16][1..]}{syllables[i / 256 % 16]}{syllables[i / 4096 % 16]}";

var roster = new StringBuilder("First name,Surname,Date of birth,Belt,Joined,Mum,Mum's mobile,Email,Photo,Licence no,Licence expires\n");
for (var i = 0; i < rows; i++)
    roster.Append(CultureInfo.InvariantCulture, $"{Name(i)},{new DateOnly(2013, 1, 1).AddDays(i * 7 % 2500):yyyy-MM-dd},{(i % 3 == 0 ? "white" : i % 3 == 1 ? "yellow" : "orange")},2024-09-0{1 + i % 9},Parent {i},07700 {900000 + i % 1000},p{i}@example.org,{(i % 2 == 0 ? "yes" : "no")},L{i},2027-08-31\n");
var register = new StringBuilder("Date,Name,Mark\n");
for (var i = 0; i < rows; i++)
    register.Append(CultureInfo.InvariantCulture, $"{new DateOnly(2026, 9, 1).AddDays(7 * (i / 500)):yyyy-MM-dd},{Name(i % 500).Replace(',', ' ')},{(i % 9 == 0 ? "L" : i % 7 == 0 ? "E" : "P")}\n");

var engine = new SqliteEngine(Path.Combine(folder, "club.keikocho"));
await engine.UpgradeAsync(TimeProvider.System.GetUtcNow(), default);
await using var writer = new WriterQueue(engine, TimeProvider.System);
await new ClubStore(writer).MakeAsync(new NewClub("Bench", "Maren", "Holt", "Juniors", "Europe/London", PaperChoice.A4), Guid.CreateVersion7(), today, default);
Guid programme;
await using (var db = engine.OpenDb())
{
    programme = db.Programmes.Single().Id;
    await new CalendarStore(writer).AddHourAsync(new NewHour(programme, db.Halls.Single().Id, DayOfWeek.Tuesday, new LessonTimes(new(17, 30), new(18, 45), new(17, 45), new(17, 55), new(18, 7)), new(2026, 9, 1)), null, Guid.CreateVersion7(), default);
}

// Twice: the first pays for what a process pays once.
var warm = Encoding.UTF8.GetBytes(string.Join('\n', roster.ToString().Split('\n').Take(40)) + "\n");
await MeasureAsync("warm-up", warm, save: false);
await MeasureAsync("roster", Encoding.UTF8.GetBytes(roster.ToString()), save: true);
await MeasureAsync("the same roster again", Encoding.UTF8.GetBytes(roster.ToString()), save: true);
await MeasureAsync("register", Encoding.UTF8.GetBytes(register.ToString()), save: true);
engine.Release();

async Task MeasureAsync(string what, byte[] bytes, bool save)
{
    var watch = Stopwatch.StartNew();
    var read = (TableReading.Read)ReadTable.Read(new MemoryStream(bytes), what + ".csv", ReadLimits.Proposed, null, default);
    var fresh = FreshFile.Of(read, today, null);
    var id = Guid.CreateVersion7();
    var readings = new ReadingStore(writer);
    await readings.OpenAsync(new NewReading(id, what + ".csv", SHA256.HashData(bytes), fresh.Kind!.Value, programme, fresh.File, fresh.SheetNumber), null, default);
    var view = View(id);
    var preview = watch.ElapsedMilliseconds;
    for (; !view.IsSettled; view = View(id))
        await readings.AnswerAsync(id, view.AskedNow.ToDictionary(d => d.Key, d => d.Proposed ?? d.Offers[0].Code), null, null, default);
    watch.Restart();
    var again = View(id);
    var page = watch.ElapsedMilliseconds;
    if (!save)
    {
        await readings.DropAsync(id, default);
        return;
    }

    watch.Restart();
    var outcome = await readings.SaveAsync(id, again.Fingerprint(), today, new AttendanceRules(), null, null, default);
    Console.WriteLine($"{what}: preview {preview} ms, read again {page} ms, saved in {watch.ElapsedMilliseconds} ms: {string.Join(' ', ((SaveOutcome.Saved)outcome).Summary.Sentences.Take(2))}");
}

ReadingView View(Guid id)
{
    using var db = engine.OpenDb();
    var row = ReadingReader.Find(db, id)!;
    return ReadAgain.Read(row.Kind, ReadingReader.File(row)!.Sheets, ReadingReader.Answers(row), ClubFacts.Load(db, programme, row.Kind, today)!, today);
}
