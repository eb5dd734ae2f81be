using System.Globalization;
using Keikocho.Core.Kernel;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.Syllabus;

/// <summary>Makes a draft the next edition of its ladder.</summary>
internal static class PublishEdition
{
    public static PublishOutcome Publish(WriteSession session, Guid draft, int step, string name, DateOnly from, DateOnly? changeover, DateOnly today, Guid? by, Guid device)
    {
        var db = session.Db;
        if (SyllabusStore.Last(session, draft) is not { } last) return new PublishOutcome.Gone();
        if (last.Step != step) return new PublishOutcome.Stale();
        var row = db.Editions.Single(e => e.Id == draft);
        var edition = EditionDocument.Read(last.Document) with { Name = name.Trim(), From = from };
        var refused = Refusals(session, row.LadderId, edition, from, changeover).ToList();

        var rows = db.Ranks.Where(r => r.LadderId == row.LadderId).ToList();
        var matched = MatchRanks.Match(rows, edition, SyllabusStore.NamedKeys(session, row.LadderId));
        var left = rows.Where(r => !matched.Values.Contains(r)).OrderBy(r => r.Position).ThenBy(r => r.Id).ToList();
        var worn = WornBy(session, row.LadderId, today);
        refused.AddRange(left.Where(r => worn.ContainsKey(r.Id)).Select(r => Worn(r.Name, worn[r.Id])));
        if (refused.Count > 0) return new PublishOutcome.Refused(refused);

        for (var i = 0; i < edition.Ranks.Count; i++)
        {
            var rank = edition.Ranks[i];
            if (!matched.TryGetValue(rank.Key, out var known))
                db.Ranks.Add(known = new RankRow { Club = session.Club, Id = session.NewId(), LadderId = row.LadderId });
            (known.Key, known.Name, known.Cloth, known.Tips, known.Position) = (rank.Key, rank.Name, rank.Cloth, rank.Tips, i + 1);
        }

        // A rank that nobody wears any more stays for the history of those who did, outside the order.
        foreach (var rank in left) rank.Position = 0;
        GiveItemsIds(session, edition);
        // Two editions may hold from the same day; then the later published one is the newer, so no two have the same instant.
        var newest = db.Editions.Where(e => e.LadderId == row.LadderId && e.PublishedAt != null).Select(e => e.PublishedAt).AsEnumerable().Max();
        var at = newest is null || session.Now > newest ? session.Now : newest.Value.AddMilliseconds(1);
        (row.Name, row.From, row.Changeover, row.PublishedAt, row.PublishedById) = (edition.Name, from, changeover, at, by);
        row.Document = EditionDocument.Write(edition);
        db.SaveChanges();
        db.EditionDrafts.Where(d => d.EditionId == draft).ExecuteDelete();
        Revise.Calendar(session);
        // Ranks are among what is kept of people.
        Revise.People(session);
        SyllabusStore.Note(session, TrailKind.EditionPublished, draft, row.Document, by, device);
        return new PublishOutcome.Published(draft, [.. left.Select(r => r.Name)]);
    }

    private static IEnumerable<string> Refusals(WriteSession session, Guid ladder, Edition edition, DateOnly from, DateOnly? changeover)
    {
        var db = session.Db;
        if (edition.Name.Length == 0) yield return "The edition has no name; give it one, such as “edition 1”.";
        var published = db.Editions.Where(e => e.LadderId == ladder && e.PublishedAt != null).Select(e => new { e.Name, e.From }).ToList();
        if (published.Any(e => e.Name == edition.Name)) yield return $"There is an edition named “{edition.Name}” already; give this one another name.";
        if (published.MaxBy(e => e.From) is { From: { } newest } held && from < newest)
            yield return $"{from.Full()} lies before {newest.Full()}, from when {held.Name} holds; choose that day or a later one.";
        if (changeover is { } until && until <= from)
            yield return $"The changeover on {until.Full()} is not after {from.Full()}, from when this edition holds; choose a later day, or leave it empty.";
        if (changeover is not null && published.Count == 0)
            yield return "There is no edition before this one, so nobody can be tested by it; leave the changeover empty.";
        if (db.Terms.Any() && !db.Terms.Any(t => t.From == from))
            yield return $"No term begins on {from.Full()}; an edition holds from a term’s first day on, choose one.";
        foreach (var fault in CheckEdition.Faults(edition).Where(f => f.Blocks)) yield return fault.Sentence;
    }

    /// <summary>How many of those on a register now wear each rank, by their newest award that stands.</summary>
    private static Dictionary<Guid, int> WornBy(WriteSession session, Guid ladder, DateOnly today)
    {
        var db = session.Db;
        var here = db.Enrolments.Where(e => e.To == null || e.To >= today)
            .Join(db.Programmes.Where(p => p.LadderId == ladder), e => e.ProgrammeId, p => p.Id, (e, _) => e.PersonId).ToHashSet();
        var position = db.Ranks.Where(r => r.LadderId == ladder).ToDictionary(r => r.Id, r => r.Position);
        var awards = db.Awards.AsNoTracking().Where(a => a.LadderId == ladder).ToList();
        var replaced = awards.Where(a => a.Replaces is not null).Select(a => a.Replaces!.Value).ToHashSet();
        return awards.Where(a => here.Contains(a.PersonId) && !replaced.Contains(a.Id) && position.ContainsKey(a.RankId))
            .OrderBy(a => a.On ?? DateOnly.MinValue).ThenBy(a => position[a.RankId]).ThenBy(a => a.MadeAt).ThenBy(a => a.Id)
            .GroupBy(a => a.PersonId).Select(g => g.Last().RankId).GroupBy(id => id).ToDictionary(g => g.Key, g => g.Count());
    }

    private static string Worn(string rank, int count) => string.Create(
        CultureInfo.InvariantCulture,
        $"{rank} is worn by {count} {(count == 1 ? "child" : "children")} and is not in this draft; add it, or give a rank of the draft that name.");

    private static void GiveItemsIds(WriteSession session, Edition edition)
    {
        var known = session.Db.Items.ToDictionary(i => i.Key, StringComparer.Ordinal);
        foreach (var item in edition.Items)
        {
            if (!known.TryGetValue(item.Key, out var row))
            {
                session.Db.Items.Add(row = new ItemRow { Club = session.Club, Id = session.NewId(), Key = item.Key });
                known.Add(item.Key, row);
            }

            (row.Kind, row.Name) = ((int)item.Kind, item.Name);
        }
    }
}
