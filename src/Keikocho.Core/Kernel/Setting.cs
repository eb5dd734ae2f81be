using System.Globalization;

namespace Keikocho.Core.Kernel;

/// <summary>One thing a club may set: its key, what it means, the proposed value, unit, range and source.</summary>
/// <param name="Key">Stored name, "sum.setting"; never changes its meaning.</param>
/// <param name="Meaning">What it is, in a few plain words.</param>
/// <param name="Unit">Unit of the value; empty where it has none.</param>
/// <param name="Source">Where the proposed value comes from; <see cref="Ours"/> where nobody published one.</param>
public abstract record Setting(string Key, string Meaning, string Unit, string Source)
{
    /// <summary>The source line of a value that is our own proposal.</summary>
    public const string Ours = "ours, no source";

    /// <summary>The proposed value as text.</summary>
    public abstract string Proposed { get; }

    /// <summary>The allowed values in words: "0 to 30", "yes or no".</summary>
    public abstract string Range { get; }

    /// <summary>Null when <paramref name="text"/> is an allowed value; else one sentence that says what is allowed.</summary>
    public abstract string? Refusal(string text);
}

/// <summary>A whole number within a range, ends included.</summary>
/// <param name="Key">Stored name.</param>
/// <param name="Meaning">What it is.</param>
/// <param name="ProposedValue">The proposed value.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Least">Smallest allowed value.</param>
/// <param name="Most">Largest allowed value.</param>
/// <param name="Source">Source line.</param>
public sealed record WholeNumberSetting(
    string Key, string Meaning, int ProposedValue, string Unit, int Least, int Most, string Source)
    : Setting(Key, Meaning, Unit, Source)
{
    /// <inheritdoc/>
    public override string Proposed => Text(ProposedValue);

    /// <inheritdoc/>
    public override string Range => $"{Text(Least)} to {Text(Most)}";

    /// <inheritdoc/>
    public override string? Refusal(string text) =>
        int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var value)
        && value >= Least && value <= Most
            ? null
            : $"{Meaning}: give a whole number from {Range}.";

    /// <summary>This setting with the value in use.</summary>
    public SettingUsed Use(int value) => new(Key, Text(value), Unit, Source);

    internal void Guard(int value, string name)
    {
        if (value < Least || value > Most)
            throw new ArgumentOutOfRangeException(name, value, $"{Meaning}: {Range} is allowed.");
    }

    private static string Text(int value) => value.ToString(CultureInfo.InvariantCulture);
}

/// <summary>Yes or no.</summary>
/// <param name="Key">Stored name.</param>
/// <param name="Meaning">What "yes" means.</param>
/// <param name="ProposedValue">The proposed value.</param>
/// <param name="Source">Source line.</param>
public sealed record YesNoSetting(string Key, string Meaning, bool ProposedValue, string Source)
    : Setting(Key, Meaning, "", Source)
{
    /// <inheritdoc/>
    public override string Proposed => Text(ProposedValue);

    /// <inheritdoc/>
    public override string Range => "yes or no";

    /// <inheritdoc/>
    public override string? Refusal(string text) => text is "yes" or "no" ? null : $"{Meaning}: say yes or no.";

    /// <summary>This setting with the value in use.</summary>
    public SettingUsed Use(bool value) => new(Key, Text(value), "", Source);

    private static string Text(bool value) => value ? "yes" : "no";
}

/// <summary>One of a few named choices.</summary>
/// <param name="Key">Stored name.</param>
/// <param name="Meaning">What is chosen.</param>
/// <param name="ProposedValue">The proposed choice.</param>
/// <param name="Choices">All choices, in the order to show them.</param>
/// <param name="Source">Source line.</param>
public sealed record ChoiceSetting(
    string Key, string Meaning, string ProposedValue, IReadOnlyList<string> Choices, string Source)
    : Setting(Key, Meaning, "", Source)
{
    /// <inheritdoc/>
    public override string Proposed => ProposedValue;

    /// <inheritdoc/>
    public override string Range => string.Join(" or ", Choices);

    /// <inheritdoc/>
    public override string? Refusal(string text) => Choices.Contains(text) ? null : $"{Meaning}: choose {Range}.";

    /// <summary>This setting with the value in use.</summary>
    public SettingUsed Use(string value) => new(Key, value, "", Source);
}

/// <summary>A value that a sum used, with its source, carried by the answer.</summary>
/// <param name="Key">The setting's stored name.</param>
/// <param name="Value">The value in use, as text.</param>
/// <param name="Unit">Its unit; empty where it has none.</param>
/// <param name="Source">Source line of the proposed value.</param>
public sealed record SettingUsed(string Key, string Value, string Unit, string Source);
