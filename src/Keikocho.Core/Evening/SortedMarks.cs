using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;

namespace Keikocho.Core.Evening;

/// <summary>The different marks of several tablets, each with what it speaks of: presence, an item, falls, a knock.</summary>
internal sealed class SortedMarks
{
    private readonly Dictionary<MarkId, TabletMark> _known = [];
    private readonly Dictionary<LessonId, MergeLesson> _lessons;
    private readonly Dictionary<PersonId, MergePerson> _people;

    public SortedMarks(MergeSnapshot snapshot)
    {
        NoGaps.In(snapshot.Lessons, "lessons");
        NoGaps.In(snapshot.People, "people");
        NoGaps.In(snapshot.Marks, "marks");
        _lessons = Once(snapshot.Lessons, l => l.Lesson, "lesson", l => l.Value);
        _people = Once(snapshot.People, p => p.Person, "person", p => p.Value);
        foreach (var lesson in snapshot.Lessons)
        {
            if (lesson.Times is null) throw new ArgumentException($"The lesson of {lesson.On.Full()} has no hours; add them.", nameof(snapshot));
            lesson.Times.Guard();
        }

        foreach (var mark in snapshot.Marks)
        {
            if (!_lessons.ContainsKey(mark.Lesson))
                throw new ArgumentException($"Mark {mark.Id.Value} is of a lesson that is not among the lessons; add it.", nameof(snapshot));
            if (!_people.ContainsKey(mark.Person) || !_people.ContainsKey(mark.By))
                throw new ArgumentException($"Mark {mark.Id.Value} names somebody who is not among the people; add them.", nameof(snapshot));
            if (mark.Kind is MarkKind.Sighting or MarkKind.Words && mark.Item is null)
                throw new ArgumentException($"Mark {mark.Id.Value} names no item; add it.", nameof(snapshot));
            // The laptop may have received one mark twice, at two times: it is one mark all the same.
            if (!_known.TryAdd(mark.Id, mark) && _known[mark.Id] with { ReceivedAt = null } != mark with { ReceivedAt = null })
                throw new ArgumentException($"Two different marks have the id {mark.Id.Value}; one of them was made up.", nameof(snapshot));
        }
    }

    public IEnumerable<TabletMark> All => _known.Values;

    public int Count => _known.Count;

    public MergeLesson Lesson(TabletMark mark) => _lessons[mark.Lesson];

    public MergePerson Person(PersonId person) => _people[person];

    public IEnumerable<TabletMark> OfPresence => All.Where(m => TopicOf(m) == Topic.Presence);

    public IEnumerable<(TabletMark Mark, ItemId Item)> OfItems => All.Where(m => TopicOf(m) == Topic.Item).Select(m => (m, ItemOf(m)));

    public IEnumerable<TabletMark> OfFalls => All.Where(m => TopicOf(m) == Topic.Falls);

    public IEnumerable<TabletMark> Knocks => All.Where(m => TopicOf(m) == Topic.Knock && m.Kind == MarkKind.Knock);

    public static AttendanceMark Presence(TabletMark m) =>
        new(m.Id, m.Device, m.Sequence, m.Kind, m.At, m.LateWithoutTime, m.Replaces, m.CorrectedTo, m.By, m.MadeAt);

    public SightingMark Sighting(TabletMark m) =>
        new(m.Id, m.Device, m.Sequence, Lesson(m).On, m.Kind, m.Word, false, m.Replaces, m.By, Confirms(m));

    public FallTap Tap(TabletMark m) =>
        new(m.Id, m.Device, m.Sequence, Lesson(m).On, m.Kind, m.Fall, m.Replaces, Person(m.By).Name, Confirms(m));

    private bool Confirms(TabletMark m) => m.Confirms ?? Person(m.By).Confirms;

    private enum Topic
    {
        Presence,
        Item,
        Falls,
        Knock,
    }

    // An undo, a correction or a confirmation that does not say what it is about is about what it names.
    private Topic TopicOf(TabletMark mark)
    {
        var at = mark;
        for (var steps = 0; steps <= _known.Count; steps++)
        {
            if (at.Item is not null) return Topic.Item;
            if (at.Fall is not null || at.Kind == MarkKind.Fall) return Topic.Falls;
            if (at.Kind == MarkKind.Knock) return Topic.Knock;
            if (at.CorrectedTo is not null || at.Replaces is not { } id || !_known.TryGetValue(id, out at!)) return Topic.Presence;
        }

        return Topic.Presence;
    }

    private ItemId ItemOf(TabletMark mark)
    {
        while (mark.Item is null) mark = _known[mark.Replaces!.Value];
        return mark.Item.Value;
    }

    private static Dictionary<TKey, T> Once<TKey, T>(IReadOnlyList<T> list, Func<T, TKey> key, string what, Func<TKey, Guid> id)
        where TKey : notnull
    {
        var known = new Dictionary<TKey, T>();
        foreach (var one in list)
        {
            if (!known.TryAdd(key(one), one))
                throw new ArgumentException($"The {what} {id(key(one))} is listed twice; take one out.", nameof(list));
        }

        return known;
    }
}
