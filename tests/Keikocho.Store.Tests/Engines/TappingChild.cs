using System.Globalization;
using Keikocho.Core.Evening;
using Keikocho.Store.Calendar;
using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Keikocho.Store.Marks;
using Keikocho.Store.People;

namespace Keikocho.Store.Tests.Engines;

/// <summary>A process that taps as fast as it can and says each mark's id once its tap is answered, until somebody kills it.</summary>
public static class TappingChild
{
    public const string Verb = "tap-until-killed";

    private static readonly DateTimeOffset Now = new(2026, 3, 3, 17, 30, 0, TimeSpan.Zero);

    public static async Task<int> RunAsync(string file)
    {
        var engine = new SqliteEngine(file);
        await engine.UpgradeAsync(Now, CancellationToken.None);
        await using var writer = new WriterQueue(engine, TimeProvider.System);
        var (lesson, person) = await writer.RunAsync(s => AddLesson(s));
        var said = TextWriter.Synchronized(Console.Out);
        await Task.WhenAll(Enumerable.Range(0, 8).Select(tablet => TapAsync(writer, lesson, person, tablet, said)));
        return 0;
    }

    public static (Guid Lesson, Guid Person) AddLesson(WriteSession session)
    {
        ArgumentNullException.ThrowIfNull(session);
        var hall = new HallRow { Club = 1, Id = session.NewId(), Name = "Hall" };
        var programme = new ProgrammeRow { Club = 1, Id = session.NewId(), Name = "Juniors", Position = 1 };
        var evening = new EveningRow { Club = 1, Id = session.NewId(), Date = new DateOnly(2026, 3, 3), HallId = hall.Id };
        var lesson = new LessonRow
        {
            Club = 1,
            Id = session.NewId(),
            ProgrammeId = programme.Id,
            EveningId = evening.Id,
            Date = evening.Date,
            Start = new TimeOnly(17, 30),
            UkemiFrom = new TimeOnly(17, 35),
            UkemiTo = new TimeOnly(17, 50),
            HalfTime = new TimeOnly(18, 0),
            End = new TimeOnly(18, 30),
        };
        var person = new PersonRow { Club = 1, Id = session.NewId(), MadeAt = session.Now };
        var club = new ClubRow { Club = 1, Id = session.NewId(), Name = "Club", Zone = "Europe/London", Salt = [1, 2, 3], MadeAt = session.Now };
        session.Db.AddRange(club, hall, programme, evening, lesson, person);
        session.Db.SaveChanges();
        return (lesson.Id, person.Id);
    }

    public static Guid AddDevice(WriteSession session)
    {
        ArgumentNullException.ThrowIfNull(session);
        var device = new DeviceRow { Club = 1, Id = session.NewId(), Kind = DeviceKind.Tablet, FirstSeenAt = session.Now };
        session.Db.Devices.Add(device);
        session.Db.SaveChanges();
        return device.Id;
    }

    public static MarkRow MarkOf(WriteSession session, Guid device, int sequence, Guid lesson, Guid person, MarkKind kind = MarkKind.Present)
    {
        ArgumentNullException.ThrowIfNull(session);
        return new MarkRow
        {
            Club = session.Club,
            Id = session.NewId(),
            DeviceId = device,
            Sequence = sequence,
            LessonId = lesson,
            PersonId = person,
            MadeAt = session.Now,
            ReceivedAt = session.Now,
            Kind = kind,
            At = new TimeOnly(17, 31),
        };
    }

    private static async Task TapAsync(WriterQueue writer, Guid lesson, Guid person, int tablet, TextWriter said)
    {
        var device = await writer.RunAsync(AddDevice);
        for (var sequence = 1; ; sequence++)
        {
            var number = sequence;
            var id = await writer.RunAsync(session =>
            {
                var mark = MarkOf(session, device, number, lesson, person);
                session.Db.Marks.Add(mark);
                session.Db.SaveChanges();
                FoldMarks.Store(session, session.Db.Lessons.Single(l => l.Id == lesson), person, new AttendanceRules());
                return mark.Id;
            });
            await said.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"{id:D} {tablet}"));
            await said.FlushAsync();
        }
    }
}
