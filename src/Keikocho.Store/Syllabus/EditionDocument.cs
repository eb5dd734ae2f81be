using System.Text.Json;
using Keikocho.Core.Kernel;
using Keikocho.Core.Syllabus;

namespace Keikocho.Store.Syllabus;

/// <summary>An edition and an age rule as the one text that their rows hold. What was written once must always be read.</summary>
public static class EditionDocument
{
    /// <summary>The text of an edition.</summary>
    public static string Write(Edition edition)
    {
        ArgumentNullException.ThrowIfNull(edition);
        return SumJson.Write(edition);
    }

    /// <summary>The edition of a text.</summary>
    /// <exception cref="JsonException">The text is no edition.</exception>
    public static Edition Read(string document) => SumJson.Read<Edition>(document);

    /// <summary>The text of an age rule.</summary>
    public static string WriteRule(AgeRule rule)
    {
        ArgumentNullException.ThrowIfNull(rule);
        return SumJson.Write(rule);
    }

    /// <summary>The age rule of a text.</summary>
    /// <exception cref="JsonException">The text is no age rule.</exception>
    public static AgeRule ReadRule(string document) => SumJson.Read<AgeRule>(document);
}
