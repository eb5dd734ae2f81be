using Keikocho.Store.Engines;

namespace Keikocho.Store.Book;

/// <summary>Keeps the newest book of one club in memory and reads it again only when its revisions have risen or the day has changed.</summary>
public sealed class Books
{
    private const int DaysBack = 550;
    private readonly Lock renewing = new();
    private Kept? kept;

    /// <summary>The book as of now, with the revisions that were asked for in one query on <paramref name="reading"/>; null before there is a club.</summary>
    public (ClubBook Book, Revisions Revisions)? Now(ReadSession reading, Guid device, DateOnly today)
    {
        if (BookStore.ReadRevisions(reading, device) is not { } revisions) return null;
        var at = kept;
        if (at is null || at.People != revisions.People || at.Calendar != revisions.Calendar || at.Day != today)
        {
            lock (renewing)
            {
                at = kept;
                if (at is null || at.People != revisions.People || at.Calendar != revisions.Calendar || at.Day != today)
                {
                    // A newer state than the revisions say does no harm: the next page asks again.
                    at = new Kept(BookStore.Read(reading, today.AddDays(-DaysBack), today), revisions.People, revisions.Calendar, today);
                    kept = at;
                }
            }
        }

        return (at.Book, revisions);
    }

    private sealed record Kept(ClubBook Book, long People, long Calendar, DateOnly Day);
}
