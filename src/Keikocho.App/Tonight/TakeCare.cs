using System.Collections.Immutable;
using Keikocho.App.Club;
using Keikocho.App.Sightings;
using Keikocho.Core.Calendar;
using Keikocho.Core.Safety;
using Keikocho.Store.Book;
using Keikocho.Store.Calendar;
using Keikocho.Store.Marks;

namespace Keikocho.App.Tonight;

/// <summary>Children to take care of in the same way, and what to do; no reason that a child or parent may not hear.</summary>
/// <param name="Names">Names as called, in register order.</param>
/// <param name="Do">What to do, for one or for several: "throws tonight, is not thrown."</param>
/// <param name="IsFolded">So many, or so ordinary, that the names stand in a fold.</param>
public sealed record TonightLine(ImmutableArray<string> Names, string Do, bool IsFolded = false);

/// <summary>A child of the evening's register, and what its lines rest on.</summary>
/// <param name="PersonId">Who.</param>
/// <param name="Name">The name as called.</param>
/// <param name="Own">Its reckoning; null before the first lesson is counted.</param>
/// <param name="Clash">Two devices disagree.</param>
/// <param name="Seen">What was seen of it.</param>
public sealed record CareChild(Guid PersonId, string Name, ChildReckoning? Own, bool Clash, ChildEvidence Seen);

/// <summary>
/// Whom to take care of tonight. By name stands only whose state is special: under a stand-down, the head touched of late, back after an
/// absence, new. A stand-down, a touched head and a newcomer's shut gates read the same, so that nobody learns a reason from it. All others
/// who are not thrown are counted on one line.
/// </summary>
public static class TakeCare
{
    /// <summary>More names than this on one line stand in a fold.</summary>
    public const int MostNames = 12;

    private const string Watches = "Watches tonight.|Watch tonight.";
    private const string Alone = "Moves alone tonight, without a partner.|Move alone tonight, without a partner.";
    private const string ToriOnly = "Throws tonight, is not thrown.|Throw tonight, are not thrown.";
    private const string FirstEvening = "First evening: beside a steady child, falls first, turning in only.";
    private const string LongAway = "Back after six weeks or more: falls and the stop word first, holds before throws, no free practice.";
    private const string NoBirthDate = "Birth date not held yet: counts with the youngest.";
    private const string Clash = "Two devices say different things: look at the marks.";

    /// <summary>Whether nobody of these has a fall marked at all: then the gates say nothing of any one child.</summary>
    public static bool NoFallIsMarked(IEnumerable<CareChild> register) => register.All(c => c.Seen.Falls.Count == 0);

    /// <summary>The lines: what somebody may not do first, then whom to look after, then the others who are not thrown.</summary>
    /// <param name="book">The club.</param>
    /// <param name="lesson">The lesson.</param>
    /// <param name="children">Those on the mat, or everybody expected, in register order.</param>
    /// <param name="marksFalls">Whether the club marks falls.</param>
    public static ImmutableArray<TonightLine> Of(ClubBook book, LessonRow lesson, IReadOnlyList<CareChild> children, bool marksFalls)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(lesson);
        ArgumentNullException.ThrowIfNull(children);
        var roles = new List<(string Name, string Do)>();
        var notes = new List<(string Name, string Do)>();
        var others = new List<string>();
        foreach (var child in children)
        {
            var standing = ChildGates.Standing(book, child.Seen, lesson.Date);
            var own = Notes(book, lesson, child, standing).ToList();
            notes.AddRange(own.Select(n => (child.Name, n.Do)));
            if (standing.Role != RoleWords.ThrowsAndIsThrown) roles.Add((child.Name, Words(standing.Role)));
            else if (marksFalls && Gate(book, lesson, child, own.Any(n => n.SaysFalls)) is { } gate)
            {
                if (gate.Length > 0) roles.Add((child.Name, gate));
                else others.Add(child.Name);
            }
        }

        // So many by name would hide each of them: then all who are not thrown are one line.
        var named = roles.Where(r => r.Do == ToriOnly).Select(r => r.Name).ToHashSet(StringComparer.Ordinal);
        if (named.Count > MostNames)
        {
            roles.RemoveAll(r => r.Do == ToriOnly);
            others = [.. children.Select(c => c.Name).Where(n => named.Contains(n) || others.Contains(n))];
            named.Clear();
        }

