using System.Collections.Immutable;
using Keikocho.App.Club;
using Keikocho.Store.Calendar;
using Keikocho.Store.Evening;
using Keikocho.Store.Starter;

namespace Keikocho.App.Closing;

/// <summary>One child's notes of an evening.</summary>
/// <param name="PersonId">Who.</param>
/// <param name="Name">As lists call the child.</param>
/// <param name="Notes">Two lines each, in the order in which they came.</param>
public sealed record ChildNotes(Guid PersonId, string Name, ImmutableArray<string> Notes);

/// <summary>Notes by ready phrases that were made on one evening.</summary>
public static class NotesOfEvening
{
    /// <summary>In register order.</summary>
    public static ImmutableArray<ChildNotes> Of(OpenClub club, IReadOnlyList<LessonRow> lessons, EveningNames names)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(lessons);
        ArgumentNullException.ThrowIfNull(names);
        return
        [
            .. PhraseNoteReader.OfLessons(club.Reading, [.. lessons.Select(l => l.Id)], club.Today)
                .Where(n => club.Book.Person(n.PersonId) is { IsErased: false })
                .GroupBy(n => n.PersonId).OrderBy(g => names.Place(g.Key)).ThenBy(g => g.Key)
                .Select(g => new ChildNotes(g.Key, names.Of(g.Key), [.. g.Select(n => StarterPhrases.Words(n.Phrase)).Distinct()])),
        ];
    }
}
