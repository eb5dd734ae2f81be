using Microsoft.AspNetCore.Components;

#pragma warning disable CA1051, CA1805, CA1823, CA2211, CA1034, CA1052, CA1815, IDE0044, IDE0051, CS0169, CA1812, CA1711, CA1819, CA1805, CA1062

namespace Keikocho.Architecture.Tests;

/// <summary>Types that break a rule each, and some that look alike and break none. Every rule is shown these.</summary>
public static class Offenders
{
    public sealed class HallManager;

    public sealed record BeltHelper;

    public sealed record RegisterService;

    public static class PersonInfo;

    public static class DateUtils;

    // Looks alike, breaks nothing: the word is not the last one.
    public sealed record ManagerOfTheHall;

    public static class State
    {
        public static int Counter;

        public static readonly int[] Figures = [1, 2];

        public static readonly IReadOnlyList<int> Fine = [1, 2];

        public const int AlsoFine = 3;

        private static string? last;

        public static string? Last => last;

        public static DateOnly Today { get; set; }

        public static List<int> Kept { get; } = [];

        public static List<int> MadeAnew => [];

        public static void Remember(string text) => last = text;
    }

    public class Mutable
    {
        public int Value { get; set; }
    }

    public struct Changing
    {
        public int Value;
    }

    public readonly record struct Fixed(int Value);

    public sealed record Given(int FeeInPence);

    public static class Club
    {
        public static int LessonsOf(int membershipDues) => membershipDues;

        // Looks alike, breaks nothing.
        public static int CoffeeInFeet(int repayments) => repayments;
    }

    [AttributeUsage(AttributeTargets.Class)]
    public sealed class SeenByAttribute : Attribute;

    [Route("/open")]
    public sealed class OpenPage : ComponentBase;

    [Route("/said")]
    [SeenBy]
    public sealed class SaidPage : ComponentBase;

    /// <summary>A part of a page has no address of its own.</summary>
    public sealed class PagePart : ComponentBase;
}
