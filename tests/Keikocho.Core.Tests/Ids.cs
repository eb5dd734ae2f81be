using Keikocho.Core.Kernel;

namespace Keikocho.Core.Tests;

/// <summary>Ids that a test can name by a small number.</summary>
internal static class Ids
{
    public static MarkId Mark(int n) => new(Of(1, n));

    public static DeviceId Device(int n) => new(Of(2, n));

    public static PersonId Person(int n) => new(Of(3, n));

    public static LessonId Lesson(int n) => new(Of(4, n));

    private static Guid Of(int kind, int n) => new(kind, 0, 0x7000, 0x80, 0, 0, 0, 0, 0, (byte)(n >> 8), (byte)n);
}
