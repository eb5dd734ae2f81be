using Keikocho.Core.Evening;
using Keikocho.Store.Engines;
using Keikocho.Store.Marks;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.Intake;

/// <summary>Folds many people at many lessons again, once each, with a few questions a lesson instead of two a mark.</summary>
internal static class FoldMany
{
    public static void Store(WriteSession session, BulkWriter writer, IReadOnlyCollection<(Guid Lesson, Guid Person)> touched, AttendanceRules rules)
    {
        var db = session.Db;
        foreach (var part in touched.Distinct().GroupBy(pair => pair.Lesson).Chunk(100))
        {
            var ids = part.Select(group => group.Key).ToList();
            var lessons = db.Lessons.AsNoTracking().Where(l => ids.Contains(l.Id)).ToDictionary(l => l.Id);
            var marks = db.Marks.AsNoTracking().Where(m => ids.Contains(m.LessonId)).ToLookup(m => (m.LessonId, m.PersonId));
            var held = db.Attendances.Where(a => ids.Contains(a.LessonId)).ToDictionary(a => (a.LessonId, a.PersonId));
            var made = new List<AttendanceRow>();
            foreach (var (lesson, person) in part.SelectMany(group => group).OrderBy(pair => pair.Lesson).ThenBy(pair => pair.Person))
            {
                var now = FoldMarks.Fold(lessons[lesson], person, [.. marks[(lesson, person)]], rules);
                var before = held.GetValueOrDefault((lesson, person));
                if (before is null && now is not null) made.Add(now);
                else if (before is not null && now is null) db.Attendances.Remove(before);
                else if (before is not null && now is not null) db.Entry(before).CurrentValues.SetValues(now);
            }

            db.SaveChanges();
            writer.Write(made);
            foreach (var entry in db.ChangeTracker.Entries<AttendanceRow>().ToList()) entry.State = EntityState.Detached;
        }
    }
}
