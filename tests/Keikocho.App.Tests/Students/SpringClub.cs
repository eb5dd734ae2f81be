using System.Net;
using System.Text.RegularExpressions;
using Keikocho.App.Club;
using Keikocho.App.Hosting;
using Keikocho.App.Tests.Shell;
using Keikocho.Core.Evening;
using Keikocho.Store.Calendar;
using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Keikocho.Store.Marks;
using Keikocho.Store.People;
using Keikocho.Store.Syllabus;
using Keikocho.Testing;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;

namespace Keikocho.App.Tests.Students;

/// <summary>
/// The club of the worked example of the clock: Tuesdays and Thursdays from 3 March 2026, spring closure 7 to 16 April, hall lost on
/// 7 May, test on Saturday 30 May, and the next on 25 July. It is the evening of Thursday 14 May, after the lesson.
/// </summary>
public sealed partial class SpringClub : IAsyncDisposable
{
    public static readonly DateOnly FirstLesson = new(2026, 3, 3);
    public static readonly DateOnly Test = new(2026, 5, 30);
    public static readonly DateOnly NextTest = new(2026, 7, 25);

    private readonly string folder;
    private readonly WebApplication app;
    private int sequence;

    private SpringClub(WebApplication app, string folder, FixedTime time)
    {
        this.app = app;
        this.folder = folder;
        Time = time;
        House = app.Services.GetRequiredService<ClubHouse>();
        Browser = new HttpClient(new SocketsHttpHandler { AllowAutoRedirect = false, CookieContainer = new CookieContainer() }) { BaseAddress = KeikochoHost.AddressOf(app) };
    }

    public static CancellationToken Stop => TestContext.Current.CancellationToken;

    public FixedTime Time { get; }

    public ClubHouse House { get; }

    /// <summary>A browser on which the head instructor, Ruth Aldersey, acts.</summary>
    public HttpClient Browser { get; }

    public string Folder => folder;

    public Guid Programme { get; private set; }

    public Guid Head { get; private set; }

    public Guid Ladder { get; private set; }

    public List<RankRow> Ranks { get; } = [];

    /// <summary>The device of the marks that are not made in the browser.</summary>
    public Guid Tablet { get; } = Guid.CreateVersion7(DateTimeOffset.UnixEpoch);

    public DateOnly Today => DateOnly.FromDateTime(Time.GetUtcNow().Date);

    public static async Task<SpringClub> StartAsync(string utc = "2026-05-14T20:00")
    {
        var folder = Directory.CreateTempSubdirectory("keikocho-test-").FullName;
        var time = FixedTime.At(utc);
        var app = KeikochoHost.Build(
            new ServedClub(Path.Combine(folder, "club.keikocho"), folder, IsDemo: false), IPAddress.Loopback, 0, services => services.AddSingleton<TimeProvider>(time));
        await KeikochoHost.StartAsync(app, Stop);
        var club = new SpringClub(app, folder, time);
        await club.FillAsync();
        return club;
    }

    private async Task FillAsync()
    {
        await House.Club.MakeAsync(new NewClub("Larkwater Lock", "Ruth", "Aldersey", "Juniors", "Europe/London", PaperChoice.A4), Tablet, new DateOnly(2026, 1, 1), Stop);
        using (var db = Db())
        {
            Programme = db.Programmes.Single().Id;
            Head = db.Duties.Single().PersonId;
            var hall = db.Halls.Single().Id;
            foreach (var weekday in new[] { DayOfWeek.Tuesday, DayOfWeek.Thursday })
            {
                var times = new LessonTimes(new TimeOnly(17, 30), new TimeOnly(18, 45), new TimeOnly(17, 45), new TimeOnly(17, 55), new TimeOnly(18, 7));
                await House.Calendar.AddHourAsync(new NewHour(Programme, hall, weekday, times, FirstLesson), Head, Tablet, Stop);
            }
        }

        await House.Calendar.AddTermAsync("Spring 2026", FirstLesson, Test, Head, Tablet, Stop);
        await House.Calendar.AddTermAsync("Summer 2026", new DateOnly(2026, 6, 2), NextTest, Head, Tablet, Stop);
        await House.Calendar.AddTestAsync(Programme, Test, Head, Tablet, Stop);
        await House.Calendar.AddTestAsync(Programme, NextTest, Head, Tablet, Stop);
        await CloseAsync("Spring holiday", new DateOnly(2026, 4, 7), new DateOnly(2026, 4, 16));
        await CloseAsync("Hall lost", new DateOnly(2026, 5, 7), new DateOnly(2026, 5, 7));
        await House.Writer.RunAsync(session =>
        {
            var ladder = new LadderRow { Club = session.Club, Id = session.NewId(), Name = "Juniors" };
            session.Db.Ladders.Add(ladder);
            session.Db.SaveChanges();
            foreach (var (name, cloth, tips) in new[] { ("White", "white", 0), ("White, one red tip", "white", 1), ("Yellow", "yellow", 0) })
                Ranks.Add(new RankRow { Club = session.Club, Id = session.NewId(), LadderId = ladder.Id, Name = name, Cloth = cloth, Tips = tips, Position = Ranks.Count + 1 });
            session.Db.Ranks.AddRange(Ranks);
            session.Db.Programmes.Single().LadderId = ladder.Id;
            session.Db.Clubs.Single().CalendarRevision++;
            session.Db.Clubs.Single().PeopleRevision++;
            session.Db.SaveChanges();
            Ladder = ladder.Id;
            return true;
        }, Stop);
        await ActAsync(Head);
    }

