using Keikocho.Core.Evening;
using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Calendar;
using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;
using Keikocho.Store.Marks;
using Keikocho.Store.People;
using Keikocho.Store.Safety;
using Keikocho.Store.Syllabus;
using Keikocho.Testing;

namespace Keikocho.Store.Tests.Marks;

/// <summary>
/// A small club with lessons on Tuesdays and Thursdays in March 2026, two children, three items, a head instructor, an assistant with the
/// right to confirm falls and one without, a junior leader, and two devices.
/// </summary>
public sealed class EvidenceClub : IAsyncDisposable
{
    public static readonly DateOnly First = new(2026, 3, 3);
    public static readonly DateOnly Today = new(2026, 3, 24);
    public static readonly FallWay Back = new(FallDirection.Back, FallSide.None);

    private readonly DateTimeOffset now = new(2026, 3, 24, 19, 0, 0, TimeSpan.Zero);
    private readonly FixedTime clock;
    private long made;

    private EvidenceClub(Engine engine)
    {
        Engine = engine;
        clock = new FixedTime(now);
        Writer = new WriterQueue(engine, clock);
        Sightings = new SightingsStore(Writer);
        StandDowns = new StandDownStore(Writer);
        Ways = new AdaptationStore(Writer);
        People = new PeopleStore(Writer);
    }

    public static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public Engine Engine { get; }
    public WriterQueue Writer { get; }
    public SightingsStore Sightings { get; }
    public StandDownStore StandDowns { get; }
    public AdaptationStore Ways { get; }
    public PeopleStore People { get; }
    public Guid Device { get; private set; }
    public Guid Tablet { get; private set; }
    public Guid Head { get; private set; }
    public Guid Assistant { get; private set; }
    public Guid Helper { get; private set; }
    public Guid Leader { get; private set; }
    public Guid Wren { get; private set; }
    public Guid Bram { get; private set; }
    public Guid[] Items { get; } = new Guid[3];
    public Dictionary<DateOnly, Guid> Lessons { get; } = [];

    public static async Task<EvidenceClub> MakeAsync(Engine engine)
    {
        var club = new EvidenceClub(engine);
        await club.FillAsync();
        return club;
    }

    public Guid NewId() => Guid.CreateVersion7(now.AddMilliseconds(made++));

    public Guid Lesson(int day) => Lessons[new DateOnly(2026, 3, day)];

    /// <summary>What is written from now on has a later moment, as it has on a real evening.</summary>
    public void Later() => clock.Step(TimeSpan.FromSeconds(20));

    public async Task<EvidenceAnswer> FallAsync(int day, bool clean, int stage = 3, Guid? by = null, Guid? device = null, Guid? child = null)
    {
        Later();
        return await Sightings.AddAsync([SeenTap.OfFall(NewId(), Lesson(day), child ?? Wren, Back, stage, clean)], Today, by ?? Head, device ?? Device, Cancel);
    }

    public async Task<EvidenceAnswer> SeeAsync(int day, SeenWord word, int item = 0, Guid? by = null, Guid? device = null)
    {
        Later();
        return await Sightings.AddAsync([SeenTap.OfItem(NewId(), Lesson(day), Wren, Items[item], word)], Today, by ?? Head, device ?? Device, Cancel);
    }

    public ChildEvidence Evidence(Guid? child = null)
    {
        using var reading = Engine.OpenReading();
        return EvidenceReader.Of(reading, [child ?? Wren], null, Today)[child ?? Wren];
    }

    public FallGateAnswer Gates(Guid? child = null, DateOnly? tonight = null)
    {
        var evidence = Evidence(child);
        return FallGate.Reckon(new FallGateSnapshot(
            tonight ?? Today, evidence.Falls, [.. evidence.OnTheMat, tonight ?? Today], [.. evidence.StandDowns.Select(s => s.ToStandDown(_ => "Ruth"))], new FallGateRule(), []));
    }

    public List<MarkRow> Marks()
    {
        using var db = Engine.OpenDb();
        return [.. db.Marks.Where(m => m.ItemId != null)];
    }

    public async Task SoundAsync() =>
        Assert.Empty((await CheckClub.RunAsync(Engine, _ => new AttendanceRules(), cancel: Cancel)).Problems);

    private async Task FillAsync()
    {
        Device = NewId();
        await new ClubStore(Writer).MakeAsync(new NewClub("Larkwater", "Ruth", "Aldersey", "Juniors", "Europe/London", PaperChoice.A4), Device, new DateOnly(2026, 1, 1), Cancel);
        using var db = Engine.OpenDb();
        var (programme, hall) = (db.Programmes.Single().Id, db.Halls.Single().Id);
        Head = db.Duties.Single().PersonId;
        var calendar = new CalendarStore(Writer);
        var times = new LessonTimes(new TimeOnly(17, 30), new TimeOnly(18, 45), new TimeOnly(17, 45), new TimeOnly(17, 55), new TimeOnly(18, 7));
        foreach (var weekday in new[] { DayOfWeek.Tuesday, DayOfWeek.Thursday }) await calendar.AddHourAsync(new NewHour(programme, hall, weekday, times, First), Head, Device, Cancel);
        await calendar.AddTermAsync("Spring", First, First.AddDays(60), Head, Device, Cancel);
        foreach (var lesson in db.Lessons.Select(l => new { l.Date, l.Id }).ToList()) Lessons[lesson.Date] = lesson.Id;
        Assistant = await AdultAsync("Nell", new DateOnly(1990, 5, 5), DutyKind.Instructor);
        Helper = await AdultAsync("Tobi", new DateOnly(1999, 5, 5), DutyKind.Assistant);
        Leader = await AdultAsync("Ines", new DateOnly(2010, 5, 5), DutyKind.JuniorLeader);
        Wren = await JoinAsync("Wren");
        Bram = await JoinAsync("Bram");
        Tablet = await Writer.RunAsync(s =>
        {
            var row = new DeviceRow { Club = s.Club, Id = NewId(), Kind = DeviceKind.Tablet, ActingAdultId = Head, FirstSeenAt = s.Now };
            s.Db.Devices.Add(row);
            for (var i = 0; i < Items.Length; i++)
            {
                Items[i] = NewId();
                s.Db.Items.Add(new ItemRow { Club = s.Club, Id = Items[i], Key = $"item-{i}", Kind = (int)(i < 2 ? ItemKind.Throw : ItemKind.Word), Name = $"Item {i}" });
            }

            s.Db.SaveChanges();
            return row.Id;
        }, Cancel);
    }

    private async Task<Guid> AdultAsync(string given, DateOnly born, DutyKind kind)
    {
        var id = NewId();
        Assert.True(await People.AddDutyAsync(new NewDuty(id, given, "Marlow", born, kind, null, null), new DateOnly(2026, 1, 1), Head, Device, Cancel));
        return id;
    }

    private async Task<Guid> JoinAsync(string given)
    {
        var id = NewId();
        Assert.True(await People.AddNewTonightAsync(new NewTonight(id, given, "Hollis", "07700 900001", Lesson(3), null), new AttendanceRules(), Head, Device, Cancel));
        foreach (var day in new[] { 5, 10, 12, 17, 19 })
            await new MarksStore(Writer).TapAsync(new Tap(NewId(), Device, null, Lesson(day), id, Head, now, MarkKind.Present, null), Today, new AttendanceRules(), Cancel);
        return id;
    }

    public ValueTask DisposeAsync() => Writer.DisposeAsync();
}
