using Keikocho.App.Club;
using Keikocho.App.Sightings;
using Keikocho.Core.Calendar;
using Keikocho.Core.Evening;
using Keikocho.Core.Safety;
using Keikocho.Store.Book;
using Keikocho.Store.Calendar;
using Keikocho.Store.Evening;
using Keikocho.Store.Marks;

namespace Keikocho.App.Cards;

/// <summary>
/// What a card knows of the children: what was seen and shown before tonight, so that a mark of tonight does not turn the card over
/// in the middle of the lesson; falls and stand-downs of tonight count at once.
/// </summary>
public sealed class CardChildren(ClubBook book, LessonRow lesson, ProgrammeReckoning reckoning, IReadOnlyDictionary<Guid, ChildEvidence> evidence, IReadOnlyList<HeldShowing> showings)
{
    private const int OfLate = 4;
    private readonly ProgrammeRow programme = book.Programme(lesson.ProgrammeId)!;
    private readonly int evenings = ClubRules.Readiness(book, lesson.Date).TechniqueEvenings;
    private readonly Dictionary<Guid, DateOnly[]> daysBefore = [];
    private readonly ILookup<Guid, HeldShowing> shownBefore = showings.Where(s => s.On < lesson.Date).ToLookup(s => s.ItemId);

    /// <summary>One child.</summary>
    /// <param name="person">Who.</param>
    /// <param name="name">As called.</param>
    /// <param name="words">The words that it may be asked.</param>
    public CardChild Child(Guid person, string name, IEnumerable<(Guid Id, string Key)> words)
    {
        ArgumentNullException.ThrowIfNull(words);
        var own = evidence[person];
        var reckoned = reckoning.Children.GetValueOrDefault(person);
        var standing = ChildGates.Standing(book, own, lesson.Date);
        var before = Before(own);
        return new CardChild(
            person.ToString("D"), name, reckoned?.IsNewcomer ?? true,
            reckoned?.LastLesson is { } last && last <= lesson.Date && ReturnAfterAbsence.Reckon(lesson.Date, last, new ReturnRule()).SeeAgain.Contains(SeeAgain.Falls),
            ToTest(reckoned), standing.MayFall, standing.MayHaveContact, standing.MayBeOnTheMat, standing.SparesTheNeck,
            [.. ChildGates.Of(book, own, lesson.Date).Ways.Select(w => new CardGate(w.Way, [.. w.Stages.Where(s => s.State == GateState.Open).Select(s => s.Stage)]))],
            Unseen(own, before), [.. words.Select(w => Asked(own, before, w)).OfType<AskedBefore>()]);
    }

    /// <summary>Where a child stands with an item.</summary>
    public CardStanding Standing(Guid person, Guid item)
    {
        var own = evidence[person];
        var before = Before(own);
        var seen = (own.Items.GetValueOrDefault(item) ?? []).Where(e => e.On < lesson.Date).ToList();
        // Shown to a child: it was there at that lesson, at that end.
        var shown = shownBefore[item].Where(s => Array.BinarySearch(before, s.On) >= 0 && (int)book.EndOf(person, programme, book.Lesson(s.LessonId), s.On) == s.End)
            .Select(s => s.On).Concat(seen.Select(e => e.On)).ToHashSet();
        if (shown.Count == 0) return CardStanding.NeverShown;
        var signed = seen.Any(e => e is { Settled: true, Confirmed: true }) || seen.Count(e => e is { Confirmed: true, Word: SeenWord.Good }) >= evenings;
        return !signed ? CardStanding.NotSigned : before.TakeLast(OfLate).Any(shown.Contains) ? CardStanding.Fresh : CardStanding.Stale;
    }

    // A test that the child cannot reach in time is no target.
    private static int? ToTest(ChildReckoning? own) => own?.Clock is { Left: { } left } clock && clock.Needed <= left ? left : null;

    // In order of the days, as the evidence has them.
    private DateOnly[] Before(ChildEvidence own) =>
        daysBefore.TryGetValue(own.PersonId, out var known) ? known : daysBefore[own.PersonId] = [.. own.OnTheMat.Where(d => d < lesson.Date)];

    private int Unseen(ChildEvidence own, DateOnly[] before)
    {
        var looks = own.Items.Values.SelectMany(e => e).Where(e => e.Confirmed && e.On < lesson.Date).Select(e => e.On)
            .Concat(own.Falls.Where(f => f.Confirmed && f.On < lesson.Date).Select(f => f.On)).ToList();
        return looks.Count == 0 ? before.Length : before.Count(d => d > looks.Max());
    }

    private AskedBefore? Asked(ChildEvidence own, DateOnly[] before, (Guid Id, string Key) word)
    {
        var asked = (own.Items.GetValueOrDefault(word.Id) ?? []).Where(e => e.On < lesson.Date && e.Word is not null).ToList();
        return asked.Count == 0
            ? null
            : new AskedBefore(word.Key, before.Count(d => d > asked[^1].On) + 1, WordsDueRule.StepAfter(asked.Select(e => e.Word == SeenWord.Good)));
    }
}
