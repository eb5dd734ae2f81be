using Keikocho.Core.Syllabus;
using Keikocho.Store.Starter;

namespace Keikocho.Store.Tests.Starter;

/// <summary>Reads texts of the starter kit for a test, or fails with what is wrong.</summary>
internal static class Starters
{
    public static Edition Edition(SyllabusReading reading) => reading switch
    {
        SyllabusReading.Read read => read.Edition,
        SyllabusReading.Faulty faulty => throw new Xunit.Sdk.XunitException(string.Join('\n', faulty.Faults)),
        _ => throw new Xunit.Sdk.XunitException("No such reading."),
    };

    public static T Value<T>(TextReading<T> reading) => reading switch
    {
        TextReading<T>.Read read => read.Value,
        TextReading<T>.Faulty faulty => throw new Xunit.Sdk.XunitException(string.Join('\n', faulty.Faults)),
        _ => throw new Xunit.Sdk.XunitException("No such reading."),
    };
}
