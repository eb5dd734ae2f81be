using System.Globalization;
using Keikocho.Core.Safety;
using Keikocho.Store.Starter;

namespace Keikocho.App.Sightings;

/// <summary>Falls as forms write and read them.</summary>
public static class FallForms
{
    private static readonly (FallWay Way, string Value)[] Values =
    [
        (new FallWay(FallDirection.Back, FallSide.None), "back"),
        (new FallWay(FallDirection.Side, FallSide.Left), "side-left"),
        (new FallWay(FallDirection.Side, FallSide.Right), "side-right"),
        (new FallWay(FallDirection.Front, FallSide.None), "front"),
        (new FallWay(FallDirection.Rolling, FallSide.Left), "rolling-left"),
        (new FallWay(FallDirection.Rolling, FallSide.Right), "rolling-right"),
    ];

    /// <summary>Every way, for a list to choose from.</summary>
    public static IReadOnlyList<(string Value, string Words)> Ways { get; } = [.. Values.Select(v => (v.Value, Heading(v.Way)))];

    /// <summary>Every stage, for a list to choose from.</summary>
    public static IReadOnlyList<(string Value, string Words)> Stages { get; } =
        [.. Enumerable.Range(FallWords.FirstStage, FallWords.LastStage).Select(s => (s.ToString(CultureInfo.InvariantCulture), Capital(FallWords.Stage(s))))];

    /// <summary>What was seen of a fall, for a list to choose from.</summary>
    public static IReadOnlyList<(string Value, string Words)> Outcomes { get; } = [("clean", "clean"), ("touched", "head touched")];

    /// <summary>"Backward", "To the left side", "Rolling, right".</summary>
    public static string Heading(FallWay way) => Capital(FallWords.Of(way));

    /// <summary>The value of a way.</summary>
    public static string Value(FallWay way) => Values.First(v => v.Way == way).Value;

    /// <summary>The way of a value; null for none.</summary>
    public static FallWay? Way(string? value) => Values.Where(v => v.Value == value).Select(v => (FallWay?)v.Way).FirstOrDefault();

    /// <summary>The stage of a value; null for none.</summary>
    public static int? Stage(string? value) => Shared.Typed.Whole(value) is { } stage and >= FallWords.FirstStage and <= FallWords.LastStage ? stage : null;

    /// <summary>Whether there is such a fall: forward, nobody is thrown.</summary>
    public static bool Exists(FallWay way, int stage) => StarterFalls.Table.Has(way, stage);

    /// <summary>With a capital.</summary>
    public static string Capital(string words)
    {
        ArgumentException.ThrowIfNullOrEmpty(words);
        return $"{char.ToUpperInvariant(words[0])}{words[1..]}";
    }
}
