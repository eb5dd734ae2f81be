using System.Globalization;
using Keikocho.Core.Kernel;

namespace Keikocho.Core.Intake;

/// <summary>From when to when a lesson goes.</summary>
/// <param name="Start">The bow.</param>
/// <param name="End">The bow out.</param>
public readonly record struct Hours(TimeOnly Start, TimeOnly End);

/// <summary>Asks, once a file, for the hours of lessons on days of the week on which the programme has none.</summary>
public static class RegisterHours
{
    /// <summary>The key of the question.</summary>
    public const string Key = "hours";

    /// <summary>The hours that were answered, and the question; both null when nothing is missing.</summary>
    /// <param name="missing">The days without hours, in order; none asks nothing.</param>
    /// <param name="known">The programme's hours on other days, to be offered.</param>
    /// <param name="answers">The answers given so far.</param>
    public static (Hours? Said, Doubt? Asked) Ask(IReadOnlyList<DateOnly> missing, IReadOnlyList<Hours> known, Answers answers)
    {
        ArgumentNullException.ThrowIfNull(missing);
        ArgumentNullException.ThrowIfNull(known);
        ArgumentNullException.ThrowIfNull(answers);
        if (missing.Count == 0) return (null, null);
        var offers = known.Distinct().OrderBy(hours => hours.Start).ThenBy(hours => hours.End).Select(hours => new Offer(Text(hours), $"{hours.Start.Plain()} to {hours.End.Plain()}")).ToList();
        answers.ByKey.TryGetValue(Key, out var given);
        var said = Read(given?.TrimStart('='));
        var days = string.Join(", ", missing.Select(day => day.DayOfWeek).Distinct().Select(day => day.ToString()));
        var sentence = $"The programme has no hour on {days}, but the register has {(missing.Count == 1 ? "a lesson" : $"{missing.Count} lessons")} there, the first on {missing[0].Full()}; say from when to when, such as 17:30-18:45.";
        if (given is not null && said is null) sentence = $"'{RosterLineReader.Short(given.TrimStart('='))}' is not an answer to this. {sentence}";
        return (said, new Doubt(Key, DoubtKind.HoursMissing, sentence, offers, offers.Count == 1 ? offers[0].Code : null, TypedAnswer.Text, [], said is null ? null : given));
    }

    private static string Text(Hours hours) => $"{hours.Start.Plain()}-{hours.End.Plain()}";

    private static Hours? Read(string? text)
    {
        var parts = (text ?? "").Replace("to", "-", StringComparison.Ordinal).Replace('–', '-').Split('-', StringSplitOptions.TrimEntries);
        return parts.Length == 2 && Time(parts[0]) is { } start && Time(parts[1]) is { } end && end >= start.AddMinutes(15) && end > start ? new Hours(start, end) : null;
    }

    private static TimeOnly? Time(string text)
        => TimeOnly.TryParseExact(text.Replace('.', ':'), ["H:mm", "HH:mm"], CultureInfo.InvariantCulture, DateTimeStyles.None, out var time) ? time : null;
}
