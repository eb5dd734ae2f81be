using System.Text;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.Syllabus;

/// <summary>Drafts of editions and their publication.</summary>
public sealed class SyllabusStore(WriterQueue writer)
{
    /// <summary>
    /// Begins the draft of a programme's next edition; gives the programme a ladder where it has none. Ranks that the club has already
    /// take the keys of the draft's ranks that they are, so that a rank may be renamed and stays the belt that is worn.
    /// </summary>
    public Task<StartOutcome> StartAsync(Guid programme, Edition edition, string said, Guid? by, Guid device, CancellationToken cancel) =>
        writer.RunAsync<StartOutcome>(session =>
        {
            var db = session.Db;
            var row = db.Programmes.FirstOrDefault(p => p.Id == programme);
            if (row is null) return new StartOutcome.NoProgramme();
            if (row.LadderId is { } known && db.Editions.FirstOrDefault(e => e.LadderId == known && e.PublishedAt == null) is { } open)
                return new StartOutcome.AlreadyThere(open.Id);
            if (row.LadderId is null)
            {
                var made = new LadderRow { Club = session.Club, Id = session.NewId(), Name = edition.Ladder.Trim() is { Length: > 0 } name ? name : row.Name };
                db.Ladders.Add(made);
                db.SaveChanges();
                row.LadderId = made.Id;
            }

            var ladder = row.LadderId.Value;
            var draft = new EditionRow { Club = session.Club, Id = session.NewId(), LadderId = ladder, Name = edition.Name };
            db.Editions.Add(draft);
            db.SaveChanges();
            NameRanks(session, ladder, edition);
            Append(session, draft.Id, 1, edition, said, by);
            Revise.Calendar(session);
            Note(session, TrailKind.EditionChanged, draft.Id, said, by, device);
            return new StartOutcome.Begun(draft.Id);
        }, cancel);

    /// <summary>Stores the whole draft after one more step.</summary>
    /// <param name="draft">The draft.</param>
    /// <param name="after">The step that the page showed: a draft that has moved on since is not written over.</param>
    /// <param name="edition">The whole draft.</param>
    /// <param name="said">What the step did, in a sentence.</param>
    /// <param name="by">The acting adult.</param>
    /// <param name="device">The device.</param>
    /// <param name="cancel">Counts only while it waits.</param>
    public Task<StepOutcome> StepAsync(Guid draft, int after, Edition edition, string said, Guid? by, Guid device, CancellationToken cancel) =>
        writer.RunAsync(session =>
        {
            if (Last(session, draft) is not { } last) return StepOutcome.Gone;
            if (last.Step != after) return StepOutcome.Stale;
            var document = EditionDocument.Write(edition with { From = null });
            if (document == last.Document) return StepOutcome.TheSame;
            Append(session, draft, after + 1, edition, said, by);
            Note(session, TrailKind.EditionChanged, draft, said, by, device);
            return StepOutcome.Stored;
        }, cancel);

