using Keikocho.App.Club;
using Keikocho.Store.Intake;

namespace Keikocho.App.Import;

/// <summary>One reading as a page sees it.</summary>
/// <param name="Row">The reading.</param>
/// <param name="File">What is stored of the file; null once it is saved or dropped.</param>
/// <param name="Facts">What it is held against; null once it is saved or dropped.</param>
/// <param name="View">The file as it reads now; null once it is saved or dropped.</param>
public sealed record ReadingState(ReadingRow Row, PackedFile? File, ClubFacts? Facts, ReadingView? View)
{
    /// <summary>Reads it; null when there is no such reading.</summary>
    public static ReadingState? Now(OpenClub club, Guid id)
    {
        ArgumentNullException.ThrowIfNull(club);
        if (ReadingReader.Find(club.Db, id) is not { } row) return null;
        if (row.Stage != ReadingStage.Open || row.ProgrammeId is not { } programme || ReadingReader.File(row) is not { } file || ClubFacts.Load(club.Db, programme, row.Kind, club.Today) is not { } facts)
            return new ReadingState(row, null, null, null);
        return new ReadingState(row, file, facts, ReadAgain.Read(row.Kind, file.Sheets, ReadingReader.Answers(row), facts, club.Today));
    }
}
