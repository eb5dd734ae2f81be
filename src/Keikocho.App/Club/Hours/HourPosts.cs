using Keikocho.App.Shared;
using Keikocho.Core.Calendar;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Store.Calendar;

namespace Keikocho.App.Club.Hours;

/// <summary>Takes weekly hours: a new one, other times inside one, the end of one.</summary>
internal static class HourPosts
{
    private const string Part = "hours-part";
    private const int LeastMinutes = 15;

    /// <summary>What the fields of one hour begin with.</summary>
    public static string Key(Guid hour) => $"hour-{hour:N}-";

    /// <summary>"Tuesday 17:30 to 18:45".</summary>
    public static string Words(WeeklyHourRow hour) => Words(hour.Weekday, hour.Start, hour.End);

    public static async Task<IResult> AddAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        var book = club.Book;
        var programme = sent.Id("hour-new-programme") is { } asked ? book.Programme(asked) : null;
        if (programme is null) sent.Refuse("hour-new-programme", "Choose the programme.");
        var hall = book.Halls.Length == 1 ? book.Halls[0] : book.Halls.FirstOrDefault(h => h.Id == sent.Id("hour-new-hall"));
        if (hall is null) sent.Refuse("hour-new-hall", "Choose the hall.");
        if (!Enum.TryParse<DayOfWeek>(sent.Text("hour-new-weekday"), out var weekday) || !Enum.IsDefined(weekday))
            sent.Refuse("hour-new-weekday", "Choose the day of the week.");
        var times = Times(sent);
        var from = sent.Day("hour-new-from", "Type the first day on which it is the club’s hour.");
        if (sent.IsTaken && book.Hours.FirstOrDefault(h => h.ProgrammeId == programme!.Id && h.Weekday == weekday && (h.To is null || h.To >= from)
            && h.Start < times!.End && h.End > times.Start) is { } other)
            sent.Refuse("hour-new-start", $"{programme!.Name} have {Words(other)} already. End that hour first, or type other times.");
        if (!sent.IsTaken) return sent.Again();

        var laid = await club.House.Calendar.AddHourAsync(new NewHour(programme!.Id, hall!.Id, weekday, times!, from!.Value), club.Acting?.Id, club.Device, cancel);
        var inside = $"Falls {times!.UkemiFrom.Plain()} to {times.UkemiTo.Plain()}, half time {times.HalfTime.Plain()}.";
        return Redirects.SeeOther(ClubAddress.At(Part), new FlashMessage(
            $"{Words(weekday, times.Start, times.End)} is on the week.",
            laid == 0 ? $"{inside} No lesson was laid: no term has such a day to come." : $"{inside} {Counted.Of(laid, "lesson")} laid into the terms."));
    }

    public static async Task<IResult> ChangeAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        if (Find(club, sent) is not { } hour) return SentForm.Gone(Part);
        var key = Key(hour.Id);
        var from = sent.Time(key + "ukemi-from", "Type when the falls begin.");
        var to = sent.Time(key + "ukemi-to", "Type when the falls end.");
        var half = sent.Time(key + "half", "Type the half time.");
        if (!sent.IsTaken) return sent.Again();
        var times = new LessonTimes(hour.Start, hour.End, from!.Value, to!.Value, half!.Value);
        Check(sent, key, times);
        if (!sent.IsTaken) return sent.Again();
        return await club.House.Calendar.ChangeHourAsync(
            hour.Id, times.UkemiFrom, times.UkemiTo, times.HalfTime, club.Today, club.Acting?.Id, club.Device, cancel)
            ? Redirects.SeeOther(ClubAddress.At(Part), new FlashMessage($"{Words(hour)} is saved.", "Lessons to come follow; those that are marked keep their hours."))
            : SentForm.Gone(Part);
    }

    public static async Task<IResult> EndAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        if (Find(club, sent) is not { } hour) return SentForm.Gone(Part);
        var field = Key(hour.Id) + "last";
        var last = sent.Day(field, "Type the last day of this hour.");
        if (last < hour.From.AddDays(-1)) sent.Refuse(field, $"It only begins on {hour.From.Full()}. Type that day or a later one.");
        if (!sent.IsTaken) return sent.Again();
        return await club.House.Calendar.EndHourAsync(hour.Id, last!.Value, club.Acting?.Id, club.Device, cancel)
            ? Redirects.SeeOther(ClubAddress.At(Part), new FlashMessage($"{Words(hour)} ends on {last.Value.Full()}.", "Lessons after it that nobody had marked are off the calendar."))
            : SentForm.Gone(Part);
    }

    private static string Words(DayOfWeek day, TimeOnly start, TimeOnly end) => $"{day} {start.Plain()} to {end.Plain()}";

    private static WeeklyHourRow? Find(OpenClub club, SentForm sent) => sent.Id("hour") is { } id ? club.Book.Hours.FirstOrDefault(h => h.Id == id) : null;

    private static LessonTimes? Times(SentForm sent)
    {
        var start = sent.Time("hour-new-start", "Type the time of the bow, for example 17:30.");
        var end = sent.Time("hour-new-end", "Type the time of the bow out, for example 18:45.");
        var ukemiFrom = sent.TimeIfAny("hour-new-ukemi-from");
        var ukemiTo = sent.TimeIfAny("hour-new-ukemi-to");
        var half = sent.TimeIfAny("hour-new-half");
        if (start is not { } bow || end is not { } bowOut) return null;
        if (bowOut < bow || bowOut - bow < TimeSpan.FromMinutes(LeastMinutes))
        {
            sent.Refuse("hour-new-end", $"{bowOut.Plain()} is not at least a quarter of an hour after {bow.Plain()}. Type the time of the bow out.");
            return null;
        }

        var usual = UsualTimes.Of(bow, bowOut);
        var falls = ukemiFrom ?? usual.UkemiFrom;
        // Ten minutes after a start that was typed, as in the proposal.
        var fallsEnd = ukemiTo ?? (ukemiFrom is { } typed ? UsualTimes.FallsEnd(typed, bowOut) : usual.UkemiTo);
        var times = new LessonTimes(bow, bowOut, falls, fallsEnd, half ?? usual.HalfTime);
        Check(sent, "hour-new-", times);
        return times;
    }

    private static void Check(SentForm sent, string key, LessonTimes times)
    {
        var span = $"{times.Start.Plain()} to {times.End.Plain()}";
        if (times.UkemiFrom < times.Start || times.UkemiFrom >= times.End)
            sent.Refuse(key + "ukemi-from", $"{times.UkemiFrom.Plain()} is not in the lesson, {span}.");
        else if (times.UkemiTo <= times.UkemiFrom)
            sent.Refuse(key + "ukemi-to", $"{times.UkemiTo.Plain()} is not after {times.UkemiFrom.Plain()}. Type when the falls end.");
        else if (times.UkemiTo > times.End)
            sent.Refuse(key + "ukemi-to", $"{times.UkemiTo.Plain()} is not in the lesson, {span}.");
        if (times.HalfTime <= times.Start || times.HalfTime >= times.End)
            sent.Refuse(key + "half", $"{times.HalfTime.Plain()} is not in the lesson, {span}.");
    }
}
