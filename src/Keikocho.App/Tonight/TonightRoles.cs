using System.Collections.Immutable;
using Keikocho.App.Sightings;
using Keikocho.Core.Safety;
using Keikocho.Store.Book;
using Keikocho.Store.Calendar;
using Keikocho.Store.Marks;

namespace Keikocho.App.Tonight;

/// <summary>
/// Says by role words alone who does only a part of the work tonight. A stand-down and a gate that is shut read the same, so that nobody
/// learns a reason from it.
/// </summary>
public static class TonightRoles
{
    /// <summary>The roles, those who watch first. While a club has marked no fall at all, its gates say nothing of any one child.</summary>
    public static ImmutableArray<TonightRole> Of(ClubBook book, LessonRow lesson, IReadOnlyList<(Guid Person, string Name)> children, IReadOnlyDictionary<Guid, ChildEvidence> seen)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(lesson);
        ArgumentNullException.ThrowIfNull(children);
        ArgumentNullException.ThrowIfNull(seen);
        var marksFalls = seen.Values.Any(s => s.Falls.Count > 0);
        var roles = children.Select(c => (c.Name, Role: Role(book, lesson, seen[c.Person], marksFalls))).ToLookup(c => c.Role, c => c.Name);
        return
        [
            .. new[]
            {
                (RoleWords.Watches, "watches tonight.", "watch tonight."),
                (RoleWords.MovementAlone, "moves alone tonight, without a partner.", "move alone tonight, without a partner."),
                (RoleWords.ToriOnly, "throws tonight, is not thrown.", "throw tonight, are not thrown."),
            }.Where(r => roles.Contains(r.Item1)).Select(r => new TonightRole(roles[r.Item1].Count() == 1 ? r.Item2 : r.Item3, [.. roles[r.Item1]])),
            // Open one way and not another: the way is named, so that nobody is thrown the other.
            .. roles.Where(r => RoleWords.ThrownOnly(r.Key) is not null).Select(r => RoleWords.ThrownOnly(r.Key) is var only && r.Count() == 1
                ? new TonightRole($"throws tonight; {only}.", [.. r])
                : new TonightRole($"throw tonight; {Several(only!)}.", [.. r])),
        ];
    }

    private static string Several(string only) => $"are{only["is".Length..]}";

    private static string Role(ClubBook book, LessonRow lesson, ChildEvidence evidence, bool marksFalls)
    {
        var standing = ChildGates.Standing(book, evidence, lesson.Date);
        if (standing.Role != RoleWords.ThrowsAndIsThrown || !marksFalls) return standing.Role;
        return ChildGates.Of(book, evidence, lesson.Date).Role;
    }
}
