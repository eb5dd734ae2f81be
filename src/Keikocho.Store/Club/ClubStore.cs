using System.Security.Cryptography;
using Keikocho.Store.Calendar;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;
using Keikocho.Store.Kernel;
using Keikocho.Store.People;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.Club;

/// <summary>What is asked on the first evening to make a club.</summary>
/// <param name="Name">As it stands on the papers.</param>
/// <param name="HeadGiven">First name of the head instructor.</param>
/// <param name="HeadFamily">Family name; may be empty.</param>
/// <param name="Programme">Name of the first programme.</param>
/// <param name="Zone">Time zone, by its name in the public database.</param>
/// <param name="Paper">Usual paper.</param>
public sealed record NewClub(string Name, string HeadGiven, string HeadFamily, string Programme, string Zone, PaperChoice Paper);

/// <summary>What came of making a club.</summary>
public enum MakeClubOutcome
{
    /// <summary>Made.</summary>
    Made,
    /// <summary>This database has its club already; nothing was changed.</summary>
    AlreadyThere,
}

/// <summary>The club, its halls, its devices and its settings.</summary>
public sealed class ClubStore(WriterQueue writer)
{
    /// <summary>Makes the club with its first programme, a hall without measures, and the head instructor, who acts on <paramref name="device"/>.</summary>
    public Task<MakeClubOutcome> MakeAsync(NewClub asked, Guid device, DateOnly today, CancellationToken cancel) => writer.RunAsync(session =>
    {
        var db = session.Db;
        if (db.Clubs.Any()) return MakeClubOutcome.AlreadyThere;
        db.Clubs.Add(new ClubRow
        {
            Club = session.Club,
            Id = session.NewId(),
            Name = asked.Name.Trim(),
            Zone = asked.Zone,
            Paper = asked.Paper,
            PeopleRevision = 1,
            CalendarRevision = 1,
            PastRevision = 1,
            Salt = RandomNumberGenerator.GetBytes(32),
            MadeAt = session.Now,
        });
        db.SaveChanges();
        var head = new PersonRow
        {
            Club = session.Club,
            Id = session.NewId(),
            Given = Seal.Close(asked.HeadGiven.Trim()),
            Family = Seal.CloseIfAny(asked.HeadFamily),
            AdultSeenOn = today,
            MadeAt = session.Now,
        };
        head.AdultSeenById = head.Id;
        db.People.Add(head);
        db.Halls.Add(new HallRow { Club = session.Club, Id = session.NewId(), Name = "Hall" });
        db.Programmes.Add(new ProgrammeRow { Club = session.Club, Id = session.NewId(), Name = asked.Programme.Trim(), Position = 1 });
        db.SaveChanges();
        db.Duties.Add(new DutyRow
        {
            Club = session.Club,
            Id = session.NewId(),
            PersonId = head.Id,
            Kind = DutyKind.HeadInstructor,
            From = today,
            MayConfirmFalls = true,
        });
        MeetDevice(session, device, DeviceKind.Laptop, head.Id);
        session.Note(TrailKind.ClubMade, head.Id, head.Id, device);
        return MakeClubOutcome.Made;
    }, cancel);

    /// <summary>Remembers who acts on a device; makes the device where it is new.</summary>
    /// <returns>False when there is no such adult on duty.</returns>
    public Task<bool> ChooseActingAdultAsync(Guid device, Guid adult, CancellationToken cancel) => writer.RunAsync(session =>
    {
        if (!session.Db.Duties.Any(d => d.PersonId == adult && d.Kind != DutyKind.JuniorLeader)) return false;
        MeetDevice(session, device, DeviceKind.Laptop, adult);
        session.Db.SaveChanges();
        return true;
    }, cancel);

