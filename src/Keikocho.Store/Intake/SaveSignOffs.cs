using Keikocho.Core.Evening;
using Keikocho.Core.Intake;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Keikocho.Store.Marks;

namespace Keikocho.Store.Intake;

/// <summary>
/// Saves a settled sign-off grid: sightings by a device that is the reading itself, and the states that follow. What is corrected after the
/// file stays to be seen. Whose hand signed is not known; the adult who saves the file stands behind it.
/// </summary>
internal sealed class SaveSignOffs(WriteSession session, ReadingRow reading, ReadingView view, ClubFacts facts)
{
    private readonly SummaryDraft said = new();
    private readonly List<MarkRow> marks = [];
    private int sequence;

    public ReadingSummary Save()
    {
        var (question, grid) = view.SignOffs ?? throw new InvalidOperationException("Sign-offs are saved from a sign-off grid.");
        session.Db.Devices.Add(new DeviceRow { Club = session.Club, Id = reading.Id, Kind = DeviceKind.Reading, ActingAdultId = reading.ById, FirstSeenAt = session.Now });
        session.Db.SaveChanges();
        var kinds = question.Items.ToDictionary(item => item.Key, item => item.Kind, StringComparer.Ordinal);
        foreach (var mark in grid.Marks) Save(mark, kinds[mark.Item]);
        using (var writer = BulkWriter.For(session.Db, session.Transaction.Connection!, session.Transaction)) writer.Write(marks);
        foreach (var (person, item) in marks.Select(m => (m.PersonId, m.ItemId!.Value)).Distinct().Order()) EvidenceStatements.StoreState(session, person, item);
        if (marks.Count > 0) Revise.Past(session);

        var falls = grid.Columns.Count(column => column.LeftOut.StartsWith("falls", StringComparison.Ordinal));
        said.Count("setAside", grid.Lines.Count(line => line.SetAside.Length > 0));
        said.Count("falls", falls);
        said.Count("leftOut", grid.Columns.Count(column => column.LeftOut.Length > 0) - falls);
        said.Say("sightings", "1 sighting is new.", "# sightings are new.");
        said.Say("settled", "1 of them is settled: no second evening is asked.", "# of them are settled: no second evening is asked.");
        said.Say("same", "1 sighting was here already.", "# sightings were here already.");
        said.Say("taken", "1 sighting was corrected after the file; the first one stays to be seen.", "# sightings were corrected after the file; the first ones stay to be seen.");
        said.Say("left", "1 sighting stays as it is here, where the file says otherwise.", "# sightings stay as they are here, where the file says otherwise.");
        said.Say("falls", "1 heading of falls was not read: falls are seen again on the mat.", "# headings of falls were not read: falls are seen again on the mat.");
        said.Say("setAside", "1 line was set aside.", "# lines were set aside.");
        said.Say("leftOut", "1 heading was left out.", "# headings were left out.");
        return said.Done();
    }

    private void Save(SignOffMark mark, ItemKind kind)
    {
        var item = facts.SignOffs!.ItemIds[mark.Item];
        var code = EvidenceCode.OfWord(mark.Word, mark.Settled);
        switch (mark.Standing)
        {
            case MarkStanding.New:
                // Words and questions are marked as asked, as on the mat.
                Append(facts.Lessons[mark.Day].Id, mark.Person.Value, item, kind is ItemKind.Word or ItemKind.Question ? MarkKind.Words : MarkKind.Sighting, code, null);
                said.Count("sightings");
                if (mark.Settled) said.Count("settled");
                break;
            case MarkStanding.Take:
                Correct(mark, item, code);
                said.Count("taken");
                break;
            case MarkStanding.Same: said.Count("same"); break;
            case MarkStanding.Leave: said.Count("left"); break;
            default: throw new InvalidOperationException("An open sighting is not saved.");
        }
    }

    // Each word that stands for that evening gets the file's in its place; an undo gives them back.
    private void Correct(SignOffMark mark, Guid item, int code)
    {
        var all = EvidenceStatements.OfItem(session, mark.Person.Value, item);
        var days = all.ToDictionary(m => m.Mark.Id, m => m.On);
        foreach (var standing in StandingEvidence.Of([.. all.Select(m => m.Mark)]).Where(m => days[m.Mark.Id] == mark.Day))
            Append(standing.Mark.LessonId, mark.Person.Value, item, MarkKind.Corrected, EvidenceCode.OfCorrection(standing.Kind, code), standing.Mark.Id);
    }

    private void Append(Guid lesson, Guid person, Guid item, MarkKind kind, int code, Guid? replaces) => marks.Add(new MarkRow
    {
        Club = session.Club,
        Id = session.NewId(),
        DeviceId = reading.Id,
        Sequence = ++sequence,
        LessonId = lesson,
        PersonId = person,
        MadeAt = session.Now,
        ReceivedAt = session.Now,
        Kind = kind,
        ItemId = item,
        Code = code,
        Replaces = replaces,
    });
}
