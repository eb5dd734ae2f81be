using Keikocho.App.Shared;
using Keikocho.Core.Kernel;

namespace Keikocho.App.Club.Terms;

/// <summary>Takes a new term.</summary>
internal static class TermPosts
{
    private const int LongestDays = 370;

    public static async Task<IResult> AddAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        var name = sent.Name("term-name", "The term has no name. “Spring 2027” will do.");
        var days = sent.Days("term-from", "term-to", LongestDays, "That term is longer than a year. Type the last day of one term.");
        if (days is { } span && club.Book.Terms.FirstOrDefault(t => t.From <= span.To && t.To >= span.From) is { } other)
            sent.Refuse("term-from", $"These days overlap {other.Name}, {other.From.Full()} to {other.To.Full()}. A day lies in one term only.");
        if (!sent.IsTaken) return sent.Again();

        var (from, to) = days!.Value;
        if (await club.House.Calendar.AddTermAsync(name, from, to, club.Acting?.Id, club.Device, cancel) is null)
        {
            sent.Refuse("term-from", "These days overlap a term that was added just now. Load the page again and look.");
            return sent.Again();
        }

        return Redirects.SeeOther(ClubAddress.At("terms-part"), new FlashMessage($"{name} is on the calendar.", "Its lessons are laid from the weekly hours."));
    }
}
