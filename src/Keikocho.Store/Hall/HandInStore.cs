using Keikocho.Core.Evening;
using Keikocho.Store.Calendar;
using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Keikocho.Store.Evening;
using Keikocho.Store.Marks;
using Keikocho.Store.Safety;

namespace Keikocho.Store.Hall;

/// <summary>A mark as a tablet hands it in, now or a day later.</summary>
/// <param name="Id">Made where it was tapped; the same id again changes nothing.</param>
/// <param name="Sequence">The tablet's own count.</param>
/// <param name="LessonId">Which lesson of the evening that the tablet joined.</param>
/// <param name="PersonId">Whom it speaks of.</param>
/// <param name="By">Who acted on the tablet.</param>
/// <param name="MadeAt">By the tablet's clock, which may be wrong.</param>
/// <param name="Kind">What it says.</param>
/// <param name="At">Local time of an arrival or a leaving.</param>
/// <param name="ItemId">The item of a sighting or of words; null for anything else.</param>
/// <param name="Code">The rest, see <see cref="MarkCode"/>; for a knock, the activity.</param>
/// <param name="Replaces">The tablet's own mark that this one takes back; only with <see cref="MarkKind.Cleared"/>.</param>
public sealed record HandedMark(
    Guid Id, int Sequence, Guid LessonId, Guid PersonId, Guid By, DateTimeOffset MadeAt, MarkKind Kind, TimeOnly? At, Guid? ItemId, int Code, Guid? Replaces);

/// <summary>What became of a mark that was handed in.</summary>
public enum HandInFate
{
    /// <summary>Stored now, and on disk.</summary>
    Taken,
    /// <summary>Stored before; nothing was changed.</summary>
    TakenBefore,
    /// <summary>It can never be stored; the reason says why.</summary>
    Refused,
}

/// <summary>What became of one mark.</summary>
/// <param name="Id">Which.</param>
/// <param name="Fate">What became of it.</param>
/// <param name="Why">Why it was refused.</param>
public sealed record HandedAnswer(Guid Id, HandInFate Fate, string? Why);

/// <summary>
/// Takes in what tablets hold: each mark exactly once, in one transaction for all of a request, whenever it arrives. The evening that
/// the tablet joined names the day; no clock does.
/// </summary>
public sealed class HandInStore(WriterQueue writer)
{
    /// <summary>The most activities that a knock's code may name.</summary>
    private const int MostActivities = 64;

    /// <summary>Takes marks in; the answers are in the order of the marks.</summary>
    /// <param name="join">The evening that the tablet joined.</param>
    /// <param name="marks">In the tablet's order.</param>
    /// <param name="today">The day at the club now.</param>
    /// <param name="rules">How attendance is folded.</param>
    /// <param name="cancel">Counts only while it waits.</param>
    public Task<IReadOnlyList<HandedAnswer>> TakeAsync(
        JoinRow join, IReadOnlyList<HandedMark> marks, DateOnly today, AttendanceRules rules, CancellationToken cancel) =>
        TakeAsync(join, marks, [], today, rules, cancel);

    /// <summary>Takes marks and notes in; the answers are in the order of the marks, then of the notes.</summary>
    /// <param name="join">The evening that the tablet joined.</param>
    /// <param name="marks">In the tablet's order.</param>
    /// <param name="notes">Notes by ready phrases, in the tablet's order.</param>
    /// <param name="today">The day at the club now.</param>
    /// <param name="rules">How attendance is folded.</param>
    /// <param name="cancel">Counts only while it waits.</param>
    public Task<IReadOnlyList<HandedAnswer>> TakeAsync(
        JoinRow join, IReadOnlyList<HandedMark> marks, IReadOnlyList<HandedNote> notes, DateOnly today, AttendanceRules rules, CancellationToken cancel) =>
        writer.RunAsync<IReadOnlyList<HandedAnswer>>(session =>
        {
            var work = new Work(session, join, today, rules);
            List<HandedAnswer> answers = [.. marks.Select(work.Take)];
            work.Done();
            if (notes.Count > 0)
            {
                PhraseNoteStore.EndPast(session, today);
                answers.AddRange(notes.Select(work.Take));
            }

            return answers;
        }, cancel);

