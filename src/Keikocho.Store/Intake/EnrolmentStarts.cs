using Keikocho.Store.Engines;

namespace Keikocho.Store.Intake;

/// <summary>Reckons anew from which day lessons count: the first lesson, or the day after the newest promotion.</summary>
internal static class EnrolmentStarts
{
    public static void CountAgain(WriteSession session, Guid programme, IReadOnlyCollection<Guid> people)
    {
        var db = session.Db;
        var row = db.Programmes.Single(p => p.Id == programme);
        var awards = row.LadderId is { } ladder
            ? KnownPeople.Standing(db, ladder, [.. db.Ranks.Where(r => r.LadderId == ladder)])
            : [];
        foreach (var part in people.Chunk(500))
            foreach (var enrolment in db.Enrolments.Where(e => e.ProgrammeId == programme && part.Contains(e.PersonId)).ToList())
                enrolment.CountsFrom = SaveRoster.CountsFrom(enrolment.From, awards.GetValueOrDefault(enrolment.PersonId)?.On);
        db.SaveChanges();
    }
}
