using Keikocho.Core.Evening;
using Keikocho.Store.Calendar;
using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;
using Keikocho.Store.Kernel;
using Keikocho.Store.People;

namespace Keikocho.Store.Marks;

/// <content>One piece of work inside one transaction.</content>
public sealed partial class SightingsStore
{
    /// <summary>Adds marks, remembers which states they touch, and folds those once at the end.</summary>
    internal sealed class Evening(WriteSession session, DateOnly today, Guid? by, Guid device)
    {
        private readonly Dictionary<Guid, LessonRow?> lessons = [];
        private readonly Dictionary<Guid, bool> people = [];
        private readonly Dictionary<Guid, bool> items = [];
        private readonly Dictionary<DateOnly, SignOff> rights = [];
        private readonly HashSet<(Guid Person, Guid Item)> touched = [];
        private readonly HashSet<Guid> changed = [];
        private int made, suggestions;
        private bool isPast;

        public LessonRow? Lesson(Guid id) => lessons.TryGetValue(id, out var known) ? known : lessons[id] = TapStatements.Lesson(session, id);

        public bool Knows(Guid lesson, Guid person, Guid item)
        {
            // Nobody has seen anything yet at a lesson to come.
            if (Lesson(lesson) is not { } known || known.Date > today) return false;
            if (!people.TryGetValue(person, out var isKnown)) people[person] = isKnown = TapStatements.Knows(session, person);
            if (!isKnown || item == MarkCode.Falls) return isKnown;
            return items.TryGetValue(item, out var isItem) ? isItem : items[item] = EvidenceStatements.KnowsItem(session, item);
        }

        public bool MayConfirm(Guid item, DateOnly day)
        {
            if (!rights.TryGetValue(day, out var right)) rights[day] = right = EvidenceStatements.SignOffOf(session, by, day);
            return item == MarkCode.Falls ? right.Falls : right.Sightings;
        }

        /// <summary>Whoever may sign off changes any mark; others only their own that nobody has confirmed.</summary>
        public bool MayChange(StandingMark mark) => MayConfirm(mark.Mark.ItemId!.Value, today) || (mark.Mark.ById == by && !mark.Confirmed);

        /// <summary>The same of any mark, one that takes back or confirms too.</summary>
        public bool MayChange(MarkRow mark) => MayConfirm(mark.ItemId!.Value, today) || (mark.ById == by && (mark.Code & MarkCode.ByRight) == 0);

        public IReadOnlyList<StandingMark> StandingAt(Guid lesson) => StandingEvidence.Of([.. EvidenceStatements.OfLesson(session, lesson).Select(m => m.Mark)]);

        public StandingMark? Standing(Guid mark) =>
            EvidenceStatements.One(session, mark) is { Mark: { ItemId: { } item } row }
                ? StandingEvidence.Of([.. EvidenceStatements.OfItem(session, row.PersonId, item).Select(m => m.Mark)]).FirstOrDefault(m => m.Mark.Id == mark)
                : null;

        /// <summary>Adds one mark; one whose id is there already changes nothing.</summary>
        public void Add(
            Guid id, Guid lesson, Guid person, Guid item, MarkKind kind, int code, Guid? replaces = null, DateTimeOffset? madeAt = null, int? sequence = null)
        {
            // What is marked is judged by the duties of the lesson's day. Who may sign off today stands behind what he or she enters today,
            // of whatever evening, as a confirmation would.
            var on = Lesson(lesson)!.Date;
            var isMark = kind is MarkKind.Sighting or MarkKind.Words or MarkKind.Fall;
            var byRight = MayConfirm(item, today) || (isMark && MayConfirm(item, on));
            var row = new MarkRow
            {
                Club = session.Club,
                Id = id,
                DeviceId = device,
                LessonId = lesson,
                PersonId = person,
                ById = by,
                MadeAt = madeAt ?? session.Now,
                ReceivedAt = session.Now,
                Kind = kind,
                ItemId = item,
                Code = code | (byRight ? MarkCode.ByRight : 0),
                Replaces = replaces,
            };
            if (!TapStatements.Insert(session, row, sequence)) return;
            made++;
            if (!EvidenceCode.SignsOff(row) && kind != MarkKind.Cleared) suggestions++;
            if (replaces is not null) changed.Add(person);
            isPast |= on < today;
            touched.Add((person, item));
        }

        /// <summary>Another word in the place of one: a correction by whoever may, else a word on the same device that names the earlier one.</summary>
        public void Replace(Guid id, StandingMark mark, int code)
        {
            var (lesson, person, item) = (mark.Mark.LessonId, mark.Mark.PersonId, mark.Mark.ItemId!.Value);
            if (MayConfirm(item, today)) Add(id, lesson, person, item, MarkKind.Corrected, EvidenceCode.OfCorrection(mark.Kind, code), mark.Mark.Id);
            else if (code == 0) Add(id, lesson, person, item, MarkKind.Cleared, 0, mark.Mark.Id);
            else Add(id, lesson, person, item, mark.Kind, code, mark.Mark.DeviceId == device ? mark.Mark.Id : null);
        }

        /// <summary>Makes one cell stand as it is given.</summary>
        public void Set(Guid command, Guid lesson, SeenCell cell, IReadOnlyList<StandingMark> standing)
        {
            Guid Id(string use) => AnotherId.Of(command, $"{cell.PersonId:D} {cell.ItemId:D} {cell.Place} {cell.Code} {use}");
            var mine = standing.Where(MayChange).ToList();
            if (cell.Code == 0)
            {
                foreach (var mark in mine) Replace(Id($"back {mark.Mark.Id:D}"), mark, 0);
                return;
            }

            var isFall = cell.ItemId == MarkCode.Falls;
            var same = standing.Where(m => m.Code == cell.Code).ToList();
            if (same.Count > 0 && (isFall || same.Count == standing.Count))
            {
                // It stands so already; who may stands behind it where it is a suggestion still.
                if (same.All(m => !m.Confirmed) && MayConfirm(cell.ItemId, today))
                    foreach (var mark in same) Add(Id($"confirm {mark.Mark.Id:D}"), lesson, cell.PersonId, cell.ItemId, MarkKind.Confirmed, 0, mark.Mark.Id);
                return;
            }

            var others = mine.Where(m => m.Code != cell.Code).ToList();
            if (isFall || others.Count == 0) Add(Id("new"), lesson, cell.PersonId, cell.ItemId, cell.Kind, cell.Code);
            else foreach (var mark in others) Replace(Id($"instead {mark.Mark.Id:D}"), mark, cell.Code);
        }

        /// <summary>Folds what was touched, and says what came of it.</summary>
        public EvidenceAnswer Done(bool note)
        {
            if (made == 0) return new EvidenceAnswer(EvidenceOutcome.AlreadyStored);
            foreach (var (person, item) in touched.OrderBy(t => t.Person).ThenBy(t => t.Item)) EvidenceStatements.StoreState(session, person, item);
            if (isPast) Revise.Past(session);
            if (note) foreach (var person in changed.Order()) session.Note(TrailKind.SightingChanged, person, by, device);
            return new EvidenceAnswer(EvidenceOutcome.Stored, made, suggestions);
        }
    }
}
