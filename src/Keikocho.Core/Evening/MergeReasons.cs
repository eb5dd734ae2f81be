using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;

namespace Keikocho.Core.Evening;

/// <summary>Every mark is kept.</summary>
public sealed record AllAreKept(int Marks, int Tablets, int Repeats) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"All {Words.Count(Marks, "mark")} of {Words.Count(Tablets, "tablet")} are kept"
        + (Repeats == 0 ? "." : $"; {Repeats} came more than once, and each counts once.");
}

/// <summary>What two tablets say differently of one child.</summary>
public sealed record ClashOf(string Name, MergeClash Clash) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"{Name}, {Clash.On.Full()}: {string.Join("; ", Clash.Both)}. {Clash.Because.Sentence}";
}

/// <summary>Good against another word.</summary>
public sealed record SeenDifferently(DateOnly On) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => "Two saw it differently: the evening counts as nothing for this item until somebody who may sign off settles it.";
}

/// <summary>Clean against head touched.</summary>
public sealed record HeadTouchStands(DateOnly On, FallWay Way) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"Head touched stands: the evening is not clean {FallWords.Of(Way)}, whoever tapped first.";
}

/// <summary>A tablet's clock says another day than the evening that it joined.</summary>
public sealed record ClockIsWrong(string Device, int Marks) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"By the clock of {Device}, {Words.Count(Marks, "mark")} {Words.Is(Marks)} of another day; the evening that it joined holds, no clock does.";
}

/// <summary>Marks in words.</summary>
internal static class MergeWords
{
    public static string Presence(TabletMark mark)
    {
        var kind = mark.CorrectedTo ?? mark.Kind;
        var word = kind switch
        {
            MarkKind.Present => "present",
            MarkKind.Left => "left",
            MarkKind.Absent => "absent",
            MarkKind.Excused => "excused",
            _ => "nothing",
        };
        return (mark.Kind == MarkKind.Corrected ? "corrected to " : "") + word + (mark.At is { } at ? $" {at.Plain()}" : "");
    }

    public static string Seen(SeenWord word) => word switch
    {
        SeenWord.Good => "good",
        SeenWord.Prompted => "prompted",
        _ => "not yet",
    };
}
