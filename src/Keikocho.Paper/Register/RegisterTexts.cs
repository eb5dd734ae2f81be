using System.Globalization;
using Keikocho.Paper.Layout;

namespace Keikocho.Paper.Register;

/// <summary>The words of the registers.</summary>
internal static class RegisterTexts
{
    public const string Title = "Register";
    public const string Slip = "出席簿";
    public const string Number = "";
    public const string Child = "Child";
    public const string Mark = "Mark";
    public const string Lesson = "Lesson";
    public const string Collected = "Collected";
    public const string Adults = "Adults";
    public const string Remarks = "Remarks";
    public const string Signed = "Signed";
    public const string NoAdults = "nobody named";
    public const string NoChildren = "Nobody is on this register.";
    public const string CheckWithInstructor = "check with instructor";
    public const string FormNeeded = "form needed";
    public const string Doubt = "In doubt, sit them out.";
    public const string DoubtMore = "A knock to the head: off the mat for the evening.";
    public const string NewChild = "Empty lines: new children, with an adult’s telephone.";
    public const string TakenBy = "Taken by (initials)";
    public const string AnotherAdult = "Another adult";
    public const string Closed = "No lesson";

    /// <summary>What to write with a pen, and what it means; the stamps are those of the screen.</summary>
    public static IReadOnlyList<(RegisterWord Word, bool Late, string Sign, string Means)> KeyOfMarks { get; } =
    [
        (RegisterWord.Present, false, "✓", "present"),
        (RegisterWord.Present, true, "17:41", "came late"),
        (RegisterWord.Left, false, "→18:10", "left"),
        (RegisterWord.ToldUs, false, "T", "told us"),
        (RegisterWord.Absent, false, "A", "absent"),
    ];

    /// <summary>present; came 17:41; came late; came 17:41, left 18:10; left; absent, told us; absent; not marked.</summary>
    public static string Of(RegisterMark mark) => mark.Word switch
    {
        RegisterWord.NotMarked => "not marked",
        RegisterWord.Present when mark.Late => Came(mark),
        RegisterWord.Present => "present",
        RegisterWord.Left when mark.Late => Came(mark) + ", " + Left(mark),
        RegisterWord.Left => Left(mark),
        RegisterWord.ToldUs => "absent, told us",
        RegisterWord.Absent => "absent",
        _ => throw new ArgumentOutOfRangeException(nameof(mark)),
    };

    /// <summary>lesson 7 of 14; trial 2 of 3; trial 4: form needed.</summary>
    public static string Of(LessonNote note)
    {
        var what = note.Trial ? "trial" : "lesson";
        var count = string.Create(CultureInfo.InvariantCulture, $"{what} {note.Number} of {note.Of}");
        return note.FormNeeded ? string.Create(CultureInfo.InvariantCulture, $"trial {note.Number}: {FormNeeded}") : count;
    }

    private static string Came(RegisterMark mark) => mark.Came is { } at ? "came " + PaperDate.Clock(at) : "came late";

    private static string Left(RegisterMark mark) => mark.LeftAt is { } at ? "left " + PaperDate.Clock(at) : "left";
}
