using Keikocho.Core.Syllabus;
using Keikocho.Store.Starter;

namespace Keikocho.App.Syllabus;

/// <summary>A ladder that comes with the program to begin from.</summary>
/// <param name="Slug">Its name in a form.</param>
/// <param name="Edition">The ladder with its source and cautions.</param>
public sealed record SampleLadder(string Slug, Edition Edition);

/// <summary>The ladders that come with the program, read when somebody first looks at them.</summary>
public static class SampleLadders
{
    private static readonly Lazy<IReadOnlyList<SampleLadder>> Read = new(() =>
    [
        .. StarterKit.Ladders.Select(file => (file, Reading: StarterKit.Ladder(file)))
            .Where(f => f.Reading is SyllabusReading.Read).Select(f => new SampleLadder(Path.GetFileNameWithoutExtension(f.file), ((SyllabusReading.Read)f.Reading).Edition)),
    ]);

    /// <summary>All of them, by the names of their files.</summary>
    public static IReadOnlyList<SampleLadder> All => Read.Value;
}
