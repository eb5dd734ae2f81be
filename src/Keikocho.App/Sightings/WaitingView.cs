using System.Collections.Immutable;
using Keikocho.App.Club;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Store.Book;
using Keikocho.Store.Marks;

namespace Keikocho.App.Sightings;

/// <summary>A stand-down to look at again; it stands all the same.</summary>
/// <param name="PersonId">Who.</param>
/// <param name="Name">Full name.</param>
/// <param name="Words">What it forbids, since when, the review day.</param>
public sealed record ReviewLine(Guid PersonId, string Name, string Words);

/// <summary>Suggestions of one child.</summary>
/// <param name="PersonId">Who.</param>
/// <param name="Name">Full name.</param>
/// <param name="Count">How many.</param>
public sealed record SuggestedLine(Guid PersonId, string Name, int Count);

/// <summary>What waits for an instructor: stand-downs whose review day has come, and suggestions. For adults, on the laptop.</summary>
/// <param name="Reviews">In register order.</param>
/// <param name="Suggested">In register order.</param>
public sealed record WaitingView(ImmutableArray<ReviewLine> Reviews, ImmutableArray<SuggestedLine> Suggested)
{
    /// <summary>Reads it for everybody on a register today.</summary>
    public static WaitingView Of(OpenClub club)
    {
        ArgumentNullException.ThrowIfNull(club);
        var (book, today) = (club.Book, club.Today);
        var people = book.Programmes.SelectMany(p => book.RegisterOf(p.Id, today)).Select(e => e.PersonId).Distinct().Select(book.Person).OfType<BookPerson>().Where(p => !p.IsErased).ToList();
        var seen = EvidenceReader.Of(club.Reading, [.. people.Select(p => p.Id)], today, today);
        return new WaitingView(
            [.. people.SelectMany(p => ChildGates.Standing(book, seen[p.Id], today).ForReview.Select(s => new ReviewLine(p.Id, p.FullName, Words(s))))],
            [.. people.Where(p => seen[p.Id].Suggestions > 0).Select(p => new SuggestedLine(p.Id, p.FullName, seen[p.Id].Suggestions))]);
    }

    /// <summary>"no falls since 3 March 2026, review was due on 17 March 2026".</summary>
    public static string Words(StandDown standDown)
    {
        ArgumentNullException.ThrowIfNull(standDown);
        var review = standDown.ReviewOn is { } day ? $", review due since {day.Full()}" : "";
        return $"{Scope(standDown.Scope)} since {standDown.From.Full()}{review}";
    }

    /// <summary>"no falls", "no contact", "off the mat", "nothing that loads the neck".</summary>
    public static string Scope(StandDownScope scope) => scope switch
    {
        StandDownScope.NoFalls => "no falls",
        StandDownScope.NoContact => "no contact",
        StandDownScope.OffTheMat => "off the mat",
        StandDownScope.SpareTheNeck => "nothing that loads the neck",
        _ => throw new ArgumentOutOfRangeException(nameof(scope), scope, "There is no such scope."),
    };
}
