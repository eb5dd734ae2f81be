using Keikocho.Core.Safety;

namespace Keikocho.Store.Safety;

/// <summary>Puts the question about a child's knocks together from what is kept.</summary>
public static class KnockQuestion
{
    /// <summary>The question; null where no knock of the child is still to be recovered from, or ever was.</summary>
    /// <param name="knocks">Every knock of the child, with its record.</param>
    /// <param name="standDowns">Every stand-down of the child.</param>
    /// <param name="today">The day asked about.</param>
    /// <param name="rule">The club's rule.</param>
    /// <param name="lessons">Lessons to come.</param>
    /// <param name="tests">Tests to come.</param>
    /// <param name="nameOf">The name of an adult; null for one whose name was erased.</param>
    public static HeadKnockSnapshot? Of(
        IReadOnlyList<HeldKnock> knocks, IEnumerable<HeldStandDown> standDowns, DateOnly today, KnockRule rule,
        IReadOnlyList<DateOnly> lessons, IReadOnlyList<DateOnly> tests, Func<Guid, string?> nameOf)
    {
        ArgumentNullException.ThrowIfNull(knocks);
        ArgumentNullException.ThrowIfNull(nameOf);
        var hurt = knocks.Where(k => k.Counts && k.On <= today).OrderBy(k => k.On).ThenBy(k => k.MadeAt).ThenBy(k => k.Id).ToList();
        if (hurt.Count == 0) return null;
        var own = KnockStandDowns.Of(hurt, standDowns);
        string Name(Guid id) => nameOf(id) ?? "an adult whose name was erased";

        // A knock after everything of the one before was lifted is a new story; before that it is a further knock of the same.
        var story = new List<HeldKnock>();
        foreach (var knock in hurt)
        {
            var before = KnockStandDowns.Of(story, own);
            if (before.Count > 0 && before.All(s => s.LiftedOn < knock.On)) story.Clear();
            story.Add(knock);
        }

        var first = story[0].On;
        var lines = knocks.Where(k => k.Counts).SelectMany(k => k.Lines).Where(l => l.On >= first && l.On <= today).ToList();
        var brought = KnockStandDowns.Of(story, own);
        var standing = brought.Where(s => s.LiftedOn is not { } day || day > today).ToList();
        var last = brought.Except(standing).OrderBy(s => s.LiftedOn).ThenBy(s => s.Id).LastOrDefault();
        var lifting = last is { LiftedOn: { } on, LiftedById: { } by } ? new KnockLifting(on, Name(by)) : null;
        return new HeadKnockSnapshot(
            first,
            today,
            [.. lines.Where(l => l.Kind == KnockLine.FreeFrom).Select(l => l.On!.Value)],
            [.. lines.Where(l => l.Kind == KnockLine.SymptomsAgain).Select(l => l.On!.Value)],
            [.. lines.Where(l => l.Kind == KnockLine.Advice).Select(l => new KnockAdvice(l.On!.Value, l.Words ?? "not said", Name(l.ById)))],
            [.. story.Skip(1).Select(k => k.On)],
            standing.Count > 0 && standing.All(s => s.Scope == StandDownScope.NoContact) ? lifting : null,
            standing.Count == 0 ? lifting : null,
            lessons,
            tests,
            rule);
    }

    /// <summary>Whether a stand-down that stands belongs to a knock that the child has not recovered from.</summary>
    public static bool Belongs(IReadOnlyList<HeldKnock> knocks, HeldStandDown standDown)
    {
        ArgumentNullException.ThrowIfNull(knocks);
        return KnockStandDowns.Of(knocks.Where(k => k.Counts), [standDown]).Count > 0;
    }
}
