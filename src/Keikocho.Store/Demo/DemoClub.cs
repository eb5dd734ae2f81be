using System.Buffers.Binary;
using Keikocho.Store.Calendar;
using Keikocho.Store.Club;
using Keikocho.Store.Kernel;
using Keikocho.Store.Syllabus;

namespace Keikocho.Store.Demo;

/// <summary>
/// An invented club by a canal lock that shows how the product works on any day: one of its two weekly evenings is always today's weekday,
/// the other three days later, and today's register is still untouched. The same day and seed give the same club, ids and all.
/// </summary>
public static class DemoClub
{
    /// <summary>Makes the club for a day.</summary>
    /// <param name="today">The day on which it is to look alive; from 1990 to 2100.</param>
    /// <param name="seed">Any number; another one gives other attendances, ages and ids.</param>
    /// <param name="size">Small, or large for the benchmarks.</param>
    /// <exception cref="ArgumentOutOfRangeException">The day or the size is outside its range.</exception>
    public static DemoRows Make(DateOnly today, int seed, DemoSize size)
    {
        if (today.Year is < 1990 or > 2100) throw new ArgumentOutOfRangeException(nameof(today), today, "The demo is made for a day from 1990 to 2100.");
        if (!Enum.IsDefined(size)) throw new ArgumentOutOfRangeException(nameof(size), size, "The demo is small or large.");
        var making = new DemoMaking(today, seed, size);
        var cast = new DemoCast(making);
        var knocks = new DemoKnocks(making, cast);
        var places = DemoPlaces.Of(making, cast);
        var ranks = DemoLadder.Ranks(making.Ids, making.LadderId, making.MadeAt);
        var awards = new DemoAwards(making, cast, ranks);
        var papers = new DemoPapers(making, cast);
        var devices = Devices(making, cast);
        var syllabus = new DemoSyllabus(making, ranks, cast.Head.Id);
        var care = new DemoCare(making, cast, syllabus, awards, knocks);
        var registers = new DemoRegisters(making, cast, devices, new DemoEvidence(making, cast, awards, papers, syllabus, care), knocks);
        var evenings = new DemoEvenings(making, cast, awards, syllabus, care, registers);
        var club = Club(making);
        var trail = DemoTrail.Of(making, cast, awards, papers, syllabus, care, knocks, evenings, club.Id, registers, [.. devices.Where(d => d.Kind == DeviceKind.Laptop).Select(d => d.Id)]);
        return new DemoRows
        {
            Today = today,
            Club = club,
            Halls = making.HallRows,
            Devices = devices,
            People = [.. cast.Adults, .. cast.Leaders, .. cast.Children],
            Families = papers.Families,
            FamilyMembers = papers.Members,
            Contacts = papers.Contacts,
            Registrations = papers.Registrations,
            Consents = papers.Consents,
            Duties = papers.Duties,
            KeepAparts = papers.KeepAparts,
            Ladders = [new LadderRow { Club = 1, Id = making.LadderId, Name = DemoSyllabus.LadderName }],
            Ranks = ranks,
            Editions = syllabus.Editions,
            Items = syllabus.Items,
            TermUnits = syllabus.TermUnits,
            AgeRules = syllabus.AgeRules,
            Programmes = making.ProgrammeRows,
            WeeklyHours = [.. making.Hours.Select((h, i) => WeeklyHour(making, h, i))],
            Terms = making.TermRows,
            Closures = [.. making.ClosureRows.Select(c => c.Row)],
            Evenings = making.EveningRows,
            Lessons = [.. making.Lessons.Select(l => l.Row)],
            PromotionTests = awards.Tests,
            Enrolments = [.. cast.Stays.Select(s => s.Enrolment)],
            RegisterPlaces = places,
            Crossings = awards.Crossings,
            Awards = awards.Awards,
            StandDowns = care.StandDowns,
            Adaptations = care.Ways,
            ChosenItems = care.Choices,
            Overrules = care.Overrules,
            KeepTogethers = evenings.KeepTogethers,
            Obstacles = evenings.Obstacles,
            Showings = evenings.Showings,
            Togethers = evenings.Togethers,
            Knocks = knocks.Knocks,
            KnockLines = knocks.Lines,
            NearMisses = knocks.NearMisses,
            Trail = trail,
            Registers = registers,
        };
    }

    private static ClubRow Club(DemoMaking making)
    {
        var salt = new byte[16];
        var draw = Draw.About(making.Seed, DemoPart.Salt);
        BinaryPrimitives.WriteUInt64BigEndian(salt, draw.Next());
        BinaryPrimitives.WriteUInt64BigEndian(salt.AsSpan(8), draw.Next());
        return new ClubRow
        {
            Club = 1,
            Id = making.Ids.Of(DemoPart.Club, making.MadeAt, 0),
            Name = "Larkwater Lock Judo Club",
            Zone = LondonTime.Zone,
            Paper = PaperChoice.A4,
            Units = UnitChoice.Metric,
            IsDemo = true,
            PeopleRevision = 1,
            CalendarRevision = 1,
            PastRevision = 1,
            Salt = salt,
            MadeAt = making.MadeAt,
            Welfare = Seal.Close("The club’s welfare officer, 01632 960950\nThe county’s desk for children, 01632 960951"),
        };
    }

    private static List<DeviceRow> Devices(DemoMaking making, DemoCast cast)
    {
        DeviceRow Device(int number, DeviceKind kind, Guid acting) => new()
        {
            Club = 1,
            Id = making.Ids.Of(DemoPart.Device, making.MadeAt, number),
            Kind = kind,
            ActingAdultId = acting,
            FirstSeenAt = making.MadeAt,
        };
        return making.Size == DemoSize.Large
            ? [.. making.HallRows.Select((_, hall) => Device(hall, DeviceKind.Laptop, cast.Adults[hall * 5].Id))]
            : [Device(0, DeviceKind.Laptop, cast.Head.Id), Device(1, DeviceKind.Tablet, cast.Adults[2].Id)];
    }

    private static WeeklyHourRow WeeklyHour(DemoMaking making, DemoHour hour, int number) => new()
    {
        Club = 1,
        Id = making.Ids.Of(DemoPart.WeeklyHour, making.MadeAt, number),
        ProgrammeId = making.ProgrammeRows[hour.Programme].Id,
        HallId = making.HallRows[hour.Hall].Id,
        Weekday = making.Today.AddDays(hour.DaysAfterToday).DayOfWeek,
        Start = DemoMaking.Time(hour.Start),
        End = DemoMaking.Time(hour.End),
        UkemiFrom = DemoMaking.Time(hour.UkemiFrom),
        UkemiTo = DemoMaking.Time(hour.UkemiTo),
        HalfTime = DemoMaking.Time(hour.HalfTime),
        From = making.Terms[0].From,
    };
}
