using Keikocho.Core.Safety;
using Keikocho.Store.Calendar;
using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;
using Keikocho.Store.Kernel;
using Keikocho.Store.Marks;

namespace Keikocho.Store.Safety;

/// <summary>
/// A knock's mark and what it brings with it, inside one transaction: the head of the accident record, and the child off the mat from that day
/// until a named adult lifts it. The laptop and every tablet go this way.
/// </summary>
internal static class BeginKnock
{
    /// <summary>Whose word lifts it, as the stand-down says it.</summary>
    public const string WhoseWord = "written advice after a knock";

    /// <summary>Stores a mark that is new with its record; false when its id is there already, and then nothing is changed.</summary>
    /// <param name="session">The transaction.</param>
    /// <param name="mark">The mark; its code is the activity.</param>
    /// <param name="lesson">The lesson.</param>
    /// <param name="by">Who marked it.</param>
    /// <param name="sequence">The device's own count; null lets it be counted here.</param>
    public static bool Take(WriteSession session, MarkRow mark, LessonRow lesson, Guid by, int? sequence)
    {
        if (!TapStatements.Insert(session, mark, sequence)) return false;
        session.Db.Knocks.Add(new KnockRow
        {
            Club = session.Club,
            Id = mark.Id,
            PersonId = mark.PersonId,
            LessonId = lesson.Id,
            On = lesson.Date,
            Activity = mark.Code,
            MadeAt = session.Now,
        });
        OffTheMat(session, mark.Id, mark.PersonId, lesson.Date, by);
        Revise.People(session);
        session.Note(TrailKind.KnockMade, mark.Id, by, mark.DeviceId);
        return true;
    }

    /// <summary>Puts the stand-down up that belongs to a knock, or to a line that says that symptoms came back.</summary>
    public static void OffTheMat(WriteSession session, Guid cause, Guid person, DateOnly from, Guid by)
    {
        session.Db.StandDowns.Add(New(session, KnockStandDowns.OffTheMat(cause), person, StandDownScope.OffTheMat, from, by));
        session.Db.SaveChanges();
    }

    /// <summary>A stand-down of a knock.</summary>
    public static StandDownRow New(WriteSession session, Guid id, Guid person, StandDownScope scope, DateOnly from, Guid by) => new()
    {
        Club = session.Club,
        Id = id,
        PersonId = person,
        Scope = (int)scope,
        From = from,
        WhoseWord = Seal.Close(WhoseWord),
        ById = by,
        MadeAt = session.Now,
    };
}
