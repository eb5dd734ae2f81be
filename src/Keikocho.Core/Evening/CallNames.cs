using System.Globalization;

using Keikocho.Core.Intake;
using Keikocho.Core.Kernel;

namespace Keikocho.Core.Evening;

/// <summary>A child on a register, as far as the name that is called goes.</summary>
/// <param name="Person">Who.</param>
/// <param name="CallName">The name that is called on the mat.</param>
/// <param name="Family">Family name or its initial; null where not known.</param>
/// <param name="Belt">The rank in words; null where none is worn.</param>
public sealed record NamedChild(PersonId Person, string CallName, string? Family, string? Belt);

/// <summary>How a list shows a child.</summary>
/// <param name="Person">Who.</param>
/// <param name="Name">The name, with a second part where two share the first: "Noor B."</param>
/// <param name="BeltsMatchToo">Another child of the same called name wears the same belt, so a mark on either asks once more (statement 12).</param>
public sealed record ShownName(PersonId Person, string Name, bool BeltsMatchToo);

/// <summary>
/// Tells children of one called name apart (statement 12): by as much of the family name as is needed, else by the belt, else by a
/// number in the order of the register.
/// </summary>
public static class CallNames
{
    /// <summary>The names as every list shows them, in the order of <paramref name="register"/>.</summary>
    /// <exception cref="ArgumentException">One child twice.</exception>
    public static IReadOnlyList<ShownName> Show(IReadOnlyList<NamedChild> register)
    {
        ArgumentNullException.ThrowIfNull(register);
        if (register.Select(c => c.Person).Distinct().Count() != register.Count)
            throw new ArgumentException("A child stands on the register twice.", nameof(register));
        var groups = register.GroupBy(c => Fold(c.CallName), StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.ToList(), StringComparer.Ordinal);
        return register.Select(child => Show(child, groups[Fold(child.CallName)])).ToList();
    }

    private static ShownName Show(NamedChild child, List<NamedChild> group)
    {
        if (group.Count == 1) return new ShownName(child.Person, child.CallName, false);
        var beltsMatch = group.Any(other => other.Person != child.Person && string.Equals(other.Belt, child.Belt, StringComparison.Ordinal));
        return new ShownName(child.Person, $"{child.CallName} {SecondPart(child, group)}", beltsMatch);
    }

    private static string SecondPart(NamedChild child, List<NamedChild> group)
    {
        var others = group.Where(o => o.Person != child.Person).ToList();
        if (child.Family is { Length: > 0 } family)
        {
            var elements = Elements(family);
            for (var length = 1; length <= elements.Length; length++)
            {
                var part = string.Concat(elements.Take(length));
                if (others.All(o => !StartsAlike(o.Family, part, length))) return length == elements.Length ? family : part + ".";
            }

            // The whole name of one begins the other's ("Lee", "Leeson"): the shorter stands in full.
            if (others.All(o => !string.Equals(Fold(o.Family ?? ""), Fold(family), StringComparison.Ordinal))) return family;
        }

        if (child.Belt is not null && others.All(o => !string.Equals(o.Belt, child.Belt, StringComparison.Ordinal))) return $"({child.Belt})";
        return $"({(group.FindIndex(c => c.Person == child.Person) + 1).ToString(CultureInfo.InvariantCulture)})";
    }

    private static bool StartsAlike(string? family, string part, int length)
    {
        if (string.IsNullOrEmpty(family)) return false;
        var elements = Elements(family);
        return string.Equals(Fold(string.Concat(elements.Take(length))), Fold(part), StringComparison.Ordinal);
    }

    // A letter with its accents is one element, so that an initial is never half a letter.
    private static string[] Elements(string text)
    {
        var elements = new List<string>();
        var all = StringInfo.GetTextElementEnumerator(text);
        while (all.MoveNext()) elements.Add(all.GetTextElement());
        return [.. elements];
    }

    private static string Fold(string text) => NameFold.Fold(text);
}
