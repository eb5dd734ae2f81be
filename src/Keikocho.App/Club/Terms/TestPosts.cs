using Keikocho.App.Shared;
using Keikocho.Core.Kernel;

namespace Keikocho.App.Club.Terms;

/// <summary>Takes a new promotion test, or one to remove.</summary>
internal static class TestPosts
{
    private const string Part = "tests-part";

    public static async Task<IResult> AddAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        var programme = sent.Id("test-programme") is { } id ? club.Book.Programme(id) : null;
        if (programme is null) sent.Refuse("test-programme", "Choose the programme that is tested.");
        var day = sent.Day("test-date", "Type the day of the test.");
        if (day < club.Today) sent.Refuse("test-date", $"{day.Value.Full()} is over. Type a day to come.");
        if (!sent.IsTaken) return sent.Again();
        if (!await club.House.Calendar.AddTestAsync(programme!.Id, day!.Value, club.Acting?.Id, club.Device, cancel))
        {
            sent.Refuse("test-date", $"{programme.Name} have a test on {day.Value.Full()} already.");
            return sent.Again();
        }

        return Redirects.SeeOther(ClubAddress.At(Part), new FlashMessage($"Promotion test of {programme.Name} on {day.Value.WithWeekday()}."));
    }

    public static async Task<IResult> RemoveAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        if (new SentForm(fields).Id("test") is not { } id || club.Book.Tests.FirstOrDefault(t => t.Id == id) is not { } test) return SentForm.Gone(Part);
        return await club.House.Calendar.RemoveTestAsync(id, club.Acting?.Id, club.Device, cancel)
            ? Redirects.SeeOther(ClubAddress.At(Part), new FlashMessage($"The test on {test.Date.Full()} is removed."))
            : Redirects.SeeOther(ClubAddress.At(Part), new FlashMessage("Nothing was removed.", $"The test on {test.Date.Full()} has results, a closed list or a decided verdict, and those stay.", NeedsALook: true));
    }
}
