using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;
using Keikocho.Store.Kernel;
using Keikocho.Store.Promotion;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.People;

/// <content>What is changed on one child's page: contacts and ranks.</content>
public sealed partial class PeopleStore
{
    /// <summary>Adds a contact after the others, or changes the one that has this id already; its e-mail address stays as it is.</summary>
    /// <returns>False when there is no such person, or the id belongs to somebody else's contact; nothing was changed then.</returns>
    public Task<bool> SaveContactAsync(ContactDetails details, Guid? by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        var db = session.Db;
        if (!db.People.Any(p => p.Id == details.PersonId && p.ErasedAt == null)) return false;
        var row = db.Contacts.FirstOrDefault(c => c.Id == details.ContactId);
        if (row is not null && row.PersonId != details.PersonId) return false;
        if (row is null)
        {
            var last = db.Contacts.Where(c => c.PersonId == details.PersonId).Max(c => (int?)c.Position) ?? 0;
            row = new ContactRow { Club = session.Club, Id = details.ContactId, PersonId = details.PersonId, Position = last + 1 };
            db.Contacts.Add(row);
        }

        row.Name = Seal.CloseIfAny(details.Name);
        row.Relation = Seal.CloseIfAny(details.Relation);
        row.Phone = Seal.CloseIfAny(details.Phone);
        row.BarredFromCollecting = details.Barred;
        db.SaveChanges();
        Revise.People(session);
        session.Note(TrailKind.PersonChanged, details.PersonId, by, device);
        return true;
    }, cancel);

    /// <summary>
    /// Records a rank; lessons count from the day after it. Awards are only added: a wrong one is replaced, and then the lessons count
    /// from the newest award that stands.
    /// </summary>
    public Task<RankOutcome> RecordRankAsync(NewRank asked, Guid? by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        var db = session.Db;
        var rank = db.Ranks.AsNoTracking().FirstOrDefault(r => r.Id == asked.RankId);
        if (rank is null || !db.People.Any(p => p.Id == asked.PersonId && p.ErasedAt == null)) return RankOutcome.Unknown;
        var awards = db.Awards.AsNoTracking().Where(a => a.PersonId == asked.PersonId && a.LadderId == rank.LadderId).ToList();
        var replaced = awards.Where(a => a.Replaces is not null).Select(a => a.Replaces!.Value).ToHashSet();
        var standing = awards.Where(a => !replaced.Contains(a.Id)).ToList();
        if (standing.Any(a => a.RankId == rank.Id && a.On == asked.On && a.Id != asked.Replaces)) return RankOutcome.AlreadyThere;
        if (asked.Replaces is { } wrong && standing.All(a => a.Id != wrong)) return RankOutcome.Unknown;
        if (asked.Replaces is null) RecordRank(session, asked.PersonId, rank, asked.On, asked.Source, by);
        else Replace(session, asked, rank.LadderId, [.. standing.Where(a => a.Id != asked.Replaces).Select(a => a.On)], by);
        db.SaveChanges();
        Revise.People(session);
        session.Note(TrailKind.RankRecorded, asked.PersonId, by, device);
        return RankOutcome.Recorded;
    }, cancel);

    private static void Replace(WriteSession session, NewRank asked, Guid ladder, IReadOnlyList<DateOnly?> otherDays, Guid? by)
    {
        var db = session.Db;
        db.Awards.Add(new AwardRow
        {
            Club = session.Club,
            Id = session.NewId(),
            PersonId = asked.PersonId,
            LadderId = ladder,
            RankId = asked.RankId,
            On = asked.On,
            Source = asked.Source,
            ById = by,
            Replaces = asked.Replaces,
            MadeAt = session.Now,
        });
        var newest = otherDays.Append(asked.On).Max();
        var programmes = db.Programmes.Where(p => p.LadderId == ladder).Select(p => p.Id).ToList();
        foreach (var enrolment in db.Enrolments.Where(e => e.PersonId == asked.PersonId && programmes.Contains(e.ProgrammeId)))
            enrolment.CountsFrom = newest is { } day && day.AddDays(1) > enrolment.From ? day.AddDays(1) : enrolment.From;
    }
}
