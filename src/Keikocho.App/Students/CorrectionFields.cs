using Keikocho.App.Shared;
using Keikocho.App.Shared.Parts;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;

namespace Keikocho.App.Students;

/// <summary>A correction of where a child was at a lesson.</summary>
/// <param name="To">What holds instead.</param>
/// <param name="At">The time of an arrival or a leaving; null where none is meant.</param>
public sealed record Correction(MarkKind To, TimeOnly? At);

/// <summary>A correction as the form sends it.</summary>
public sealed class CorrectionFields
{
    /// <summary>Id of the new mark, made with the form.</summary>
    public Guid? Command { get; set; }
    /// <summary>bow, came, left, told, absent or nothing.</summary>
    public string? To { get; set; }
    /// <summary>The time.</summary>
    public string? At { get; set; }

    /// <summary>Reads them.</summary>
    public (Correction? Correction, List<FieldError> Errors) Read(LessonMarksView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        var errors = new List<FieldError>();
        Correction? correction = To switch
        {
            "bow" => new(MarkKind.Present, null),
            "came" => new(MarkKind.Present, Time(view, errors)),
            "left" => new(MarkKind.Left, Time(view, errors)),
            "told" => new(MarkKind.Excused, null),
            "absent" => new(MarkKind.Absent, null),
            "nothing" => new(MarkKind.Cleared, null),
            _ => null,
        };
        if (correction is null) errors.Add(new("to", "Say where the child was."));
        else if (view.IsToCome && correction.To is not (MarkKind.Excused or MarkKind.Cleared))
            errors.Add(new("to", $"The lesson on {view.Lesson.Date.Full()} is still to come: only “absent, told us” can be marked ahead."));
        else if (correction.To == MarkKind.Left && errors.Count == 0) CheckLeaving(view, correction.At!.Value, errors);
        return errors.Count > 0 ? (null, errors) : (correction, errors);
    }

    private TimeOnly? Time(LessonMarksView view, List<FieldError> errors)
    {
        if (string.IsNullOrWhiteSpace(At))
        {
            errors.Add(new("at", "The time is missing. Type it as hours and minutes, such as 17:41."));
            return null;
        }

        if (Typed.Time(At.Trim()) is not { } at)
        {
            errors.Add(new("at", $"“{At.Trim()}” is not a time of day. Type it as hours and minutes, such as 17:41."));
            return null;
        }

        if (at > view.Lesson.End) errors.Add(new("at", $"{at.Plain()} is after the bow out at {view.Lesson.End.Plain()}."));
        else if (To == "left" && at < view.Lesson.Start) errors.Add(new("at", $"{at.Plain()} is before the bow at {view.Lesson.Start.Plain()}."));
        return at;
    }

    private static void CheckLeaving(LessonMarksView view, TimeOnly at, List<FieldError> errors)
    {
        if (view.State.Arrived > at)
            errors.Add(new("at", $"{at.Plain()} is before the arrival at {view.State.Arrived.Value.Plain()}. Correct the arrival first."));
    }
}
