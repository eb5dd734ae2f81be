using Keikocho.Core.Evening;
using Keikocho.Store.Calendar;
using Keikocho.Store.Engines;

namespace Keikocho.Store.Marks;

/// <content>A correction to "left".</content>
public sealed partial class MarksStore
{
    /// <summary>
    /// Takes back every standing word but a presence, on every device, and then marks the leaving. Whoever nobody marked as present was
    /// there from the bow, as far as anybody knows.
    /// </summary>
    private static void Leave(WriteSession session, LessonRow lesson, Tap tap, AttendanceRules rules)
    {
        // What is taken back may give back an earlier word; each round takes back more, so it ends.
        for (var wrong = NotPresent(session, lesson, tap, rules); wrong.Count > 0; wrong = NotPresent(session, lesson, tap, rules))
        {
            foreach (var mark in wrong.OrderBy(m => m.DeviceId).ThenBy(m => m.Sequence))
            {
                TapStatements.Insert(session, new MarkRow
                {
                    Club = session.Club,
                    Id = session.NewId(),
                    DeviceId = tap.Device,
                    LessonId = tap.LessonId,
                    PersonId = tap.PersonId,
                    ById = tap.By,
                    MadeAt = session.Now,
                    ReceivedAt = session.Now,
                    Kind = MarkKind.Cleared,
                    Replaces = mark.Id,
                }, null);
            }
        }

        if (Standing(session.Db, lesson, tap.PersonId, rules).Count == 0)
            Append(session, lesson, tap with { Id = session.NewId(), Kind = MarkKind.Present, At = null }, rules);
        Append(session, lesson, tap, rules);
    }

    private static List<MarkRow> NotPresent(WriteSession session, LessonRow lesson, Tap tap, AttendanceRules rules) =>
        Standing(session.Db, lesson, tap.PersonId, rules)
            .Where(m => (m.Kind == MarkKind.Corrected ? (MarkKind)(m.Code & MarkCode.CorrectedToMask) : m.Kind) != MarkKind.Present)
            .ToList();
}
