using Keikocho.Paper.Register;

namespace Keikocho.Paper.Tests;

/// <summary>An invented club's papers, the same in every test.</summary>
internal static class Samples
{
    private static readonly string[] FirstNames =
    [
        "Anselm", "Bram", "Casimir", "Dilys", "Edda", "Fenna", "Gita", "Hesper", "Idris", "Ingrid", "Jory", "Juno", "Kofi", "Leonie", "Linus",
        "Lorcan", "Mattis", "Maud", "Nils", "Noor", "Osian", "Petra", "Quint", "Rhoswen", "Søren", "Tamsin", "Ulla", "Vera", "Wanda", "Żaneta",
        "Ngọc Ánh", "Йосиф", "Ελένη", "Håkon", "Çağla", "Łucja", "健太", "さくら", "Maximiliane-Charlotte", "Ó Murchú", "Ada",
    ];

    private static readonly RegisterMark[] Marks =
    [
        RegisterMark.Present, RegisterMark.Present, RegisterMark.CameLate(new TimeOnly(17, 41)), RegisterMark.Present, RegisterMark.ToldUs,
        RegisterMark.Present, RegisterMark.Left(new TimeOnly(18, 10)), RegisterMark.Present, RegisterMark.Absent, RegisterMark.Present,
        RegisterMark.Left(new TimeOnly(18, 5), true, new TimeOnly(17, 50)), RegisterMark.Present, RegisterMark.NotMarked, RegisterMark.CameLate(null),
    ];

    public static IReadOnlyList<RegisterAdult> Adults { get; } =
    [
        new("Maren Holt", "head instructor"), new("Piet de Vries", "assistant, first-aider"), new("Ada Lund", "at the door"),
    ];

    public static RegisterSheetContent Sheet(int children) => new(
        "Osier Quay Judo Club", "Juniors", new DateOnly(2026, 11, 10), new TimeOnly(17, 30), new TimeOnly(18, 45), "Quay Hall", null,
        Adults, 3, [.. Enumerable.Range(0, children).Select(Child)],
        ["Hall door stuck, caretaker told.", "Lorcan’s mother rang at 17:20: on the way."],
        [new("Piet de Vries", new TimeOnly(17, 36), "began the register"), new("Maren Holt", new TimeOnly(18, 52), "closed it")],
        new DateOnly(2026, 11, 10));

    public static RegisterChild Child(int i)
    {
        var mark = Marks[i % Marks.Length];
        var here = mark.Word is RegisterWord.Present;
        var lesson = (i % 6) switch { 1 => LessonNote.FirstCourse(7, 14), 4 => LessonNote.TrialLesson(2 + (i % 3), 3), _ => null };
        var box = !here ? CollectionBox.NoBox : (i % 7) switch { 0 => CollectionBox.CheckWithInstructor, 1 or 2 => CollectionBox.Collected, _ => CollectionBox.Open };
        return new(FirstNames[i % FirstNames.Length], i is 0 or 40 or 41 ? "B." : null, mark, lesson, box);
    }

    public static BlankRegisterContent Blank(int children, int evenings)
    {
        // Tuesdays and Thursdays from 8 September 2026; half-term is the last week of October.
        var dates = new List<BlankRegisterDate>();
        for (var day = new DateOnly(2026, 9, 8); dates.Count < evenings; day = day.AddDays(day.DayOfWeek == DayOfWeek.Tuesday ? 2 : 5))
            dates.Add(new(day, day is { Month: 10, Day: >= 26 } ? "half-term" : null));
        return new(
            "Osier Quay Judo Club", "Juniors", "Autumn term 2026", "Tuesdays and Thursdays, 17:30 to 18:45, Quay Hall",
            "Syllabus edition 3, from 1 September 2026", dates,
            [.. Enumerable.Range(0, children).Select(i => new BlankRegisterChild(FirstNames[i % FirstNames.Length], i is 0 or 40 or 41 ? "B." : null))],
            Adults, 4, new DateOnly(2026, 9, 1));
    }
}
