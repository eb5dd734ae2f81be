using Keikocho.Core.Evening;
using Keikocho.Store.Marks;

namespace Keikocho.Store.Keeping.Checking;

/// <summary>
/// Folds every mark of something seen again, child by child and item by item, and compares with the stored states. Marks and states come
/// side by side in the same order: memory holds one child and one item, and the days of the lessons.
/// </summary>
internal sealed class CheckEvidence(ReadSnapshot view, int club, Findings findings)
{
    private const string Marks =
        "SELECT \"PersonId\", \"ItemId\", \"Id\", \"DeviceId\", \"Sequence\", \"LessonId\", \"Kind\", \"Code\", \"Replaces\", \"ById\" FROM \"Marks\" "
        + "WHERE \"Club\" = @club AND \"ItemId\" IS NOT NULL AND \"ItemId\" ";

    private const string InOrder = " ORDER BY \"PersonId\", \"ItemId\"";

    private const string ItemStates = "SELECT \"PersonId\", \"ItemId\", \"Evenings\" FROM \"ItemStates\" WHERE \"Club\" = @club ORDER BY \"PersonId\", \"ItemId\"";

    private const string FallStates = "SELECT \"PersonId\", \"Falls\" FROM \"FallStates\" WHERE \"Club\" = @club";

    private const string Lessons = "SELECT \"Id\", \"Date\" FROM \"Lessons\" WHERE \"Club\" = @club";

    private readonly List<DatedMark> group = [];
    private readonly Dictionary<Guid, DateOnly> days = [];

    /// <summary>Compares both kinds of states.</summary>
    public void Run(CancellationToken cancel)
    {
        using (var lessons = LineReading.Of(view, 0, Lessons, club))
        {
            while (lessons.Next()) days.Add(lessons.Id(0), lessons.Day(1));
        }

        // One short row a child; the items' states are many and come as they are read.
        var falls = new Dictionary<Guid, string>();
        using (var stored = LineReading.Of(view, 0, FallStates, club))
        {
            while (stored.Next()) falls.Add(stored.Id(0), stored.Text(1));
        }

        Each(isFalls: true, (person, _, folded) =>
        {
            falls.Remove(person, out var stored);
            Compare(stored ?? "", folded, () => $"the falls of person {person}");
        }, cancel);
        foreach (var person in falls.Keys.Order()) findings.Add(CheckPart.States, $"The state of the falls of person {person} has no mark behind it.");

        using var states = LineReading.Of(view, 1, ItemStates, club);
        var has = states.Next();
        Each(isFalls: false, (person, item, folded) =>
        {
            for (; has && Order(states, person, item) < 0; has = states.Next()) WithoutMark(states);
            var stored = "";
            if (has && Order(states, person, item) == 0)
            {
                stored = states.Text(2);
                has = states.Next();
            }

            Compare(stored, folded, () => $"item {item} of person {person}");
        }, cancel);
        for (; has; has = states.Next()) WithoutMark(states);
    }

    private static int Order(LineReading states, Guid person, Guid item)
    {
        var byPerson = states.Id(0).CompareTo(person);
        return byPerson != 0 ? byPerson : states.Id(1).CompareTo(item);
    }

    private void WithoutMark(LineReading states) =>
        findings.Add(CheckPart.States, $"The state of item {states.Id(1)} of person {states.Id(0)} has no mark behind it.");

    private void Compare(string stored, string? folded, Func<string> what)
    {
        if (folded is null || stored == folded) return;
        findings.Add(CheckPart.States, stored.Length == 0
            ? $"There are marks of {what()} and no state."
            : folded.Length == 0 ? $"There is a state of {what()} and no mark that still speaks." : $"The state of {what()} is not what the marks say.");
    }

    private void Each(bool isFalls, Action<Guid, Guid, string?> found, CancellationToken cancel)
    {
        using var marks = LineReading.Of(view, 0, $"{Marks}{(isFalls ? "=" : "<>")} {view.Literal(MarkCode.Falls)}{InOrder}", club);
        Guid person = default, item = default;
        for (long read = 0; marks.Next(); read++)
        {
            if (read % 50_000 == 0) cancel.ThrowIfCancellationRequested();
            var (nextPerson, nextItem) = (marks.Id(0), marks.Id(1));
            if (group.Count > 0 && (nextPerson != person || nextItem != item)) Finish();
            (person, item) = (nextPerson, nextItem);
            var lesson = marks.Id(5);
            group.Add(new DatedMark(
                new MarkRow
                {
                    Club = club,
                    PersonId = nextPerson,
                    ItemId = nextItem,
                    Id = marks.Id(2),
                    DeviceId = marks.Id(3),
                    Sequence = marks.Whole(4),
                    LessonId = lesson,
                    Kind = (MarkKind)marks.Whole(6),
                    Code = marks.Whole(7),
                    Replaces = marks.IdIfAny(8),
                    ById = marks.IdIfAny(9),
                },
                days.GetValueOrDefault(lesson)));
        }

        if (group.Count > 0) Finish();

        void Finish()
        {
            string? folded = null;
            try
            {
                folded = isFalls ? FoldEvidence.Falls(group) : FoldEvidence.Evenings(group);
            }
            catch (ArgumentException cause)
            {
                findings.Add(CheckPart.Marks, $"The marks of {(isFalls ? "the falls" : $"item {item}")} of person {person} cannot be folded: {CheckStates.SentenceOf(cause)}");
            }

            found(person, item, folded);
            group.Clear();
        }
    }
}
