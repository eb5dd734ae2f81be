using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;

namespace Keikocho.App.Club.Settings;

/// <summary>Settings in words.</summary>
public static class SettingWords
{
    private static readonly Dictionary<string, string> Choices = new(StringComparer.Ordinal)
    {
        ["birthday"] = "the birthday",
        ["endOfThatTerm"] = "the end of that term",
        ["schoolYearEnd"] = "the end of the school year",
        ["sumOfFractions"] = "added, then rounded up",
        ["roundEachBand"] = "rounded up for each age, then added",
    };

    /// <summary>A value with its unit: "5 minutes", "yes", "the end of that term".</summary>
    public static string Value(Setting setting, string value)
    {
        ArgumentNullException.ThrowIfNull(setting);
        var words = Choice(value);
        return setting.Unit.Length == 0 || setting is not WholeNumberSetting ? words : $"{words} {setting.Unit}";
    }

    /// <summary>One of the named choices in plain words; any other text as it is.</summary>
    public static string Choice(string value) => Choices.TryGetValue(value, out var words) ? words
        : KnockProtocols.All.FirstOrDefault(p => p.Key == value) is { } protocol ? $"{protocol.Name}; source: {protocol.Source}" : value;

    /// <summary>The allowed values in words.</summary>
    public static string Range(Setting setting)
    {
        ArgumentNullException.ThrowIfNull(setting);
        return setting is ChoiceSetting choice ? string.Join(" or ", choice.Choices.Select(Choice)) : setting.Range;
    }
}
