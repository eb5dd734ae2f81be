using Keikocho.App.Club;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Calendar;
using Keikocho.Store.Syllabus;

namespace Keikocho.App.Syllabus.Draft;

/// <summary>The draft of one programme's ladder as its pages and forms see it.</summary>
/// <param name="Programme">The programme.</param>
/// <param name="Draft">The draft.</param>
/// <param name="Newest">The newest published edition; null before the first.</param>
public sealed record DraftDesk(ProgrammeRow Programme, EditionDraft Draft, PublishedEdition? Newest)
{
    /// <summary>The draft itself.</summary>
    public Edition Edition => Draft.Edition;

    /// <summary>The programme that an address names; the first where it names none.</summary>
    public static ProgrammeRow Chosen(OpenClub club, Guid? programme)
    {
        ArgumentNullException.ThrowIfNull(club);
        return (programme is { } id ? club.Book.Programme(id) : null) ?? club.Book.Programmes[0];
    }

    /// <summary>The draft of a programme; null while it has none.</summary>
    public static DraftDesk? Of(OpenClub club, Guid? programme)
    {
        var chosen = Chosen(club, programme);
        return DraftReader.Of(club.Reading, chosen.LadderId) is { } draft ? new DraftDesk(chosen, draft, club.Book.NewestEdition(chosen.LadderId)) : null;
    }
}