    private sealed class Work(WriteSession session, JoinRow join, DateOnly today, AttendanceRules rules)
    {
        private readonly Dictionary<Guid, LessonRow?> lessons = [];
        private readonly Dictionary<Guid, bool> actors = [];
        private readonly Dictionary<Guid, SightingsStore.Evening> seen = [];
        private bool isPast;

        public HandedAnswer Take(HandedMark mark)
        {
            if (IsStored(mark.Id)) return new HandedAnswer(mark.Id, HandInFate.TakenBefore, null);
            // Of a fall the tablet names the mark alone: what it was of decides which state is folded again.
            if (mark is { Kind: MarkKind.Cleared, Replaces: { } replaced, ItemId: null }) mark = mark with { ItemId = ItemOf(replaced) };
            if (WhyNot(mark) is { } why) return new HandedAnswer(mark.Id, HandInFate.Refused, why);
            var sequence = IsFree(mark.Sequence) ? mark.Sequence : (int?)null;
            var lesson = Lesson(mark.LessonId)!;
            isPast |= lesson.Date < today;
            if (mark.Kind is MarkKind.Sighting or MarkKind.Words or MarkKind.Fall || (mark.Kind == MarkKind.Cleared && mark.ItemId is not null))
            {
                if (!seen.TryGetValue(mark.By, out var evening)) seen[mark.By] = evening = new SightingsStore.Evening(session, today, mark.By, join.DeviceId);
                evening.Add(mark.Id, mark.LessonId, mark.PersonId, mark.ItemId ?? MarkCode.Falls, mark.Kind, mark.Code, mark.Replaces, mark.MadeAt, sequence);
                return new HandedAnswer(mark.Id, HandInFate.Taken, null);
            }

            if (mark.Kind == MarkKind.Knock)
            {
                BeginKnock.Take(session, Row(mark), lesson, mark.By, sequence);
                return new HandedAnswer(mark.Id, HandInFate.Taken, null);
            }

            TapStatements.Insert(session, Row(mark), sequence);
            TapStatements.StoreState(session, lesson, mark.PersonId, rules);
            return new HandedAnswer(mark.Id, HandInFate.Taken, null);
        }

        public HandedAnswer Take(HandedNote note)
        {
            if (WhyNot(note) is { } why) return new HandedAnswer(note.Id, HandInFate.Refused, why);
            var (fate, refused) = PhraseNoteStore.Take(session, note, Lesson(note.LessonId)!, join.DeviceId);
            return new HandedAnswer(note.Id, fate, refused);
        }

        public void Done()
        {
            foreach (var evening in seen.Values) evening.Done(note: false);
            if (isPast) Revise.Past(session);
        }

        private string? WhyNot(HandedMark mark)
        {
            if (mark.Kind is not (MarkKind.Present or MarkKind.Left or MarkKind.Absent or MarkKind.Excused or MarkKind.Cleared
                or MarkKind.Fall or MarkKind.Sighting or MarkKind.Words or MarkKind.Knock)) return "A tablet makes no such mark.";
            if (Lesson(mark.LessonId) is not { } lesson || lesson.Date != join.Date) return "It is of no lesson of the evening that this tablet joined.";
            if (!TapStatements.Knows(session, mark.PersonId)) return "That child is not in the club’s file any more.";
            if (!MayAct(mark.By)) return "Whoever made it has no duty on that evening.";
            if (mark.Replaces is not null && mark.Kind != MarkKind.Cleared) return "Only taking back names another mark.";
            switch (mark.Kind)
            {
                case MarkKind.Sighting or MarkKind.Words or MarkKind.Fall:
                    var item = mark.Kind == MarkKind.Fall ? MarkCode.Falls : mark.ItemId ?? Guid.Empty;
                    if (!EvidenceRules.IsSound(mark.Kind, item, mark.Code)) return "It says nothing that can be seen.";
                    return mark.Kind == MarkKind.Fall || EvidenceStatements.KnowsItem(session, item) ? null : "That item is not in the club’s syllabus any more.";
                case MarkKind.Knock:
                    return mark.Code is >= 0 and < MostActivities ? null : "It names no activity.";
                case MarkKind.Cleared when mark.Replaces is { } replaced:
                    return MayTakeBack(replaced, mark);
                default:
                    return null;
            }
        }

