namespace Keikocho.App.People;

/// <summary>Addresses of the students' pages.</summary>
public static class StudentAddress
{
    /// <summary>The register of a programme.</summary>
    public const string List = "/students";

    /// <summary>One child, as a route.</summary>
    public const string ChildRoute = "/students/{id:guid}";

    /// <summary>Every mark of one child at one lesson, as a route.</summary>
    public const string LessonRoute = "/students/{id:guid}/lessons/{lesson:guid}";

    /// <summary>The register of one programme.</summary>
    public static string Programme(Guid programme) => $"{List}?programme={programme:D}";

    /// <summary>One child.</summary>
    public static string Of(Guid person) => $"{List}/{person:D}";

    /// <summary>One child on one of several programmes' registers.</summary>
    public static string Of(Guid person, Guid programme) => $"{Of(person)}?programme={programme:D}";

    /// <summary>Every mark of one child at one lesson.</summary>
    public static string Lesson(Guid person, Guid lesson) => $"{Of(person)}/lessons/{lesson:D}";

    /// <summary>What a form of one child posts to.</summary>
    public static string Post(Guid person, string form) => $"{Of(person)}/{form}";
}
