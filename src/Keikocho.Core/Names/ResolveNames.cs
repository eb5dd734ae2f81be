using Keikocho.Core.Kernel;

namespace Keikocho.Core.Names;

/// <summary>
/// What messy spellings of techniques and dojo words mean (statement 56): one name, the few it may be with what tells them apart, or
/// none. Never a silent guess: O-soto-gari and Ko-soto-gari differ by one letter.
/// </summary>
public static class ResolveNames
{
    /// <summary>Resolves every spelling of the question.</summary>
    /// <exception cref="ArgumentException">No names are given, two of them are alike, or a place in a list is empty.</exception>
    public static NamesAnswer Resolve(NamesSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        NoGaps.In(snapshot.Written, "written spellings");
        if (snapshot.Names is not { } names)
            throw new ArgumentException("The question gives no names to look among; add \"names\".", nameof(snapshot));
        return Resolve(snapshot.Written, NameIndex.Of(names), snapshot.Rule ?? new NamesRule());
    }

    /// <summary>Resolves spellings against an index that is ready.</summary>
    public static NamesAnswer Resolve(IReadOnlyList<string> written, NameIndex index, NamesRule rule)
    {
        NoGaps.In(written, "written spellings");
        ArgumentNullException.ThrowIfNull(index);
        ArgumentNullException.ThrowIfNull(rule);
        var resolved = written.Select(w => Shown(w, index.Resolve(w), index, rule)).ToArray();
        int Count<T>() => resolved.Count(r => r.Outcome is T);
        var (one, several, none) = (Count<NameOutcome.One>(), Count<NameOutcome.Several>(), Count<NameOutcome.None>());
        return new NamesAnswer(
            resolved, one, several, none,
            [.. resolved.Select(Why), new SpellingsCounted(written.Count, index.Names.Count, one, several, none)],
            rule.Used());
    }

    private static NameResolved Shown(string written, NameOutcome outcome, NameIndex index, NamesRule rule) =>
        new(written, outcome, outcome is NameOutcome.One one ? index.Find(one.Name) is { } name ? NameShown.Of(name, rule.Macrons) : one.Name : null);

    private static Reason Why(NameResolved resolved) => resolved.Outcome switch
    {
        NameOutcome.One one => new SpellingIsOne(resolved.Written, one.Name, one.How),
        NameOutcome.Several several => new SpellingMayBe(resolved.Written, several.Names),
        _ => new SpellingIsNone(resolved.Written),
    };
}