        string[] order = [Watches, Alone];
        return
        [
            .. Lines(roles.OrderBy(r => Array.IndexOf(order, r.Do) is >= 0 and var place ? place : order.Length).ThenBy(r => r.Do == ToriOnly)),
            .. Lines(notes),
            .. others.Count == 0 ? [] : new[] { new TonightLine([.. others], Others(others.Count, named.Count > 0), IsFolded: true) },
        ];
    }

    private static string Others(int count, bool besideNamed) => (count, besideNamed) switch
    {
        (1, true) => "other throws tonight and is not thrown",
        (1, false) => "throws tonight and is not thrown",
        (_, true) => "others throw tonight and are not thrown",
        _ => "throw tonight and are not thrown",
    };

    // Null: nothing to say. Empty: one of the many whose gates are shut. Words: by name.
    private static string? Gate(ClubBook book, LessonRow lesson, CareChild child, bool isSaid)
    {
        var gates = ChildGates.Of(book, child.Seen, lesson.Date);
        var days = ClubRules.FallGate(book, lesson.Date).FreshDays;
        var touched = child.Seen.Falls.Where(f => !f.Clean && f.On <= lesson.Date && f.On.AddDays(days) >= lesson.Date).Select(f => new FallWay(f.Direction, f.Side)).ToHashSet();
        // Open one way and not another: the way is named, so that nobody is thrown the other.
        if (RoleWords.ThrownOnly(gates.Role) is { } only) return $"Throws tonight; {only}.|Throw tonight; are{only["is".Length..]}.";
        if (gates.Role != RoleWords.ToriOnly)
        {
            var shut = gates.Ways.Where(w => touched.Contains(w.Way) && w.OpenTo < FirstStageWithPartner).Select(w => w.Way).ToList();
            return shut.Count == 0 ? null : $"Is not thrown {FallWords.Together(shut, "or")} tonight.|Are not thrown {FallWords.Together(shut, "or")} tonight.";
        }

        if (touched.Count > 0) return ToriOnly;
        return isSaid ? null : child.Own is { IsNewcomer: true } ? ToriOnly : "";
    }

    // From this stage on somebody else has a hand in the fall.
    private const int FirstStageWithPartner = 4;

    private static IEnumerable<(string Do, bool SaysFalls)> Notes(ClubBook book, LessonRow lesson, CareChild child, StandDownsAnswer standing)
    {
        // Who may not fall is not asked to show a fall first.
        var mayFall = standing.Role == RoleWords.ThrowsAndIsThrown;
        if (child.Own is not { LessonsEver: > 0 } own)
        {
            yield return (mayFall ? FirstEvening : "First evening: beside a steady child.", true);
            yield break;
        }

        if (own.LastLesson is { } last && lesson.Date >= last)
        {
            var back = ReturnAfterAbsence.Reckon(lesson.Date, last, new ReturnRule());
            if (back.SeeAgain.Contains(SeeAgain.StopWord)) yield return (mayFall ? LongAway : "Back after six weeks or more: the stop word first, no free practice.", true);
            else if (back.SeeAgain.Contains(SeeAgain.Falls) && mayFall) yield return ($"Back after {back.DaysAway} days: falls to be seen again before being thrown.", true);
        }

        if (book.Person(child.PersonId)!.Born is null && own.IsNewcomer) yield return (NoBirthDate, false);
        if (child.Clash) yield return (Clash, false);
    }

    private static string Words(string role) => role switch
    {
        RoleWords.Watches => Watches,
        RoleWords.MovementAlone => Alone,
        _ => ToriOnly,
    };

    private static IEnumerable<TonightLine> Lines(IEnumerable<(string Name, string Do)> lines) =>
        lines.GroupBy(l => l.Do, l => l.Name).Select(g => g.Count() <= MostNames
            ? new TonightLine([.. g], Sentence(g.Key, g.Count()))
            : new TonightLine([.. g], $"children: {Sentence(g.Key, g.Count())}", IsFolded: true));

    // "one|several"; a sentence that fits both stands alone.
    private static string Sentence(string words, int count)
    {
        var parts = words.Split('|');
        return count == 1 ? parts[0] : parts[^1];
    }
}
