using Keikocho.App.Shared;
using Keikocho.Core.Kernel;
using Keikocho.Store.Book;

namespace Keikocho.App.Club.Settings;

/// <summary>Takes a setting of a sum, from today or a later day on: what was answered before keeps the settings it used.</summary>
internal static class SettingPosts
{
    private const int LongestWhy = 300;

    /// <summary>What the fields of one setting begin with.</summary>
    public static string Key(Setting setting) => $"setting-{setting.Key.Replace('.', '-')}-";

    public static async Task<IResult> SetAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        if (ClubSettings.Find(sent.Text("setting")) is not ({ } sum, { } setting)) return SentForm.Gone("settings-part");
        var key = Key(setting);
        var value = sent.Text(key + "value");
        if (setting.Refusal(value) is { } refusal) sent.Refuse(key + "value", refusal);
        var from = sent.Day(key + "from", "Type the day from which it holds.");
        if (from < club.Today) sent.Refuse(key + "from", $"{from.Value.Full()} is over. A setting holds from today on, or from a day to come.");
        var why = sent.Text(key + "why");
        if (why.Length > LongestWhy) sent.Refuse(key + "why", $"That is longer than {LongestWhy} characters. Say it shorter.");
        if (sent.IsTaken && Together(club.Book, sum, setting, value, from!.Value) is { } clash) sent.Refuse(key + "value", clash);
        if (!sent.IsTaken) return sent.Again();

        await club.House.Club.SetAsync(setting.Key, Plain(setting, value), from!.Value, why, club.Acting?.Id, club.Device, cancel);
        return Redirects.SeeOther(ClubAddress.At("settings-part"), new FlashMessage(
            $"{setting.Meaning}: {SettingWords.Value(setting, value)} from {from.Value.Full()}.",
            value == setting.Proposed ? "That is the proposed value." : $"Proposed is {SettingWords.Value(setting, setting.Proposed)}."));
    }

    // "007" and "7" are one number.
    private static string Plain(Setting setting, string value) =>
        setting is WholeNumberSetting ? int.Parse(value, System.Globalization.CultureInfo.InvariantCulture).ToString(System.Globalization.CultureInfo.InvariantCulture) : value;

    /// <summary>Asks on the day itself and on every later day on which another setting of the sum changes.</summary>
    private static string? Together(ClubBook book, SumSettings sum, Setting setting, string value, DateOnly from)
    {
        if (sum.Together is not { } check) return null;
        var keys = sum.Settings.ToDictionary(s => s.Key, s => s.Proposed);
        // A later value of the same setting takes over on its own day.
        var until = book.Settings.Where(s => s.Key == setting.Key && s.From > from).Select(s => (DateOnly?)s.From).Min();
        var days = book.Settings.Where(s => keys.ContainsKey(s.Key) && s.From > from && (until is null || s.From < until)).Select(s => s.From).Append(from).Distinct().Order();
        return days.Select(day => check(key => key == setting.Key ? value : book.Setting(key, day) ?? keys[key])).FirstOrDefault(said => said is not null);
    }
}
