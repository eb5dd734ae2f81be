using System.Globalization;
using Keikocho.Core.Syllabus;

namespace Keikocho.Paper.Sheets;

/// <summary>The words of sheets.</summary>
internal static class SheetTexts
{
    public const string Slip = "昇級審査";
    public const string Show = "You will show";
    public const string Words = "You will know these words";
    public const string Questions = "You will be asked";
    public const string Before = "Before the test";
    public const string AtHome = "At home, five minutes";
    public const string NeverAtHome = "Never practise throws, falls or holds at home: there is no mat.";
    public const string NothingAsked = "Nothing has to be shown for this rank.";
    public const string Wall = "Copy for the wall";
    public const string EitherOf = "Either of:";
    public const string LookFor = "→";
    public const string Again = "※";
    public const string ThisTerm = "(this term)";
    public const string ThisTermWords = "In this term only";
    public const string HeavyMeans = "Heavy box: must be good on the day, whatever the rest.";
    public const string AgainMeans = "※ Asked again at every later test.";
    public const string ThisTermMeans = "(this term) Asked in this term only.";
    public const string LookForMeans = "→ What we look for.";
    public const string NotReviewed = "not looked over by the club yet";

    /// <summary>The parts of what is shown, in the order of the sheet.</summary>
    public static string Of(SheetPart part) => part switch
    {
        SheetPart.Falls => "Falls",
        SheetPart.Standing => "Standing",
        SheetPart.Ground => "On the ground",
        SheetPart.Practice => "Practice",
        SheetPart.Manners => "Etiquette",
        SheetPart.Words => Words,
        SheetPart.Questions => Questions,
        _ => throw new ArgumentOutOfRangeException(nameof(part), part, "There is no such part."),
    };

    /// <summary>"Any 2 of these 4:", "All of these 3:".</summary>
    public static string Of(int count, int of) => count == of
        ? string.Create(CultureInfo.InvariantCulture, $"All of these {of}:")
        : string.Create(CultureInfo.InvariantCulture, $"{AnyOf(count)} these {of}:");

    /// <summary>How something was seen: a fall clean, a word or question answered right, everything else good.</summary>
    public static string Seen(ItemKind kind) => kind switch
    {
        ItemKind.Fall => "seen clean",
        ItemKind.Word or ItemKind.Question => "answered right",
        _ => "seen good",
    };

    /// <summary>"Any 2 of".</summary>
    public static string AnyOf(int count) => string.Create(CultureInfo.InvariantCulture, $"Any {count} of");
}
