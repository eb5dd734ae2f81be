using Keikocho.Store.Calendar;

namespace Keikocho.Store.Demo;

/// <summary>Register order: by called name as the term starts, joiners appended as they come.</summary>
internal static class DemoPlaces
{
    /// <summary>The places of every term; sets the place of each enrolment to that of its last term.</summary>
    public static List<RegisterPlaceRow> Of(DemoMaking making, DemoCast cast)
    {
        var places = new List<RegisterPlaceRow>();
        for (var programme = 0; programme < making.ProgrammeRows.Count; programme++)
        {
            for (var t = 0; t < making.Terms.Count; t++)
            {
                var term = making.Terms[t];
                // Who comes to the first lesson is there when the term's register is written.
                var written = making.Lessons.First(l => l.Hour.Programme == programme && l.Term == t).Row.Date;
                var position = 0;
                foreach (var stay in cast.ByProgramme[programme]
                    .Where(s => s.From <= term.To && s.From <= making.Today && (s.To is null || s.To >= written))
                    .OrderBy(s => s.From <= written ? written : s.From).ThenBy(s => s.Key, StringComparer.Ordinal))
                {
                    stay.Enrolment.Position = ++position;
                    places.Add(new RegisterPlaceRow
                    {
                        Club = 1,
                        ProgrammeId = making.ProgrammeRows[programme].Id,
                        TermId = making.TermRows[t].Id,
                        PersonId = stay.Person.Id,
                        Position = position,
                    });
                }
            }
        }

        return places;
    }
}