    /// <summary>Changes name, zone, paper and units.</summary>
    public Task<bool> ChangeAsync(string name, string zone, PaperChoice paper, UnitChoice units, Guid? by, Guid device, CancellationToken cancel) =>
        writer.RunAsync(session =>
        {
            var club = session.Db.Clubs.Single();
            if (club.Name == name && club.Zone == zone && club.Paper == paper && club.Units == units) return false;
            (club.Name, club.Zone, club.Paper, club.Units) = (name, zone, paper, units);
            Revise.Calendar(session);
            session.Note(TrailKind.ClubChanged, club.Id, by, device);
            return true;
        }, cancel);

    /// <summary>Changes a hall's name and the measures of its mat, in centimetres; null where not known.</summary>
    public Task<bool> ChangeHallAsync(Guid hall, string name, int? lengthCm, int? widthCm, int? stripCm, Guid? by, Guid device, CancellationToken cancel) =>
        writer.RunAsync(session =>
        {
            var row = session.Db.Halls.FirstOrDefault(h => h.Id == hall);
            if (row is null) return false;
            (row.Name, row.MatLengthCm, row.MatWidthCm, row.StripCm) = (name.Trim(), lengthCm, widthCm, stripCm);
            Revise.Calendar(session);
            session.Note(TrailKind.ClubChanged, hall, by, device);
            return true;
        }, cancel);

    /// <summary>Says where the ambulance goes: address, entrance, nearest hospital; null where not known.</summary>
    public Task<bool> ChangePlaceAsync(Guid hall, string? address, string? entrance, string? hospital, Guid? by, Guid device, CancellationToken cancel) =>
        writer.RunAsync(session =>
        {
            var row = session.Db.Halls.FirstOrDefault(h => h.Id == hall);
            if (row is null) return false;
            (row.Address, row.Entrance, row.Hospital) = (address, entrance, hospital);
            Revise.Calendar(session);
            session.Note(TrailKind.ClubChanged, hall, by, device);
            return true;
        }, cancel);

    /// <summary>Says whom to ring about a child's welfare, a line each; empty for nobody.</summary>
    public Task<bool> ChangeWelfareAsync(string? lines, Guid? by, Guid device, CancellationToken cancel) =>
        writer.RunAsync(session =>
        {
            var club = session.Db.Clubs.Single();
            club.Welfare = Seal.CloseIfAny(lines);
            Revise.Calendar(session);
            session.Note(TrailKind.ClubChanged, club.Id, by, device);
            return true;
        }, cancel);

    /// <summary>Enters a setting from a day on, with who and why.</summary>
    public Task<Guid> SetAsync(string key, string value, DateOnly from, string? why, Guid? by, Guid device, CancellationToken cancel) =>
        writer.RunAsync(session =>
        {
            var row = new SettingRow
            {
                Club = session.Club,
                Id = session.NewId(),
                Key = key,
                Value = value,
                From = from,
                ById = by,
                Why = Seal.CloseIfAny(why),
                MadeAt = session.Now,
            };
            session.Db.Settings.Add(row);
            Revise.Calendar(session);
            session.Note(TrailKind.SettingChanged, row.Id, by, device);
            return row.Id;
        }, cancel);

    internal static void MeetDevice(WriteSession session, Guid device, DeviceKind kind, Guid? acting)
    {
        var row = session.Db.Devices.FirstOrDefault(d => d.Id == device);
        if (row is null)
        {
            row = new DeviceRow { Club = session.Club, Id = device, Kind = kind, FirstSeenAt = session.Now };
            session.Db.Devices.Add(row);
        }

        row.ActingAdultId = acting;
    }
}

/// <summary>Raises the club's revisions, so that what is kept in memory is read again.</summary>
internal static class Revise
{
    public static void People(WriteSession session) =>
        session.Db.Clubs.ExecuteUpdate(c => c.SetProperty(r => r.PeopleRevision, r => r.PeopleRevision + 1));

    public static void Calendar(WriteSession session) =>
        session.Db.Clubs.ExecuteUpdate(c => c.SetProperty(r => r.CalendarRevision, r => r.CalendarRevision + 1));

    public static void Past(WriteSession session) =>
        session.Db.Clubs.ExecuteUpdate(c => c.SetProperty(r => r.PastRevision, r => r.PastRevision + 1));
}