    /// <summary>Takes the last step back. The first cannot be: the draft is thrown away instead.</summary>
    public Task<StepOutcome> UndoAsync(Guid draft, int step, Guid? by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        if (Last(session, draft) is not { } last) return StepOutcome.Gone;
        if (last.Step != step) return StepOutcome.Stale;
        if (step == 1) return StepOutcome.FirstStep;
        session.Db.EditionDrafts.Remove(last);
        session.Db.SaveChanges();
        Note(session, TrailKind.EditionChanged, draft, "undo: " + last.Said, by, device);
        return StepOutcome.Stored;
    }, cancel);

    /// <summary>Throws the draft away. A ladder that was made for it and holds nothing else goes with it.</summary>
    public Task<StepOutcome> ThrowAwayAsync(Guid draft, Guid? by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        var db = session.Db;
        var row = db.Editions.FirstOrDefault(e => e.Id == draft && e.PublishedAt == null);
        if (row is null) return StepOutcome.Gone;
        db.EditionDrafts.Where(d => d.EditionId == draft).ExecuteDelete();
        db.Editions.Remove(row);
        db.SaveChanges();
        var named = NamedKeys(session, row.LadderId);
        foreach (var rank in db.Ranks.Where(r => r.LadderId == row.LadderId && r.Key != "").ToList())
            if (!named.Contains(rank.Key)) rank.Key = "";
        db.SaveChanges();
        if (!db.Editions.Any(e => e.LadderId == row.LadderId) && !db.Ranks.Any(r => r.LadderId == row.LadderId) && !db.Awards.Any(a => a.LadderId == row.LadderId))
        {
            foreach (var programme in db.Programmes.Where(p => p.LadderId == row.LadderId).ToList()) programme.LadderId = null;
            db.SaveChanges();
            db.Ladders.Remove(db.Ladders.Single(l => l.Id == row.LadderId));
            db.SaveChanges();
        }

        Revise.Calendar(session);
        Note(session, TrailKind.EditionChanged, draft, "thrown away", by, device);
        return StepOutcome.Stored;
    }, cancel);

    /// <summary>
    /// Publishes the draft as an edition that holds from a day on. What was published before stays as it is. Every rank has its row, every
    /// item its id; a rank that is worn today and not in the edition stops it.
    /// </summary>
    /// <param name="draft">The draft.</param>
    /// <param name="step">The step that the page showed.</param>
    /// <param name="name">Name of the edition as sheets print it.</param>
    /// <param name="from">First day: a term's first day, where the club has terms.</param>
    /// <param name="today">The day where the club is: who is on a register counts as wearing.</param>
    /// <param name="by">The acting adult.</param>
    /// <param name="device">The device.</param>
    /// <param name="cancel">Counts only while it waits.</param>
    /// <param name="changeover">Until this day a child may still be tested by the edition before; null holds for everybody at once.</param>
    public Task<PublishOutcome> PublishAsync(
        Guid draft, int step, string name, DateOnly from, DateOnly today, Guid? by, Guid device, CancellationToken cancel, DateOnly? changeover = null) =>
        writer.RunAsync<PublishOutcome>(session => PublishEdition.Publish(session, draft, step, name, from, changeover, today, by, device), cancel);

    /// <summary>Sets a term's unit for a programme; null takes it away.</summary>
    /// <returns>False when there is no such term or programme.</returns>
    public Task<bool> SetUnitAsync(Guid programme, Guid term, string? unit, Guid? by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        var db = session.Db;
        if (!db.Programmes.Any(p => p.Id == programme) || !db.Terms.Any(t => t.Id == term)) return false;
        var row = db.TermUnits.FirstOrDefault(t => t.TermId == term && t.ProgrammeId == programme);
        if (row?.UnitKey == unit) return true;
        if (unit is null) db.TermUnits.Remove(row!);
        else if (row is null) db.TermUnits.Add(new Calendar.TermUnitRow { Club = session.Club, TermId = term, ProgrammeId = programme, UnitKey = unit });
        else row.UnitKey = unit;
        db.SaveChanges();
        Revise.Calendar(session);
        Note(session, TrailKind.UnitSet, term, unit ?? "none", by, device);
        return true;
    }, cancel);

    /// <summary>Enters an age rule.</summary>
    public Task<Guid> AddAgeRuleAsync(AgeRule rule, Guid? by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        var row = new AgeRuleRow { Club = session.Club, Id = session.NewId(), Document = EditionDocument.WriteRule(rule), ById = by, MadeAt = session.Now };
        session.Db.AgeRules.Add(row);
        session.Db.SaveChanges();
        Revise.Calendar(session);
        Note(session, TrailKind.AgeRuleChanged, row.Id, rule.Name, by, device);
        return row.Id;
    }, cancel);

    /// <summary>Takes an age rule out; what it was stays on record.</summary>
    public Task<bool> EndAgeRuleAsync(Guid rule, Guid? by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        var row = session.Db.AgeRules.FirstOrDefault(r => r.Id == rule && r.EndedAt == null);
        if (row is null) return false;
        row.EndedAt = session.Now;
        session.Db.SaveChanges();
        Revise.Calendar(session);
        Note(session, TrailKind.AgeRuleChanged, rule, "taken out", by, device);
        return true;
    }, cancel);

    /// <summary>Keys that the published editions of a ladder name.</summary>
    internal static HashSet<string> NamedKeys(WriteSession session, Guid ladder) =>
        session.Db.Editions.Where(e => e.LadderId == ladder && e.PublishedAt != null).Select(e => e.Document).AsEnumerable()
            .SelectMany(document => EditionDocument.Read(document).Ranks.Select(r => r.Key)).ToHashSet(StringComparer.Ordinal);

    internal static EditionDraftRow? Last(WriteSession session, Guid draft) =>
        session.Db.Editions.Any(e => e.Id == draft && e.PublishedAt == null)
            ? session.Db.EditionDrafts.Where(d => d.EditionId == draft).OrderByDescending(d => d.Step).FirstOrDefault()
            : null;

    internal static void Note(WriteSession session, TrailKind kind, Guid subject, string said, Guid? by, Guid device) =>
        session.Note(kind, subject, by, device, Encoding.UTF8.GetBytes(said));

    private static void NameRanks(WriteSession session, Guid ladder, Edition edition)
    {
        var rows = session.Db.Ranks.Where(r => r.LadderId == ladder).ToList();
        foreach (var (key, rank) in MatchRanks.Match(rows, edition, NamedKeys(session, ladder))) rank.Key = key;
        session.Db.SaveChanges();
    }

    private static void Append(WriteSession session, Guid draft, int step, Edition edition, string said, Guid? by)
    {
        session.Db.EditionDrafts.Add(new EditionDraftRow
        {
            Club = session.Club,
            EditionId = draft,
            Step = step,
            Document = EditionDocument.Write(edition with { From = null }),
            Said = said,
            MadeAt = session.Now,
            ById = by,
        });
        session.Db.SaveChanges();
    }
}
