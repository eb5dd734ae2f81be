using Keikocho.Core.Safety;
using Keikocho.Store.Calendar;
using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;
using Keikocho.Store.Kernel;

namespace Keikocho.Store.Safety;

/// <summary>
/// What a knock's mark brings with it, inside its transaction: the head of the accident record, and the child off the mat from that day
/// until a named adult lifts it.
/// </summary>
internal static class BeginKnock
{
    /// <summary>Begins the record of a mark that is new.</summary>
    public static void Store(WriteSession session, Guid mark, LessonRow lesson, Guid person, int activity, Guid by, Guid device)
    {
        session.Db.Knocks.Add(new KnockRow
        {
            Club = session.Club,
            Id = mark,
            PersonId = person,
            LessonId = lesson.Id,
            On = lesson.Date,
            Activity = activity,
            MadeAt = session.Now,
        });
        session.Db.StandDowns.Add(new StandDownRow
        {
            Club = session.Club,
            Id = AnotherId.Of(mark, "off the mat"),
            PersonId = person,
            Scope = (int)StandDownScope.OffTheMat,
            From = lesson.Date,
            WhoseWord = Seal.Close("written advice after a knock"),
            ById = by,
            MadeAt = session.Now,
        });
        session.Db.SaveChanges();
        Revise.People(session);
        session.Note(TrailKind.KnockMade, mark, by, device);
    }
}