        private string? WhyNot(HandedNote note)
        {
            if (join.Role == JoinRole.JuniorLeader) return "A note on a child is an adult’s.";
            if (Lesson(note.LessonId) is not { } lesson || lesson.Date != join.Date) return "It is of no lesson of the evening that this tablet joined.";
            if (!TapStatements.Knows(session, note.PersonId)) return "That child is not in the club’s file any more.";
            return MayAct(note.By) ? null : "Whoever made it has no duty on that evening.";
        }

        // A tablet takes back its own marks only; a knock is taken back by no tap.
        private string? MayTakeBack(Guid replaced, HandedMark mark)
        {
            var command = session.Command(
                """SELECT "DeviceId", "Kind", "PersonId", "LessonId", "ItemId" FROM "Marks" WHERE "Club" = @club AND "Id" = @id""", ("@club", session.Club), ("@id", replaced));
            if (IsConfirmed(replaced)) return "An instructor stands behind it now; correct it on the laptop.";
            using var reader = command.ExecuteReader();
            if (!reader.Read()) return "The mark that it takes back never came.";
            if (session.ReadId(reader, 0) != join.DeviceId) return "A tablet takes back its own marks only; correct it on the laptop.";
            if ((MarkKind)reader.GetInt32(1) == MarkKind.Knock) return "A knock is not taken back by a tap; an instructor corrects it on the laptop.";
            var item = reader.IsDBNull(4) ? (Guid?)null : session.ReadId(reader, 4);
            return session.ReadId(reader, 2) == mark.PersonId && session.ReadId(reader, 3) == mark.LessonId && item == mark.ItemId
                ? null
                : "It takes back a mark of something else.";
        }

        private LessonRow? Lesson(Guid id) => lessons.TryGetValue(id, out var known) ? known : lessons[id] = TapStatements.Lesson(session, id);

        private bool MayAct(Guid person)
        {
            if (person == join.PersonId) return true;
            if (join.Role == JoinRole.JuniorLeader) return false;
            if (!actors.TryGetValue(person, out var may)) actors[person] = may = EvidenceStatements.IsAdultOnDuty(session, person, join.Date);
            return may;
        }

        private Guid? ItemOf(Guid mark)
        {
            using var reader = session.Command("""SELECT "ItemId" FROM "Marks" WHERE "Club" = @club AND "Id" = @id""", ("@club", session.Club), ("@id", mark)).ExecuteReader();
            return reader.Read() && !reader.IsDBNull(0) ? session.ReadId(reader, 0) : null;
        }

        private bool IsConfirmed(Guid mark) => session.Command(
            """SELECT 1 FROM "Marks" WHERE "Club" = @club AND "Replaces" = @mark AND "LessonId" IN (SELECT "LessonId" FROM "Marks" WHERE "Club" = @club AND "Id" = @mark) AND "Kind" = 20""",
            ("@club", session.Club), ("@mark", mark)).ExecuteScalar() is not null;

        private bool IsStored(Guid id) =>
            session.Command("""SELECT 1 FROM "Marks" WHERE "Club" = @club AND "Id" = @id""", ("@club", session.Club), ("@id", id)).ExecuteScalar() is not null;

        // A tablet whose memory was wiped counts from the beginning again; its marks are not lost for that.
        private bool IsFree(int sequence) => sequence > 0 && session.Command(
            """SELECT 1 FROM "Marks" WHERE "Club" = @club AND "DeviceId" = @device AND "Sequence" = @sequence""",
            ("@club", session.Club), ("@device", join.DeviceId), ("@sequence", sequence)).ExecuteScalar() is null;

        private MarkRow Row(HandedMark mark) => new()
        {
            Club = session.Club,
            Id = mark.Id,
            DeviceId = join.DeviceId,
            LessonId = mark.LessonId,
            PersonId = mark.PersonId,
            ById = mark.By,
            MadeAt = mark.MadeAt,
            ReceivedAt = session.Now,
            Kind = mark.Kind,
            At = mark.At,
            Code = mark.Code,
            Replaces = mark.Replaces,
        };
    }
}