    public KeikochoDb Db() => House.Engine.OpenDb();

    public ReadSession Reading() => House.Engine.OpenReading();

    public LessonRow Lesson(DateOnly day)
    {
        using var db = Db();
        return db.Lessons.First(l => l.ProgrammeId == Programme && l.Date == day);
    }

    public LessonRow Lesson(int month, int day) => Lesson(new DateOnly(2026, month, day));

    public async Task CloseAsync(string name, DateOnly from, DateOnly to, params Guid[] closed) =>
        Assert.True((await House.Calendar.AddClosureAsync(new NewClosure(name, from, to, null, null), new HashSet<Guid>(), closed.ToHashSet(), new AttendanceRules(), Head, Tablet, Stop)).Saved);

    /// <summary>A child whose first lesson is that of a day, at which it is present from the bow.</summary>
    public async Task<Guid> JoinAsync(string given, string family, DateOnly first, string phone = "07700 900001")
    {
        var person = Guid.CreateVersion7(Time.GetUtcNow());
        Assert.True(await House.People.AddNewTonightAsync(new NewTonight(person, given, family, phone, Lesson(first).Id, null), new AttendanceRules(), Head, Tablet, Stop));
        return person;
    }

    /// <summary>The child of the worked example: 12 of the 17 lessons held from 3 March to 14 May.</summary>
    public async Task<Guid> JoinOfTheExampleAsync(string given = "Wren", string family = "Hollis")
    {
        var child = await JoinAsync(given, family, FirstLesson);
        var held = HeldAfter(FirstLesson);
        Assert.Equal(16, held.Count);
        // Never away so long that anything else is to be said.
        for (var i = 0; i < held.Count; i++) await MarkAsync(child, held[i], i % 3 == 2 ? MarkKind.Absent : MarkKind.Present);
        return child;
    }

    /// <summary>Days of held lessons after one day, to 14 May.</summary>
    public List<DateOnly> HeldAfter(DateOnly day)
    {
        using var db = Db();
        return [.. db.Lessons.Where(l => l.ClosureId == null && l.Date > day && l.Date <= new DateOnly(2026, 5, 14)).Select(l => l.Date).ToList().Order()];
    }

    public Task MarkAsync(Guid child, DateOnly day, MarkKind kind, TimeOnly? at = null, Guid? by = null, Guid? device = null) =>
        House.Marks.TapAsync(
            new Tap(Guid.CreateVersion7(Time.GetUtcNow()), device ?? Tablet, device is null ? null : ++sequence, Lesson(day).Id, child, by ?? Head, Time.GetUtcNow(), kind, at),
            Today, new AttendanceRules(), Stop);

    /// <summary>One more tablet.</summary>
    public Task<Guid> AddTabletAsync() => House.Writer.RunAsync(session =>
    {
        var row = new DeviceRow { Club = session.Club, Id = session.NewId(), Kind = DeviceKind.Tablet, ActingAdultId = Head, FirstSeenAt = session.Now };
        session.Db.Devices.Add(row);
        session.Db.SaveChanges();
        return row.Id;
    }, Stop);

    public Task<Guid> SetAsync(string key, string value) => House.Club.SetAsync(key, value, new DateOnly(2026, 1, 1), null, Head, Tablet, Stop);

    public async Task<Guid> AddAdultAsync(string given, string family, DutyKind kind)
    {
        var id = Guid.CreateVersion7(Time.GetUtcNow());
        Assert.True(await House.People.AddDutyAsync(new NewDuty(id, given, family, new DateOnly(1990, 1, 1), kind, null, null), new DateOnly(2026, 1, 1), Head, Tablet, Stop));
        return id;
    }

    /// <summary>Chooses who acts in the browser.</summary>
    public async Task ActAsync(Guid adult)
    {
        using var answer = await PostAsync("/acting", "/acting", ("adult", adult.ToString("D")));
        Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
    }

    public async Task<string> TextAsync(string address) => WebUtility.HtmlDecode(await Browser.GetStringAsync(address, Stop));

    /// <summary>A page without its markup, blanks drawn together.</summary>
    public async Task<string> WordsAsync(string address) => Plain(await TextAsync(address));

    public static string Plain(string html) => Blanks().Replace(Tags().Replace(html, " "), " ");

    /// <summary>Posts a form with the token of a page.</summary>
    public async Task<HttpResponseMessage> PostAsync(string page, string address, params (string Name, string Value)[] fields) =>
        await RunningApp.PostAsync(Browser, address, [("page-token", await RunningApp.TokenAsync(Browser, page)), .. fields]);

    public async ValueTask DisposeAsync()
    {
        Browser.Dispose();
        await app.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tags();

    [GeneratedRegex("\\s+")]
    private static partial Regex Blanks();
}
