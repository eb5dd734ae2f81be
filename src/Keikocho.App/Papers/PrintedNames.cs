using System.Runtime.CompilerServices;
using Keikocho.Paper;
using Keikocho.Store.Book;

namespace Keikocho.App.Papers;

/// <summary>
/// Which characters of the club's names papers cannot print, looked for once a book: a book is never changed, and a club of two
/// thousand children has thousands of names. One for the whole process.
/// </summary>
public sealed class PrintedNames
{
    // Holds no book in memory that nobody else holds any more.
    private readonly ConditionalWeakTable<ClubBook, Looked> looked = [];

    /// <summary>The characters that no font of papers has, each once, by code point.</summary>
    public IReadOnlyList<string> MissingGlyphs(ClubBook book, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(book);
        if (looked.TryGetValue(book, out var at) && at.Day == today) return at.Missing;
        var missing = Glyphs.MissingIn(Of(book, today));
        looked.AddOrUpdate(book, new Looked(today, missing));
        return missing;
    }

    // Every name that a register prints today: the club's own words, adults, and the children who are on a register.
    private static IEnumerable<string> Of(ClubBook book, DateOnly today) =>
        book.Programmes.SelectMany(p => book.RegisterOf(p.Id, today)).Select(e => e.PersonId)
            .Concat(book.DutiesOn(today).Select(d => d.PersonId)).Distinct()
            .SelectMany(id => new[] { book.Person(id)!.CallName, book.Person(id)!.FullName })
            .Concat(book.Programmes.Select(p => p.Name))
            .Concat(book.Halls.Select(h => h.Name))
            .Concat(book.Closures.Select(c => c.Name))
            .Append(book.Club.Name);

    private sealed record Looked(DateOnly Day, IReadOnlyList<string> Missing);
}
