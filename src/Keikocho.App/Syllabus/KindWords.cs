using System.Globalization;
using Keikocho.Core.Syllabus;

namespace Keikocho.App.Syllabus;

/// <summary>The words of the closed lists of a syllabus, and the choices of their forms.</summary>
public static class KindWords
{
    /// <summary>Kinds of items as a choice.</summary>
    public static IReadOnlyList<(string Value, string Words)> Kinds { get; } = [.. Enum.GetValues<ItemKind>().Select(k => (k.ToString(), Of(k)))];

    /// <summary>How long something keeps being asked, as a choice.</summary>
    public static IReadOnlyList<(string Value, string Words)> Carries { get; } = [.. Enum.GetValues<Carry>().Select(c => (c.ToString(), Of(c)))];

    /// <summary>A kind in the trade's word.</summary>
    public static string Of(ItemKind kind) => kind switch
    {
        ItemKind.HoldDown => "hold-down",
        ItemKind.FreePractice => "free practice",
        _ => kind.ToString().ToLowerInvariant(),
    };

    /// <summary>A kind in the plural: "3 words".</summary>
    public static string Many(ItemKind kind) => kind switch
    {
        ItemKind.Etiquette or ItemKind.FreePractice or ItemKind.Movement => Of(kind),
        _ => Of(kind) + "s",
    };

    /// <summary>So many of a kind: "2 ways out", "6 words".</summary>
    public static string Count(int number, ItemKind kind) => kind switch
    {
        ItemKind.Escape => Shared.Counted.Of(number, "way out", "ways out"),
        ItemKind.Etiquette => Shared.Counted.Of(number, "point of etiquette", "points of etiquette"),
        ItemKind.FreePractice => Of(kind),
        ItemKind.Movement => Shared.Counted.Of(number, "movement"),
        _ => Shared.Counted.Of(number, Of(kind), Many(kind)),
    };

    /// <summary>Whether a table says how many there are and not which.</summary>
    public static bool IsCounted(ItemKind kind) =>
        kind is ItemKind.Word or ItemKind.Question or ItemKind.Etiquette or ItemKind.Escape or ItemKind.Turnover or ItemKind.Exercise or ItemKind.Movement or ItemKind.FreePractice or ItemKind.Grip;

    /// <summary>How long something keeps being asked.</summary>
    public static string Of(Carry carry) => carry switch
    {
        Carry.ThisRank => "for this rank only",
        Carry.ThisTerm => "this term only",
        Carry.Always => "always, at every rank above too",
        Carry.OnceAskedStays => "once asked, it stays",
        _ => throw new ArgumentOutOfRangeException(nameof(carry), carry, "There is no such word."),
    };

    /// <summary>"from 8 years"; null for all ages.</summary>
    public static string? Of(AgeBand? ages) => ages switch
    {
        null or { From: null, To: null } => null,
        { From: { } from, To: null } => $"from {Years(from)}",
        { From: null, To: { } to } => $"up to {Years(to)}",
        { From: { } from, To: { } to } => from == to ? $"at {Years(from)}" : string.Create(CultureInfo.InvariantCulture, $"{from} to {Years(to)}"),
    };

    private static string Years(int years) => Shared.Counted.Of(years, "year");
}
