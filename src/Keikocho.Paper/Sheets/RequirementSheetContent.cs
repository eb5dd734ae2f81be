using Keikocho.Core.Syllabus;

namespace Keikocho.Paper.Sheets;

/// <summary>How an item is written in Japanese; from the item itself or from the name library.</summary>
/// <param name="Kanji">Kanji; null for none.</param>
/// <param name="Kana">Kana; null for none.</param>
public sealed record ItemScript(string? Kanji, string? Kana);

/// <summary>All that a requirement sheet shows; there is no place in it for anything else.</summary>
/// <param name="Club">Name of the club.</param>
/// <param name="PrintedOn">Today.</param>
/// <param name="Child">The child's name; null for the copy on the wall.</param>
/// <param name="Sheet">What must be shown. Its <see cref="RequirementSheet.LeftOut"/> is for the instructor and is never printed.</param>
/// <param name="Term">Name of the term; null for none.</param>
/// <param name="TestStart">When the test begins; null where not set.</param>
/// <param name="OtherTestDays">Further days on which this rank is tested this term.</param>
/// <param name="Before">Least lessons, weeks and age in sentences (<see cref="MinimaWords"/> makes them), and what else must be true before the test.</param>
/// <param name="Belt">The belt that is tested for; null where it cannot be drawn.</param>
/// <param name="Scripts">Kanji and kana by the key of the item; what is not here is taken from the item.</param>
/// <param name="AtHome">What to do at home, a sentence each. That nothing is thrown at home is always printed.</param>
/// <param name="SpeakTo">Whom to ask.</param>
/// <param name="SeenGood">On a child's sheet, items that an adult has seen good, by key, with the day; null shows none.</param>
/// <param name="NotReviewed">Keys of items that nobody at the club has looked over yet; null for none.</param>
/// <param name="Cautions">Lines about the edition that whoever reads it must know; null for none.</param>
/// <param name="TestWord">The club's word for the test.</param>
public sealed record RequirementSheetContent(
    string Club,
    DateOnly PrintedOn,
    string? Child,
    RequirementSheet Sheet,
    string? Term,
    TimeOnly? TestStart,
    IReadOnlyList<DateOnly> OtherTestDays,
    IReadOnlyList<string> Before,
    BeltPicture? Belt,
    IReadOnlyDictionary<string, ItemScript> Scripts,
    IReadOnlyList<string> AtHome,
    string SpeakTo,
    IReadOnlyDictionary<string, DateOnly>? SeenGood = null,
    IReadOnlySet<string>? NotReviewed = null,
    IReadOnlyList<string>? Cautions = null,
    string TestWord = "Promotion test")
{
    internal void Guard()
    {
        if (string.IsNullOrWhiteSpace(Club) || string.IsNullOrWhiteSpace(SpeakTo))
            throw new ArgumentException("A sheet names the club and whom to speak to.", nameof(Club));
        if (Child is { } name && string.IsNullOrWhiteSpace(name))
            throw new ArgumentException("A child's sheet has the child's name; the copy on the wall has none at all.", nameof(Child));
        if (Child is not null)
            return;
        var items = Sheet.Lines.SelectMany(line => line.Items);
        if (SeenGood is { Count: > 0 } || items.Any(item => item.Way is not null || item.KeptUntil is not null || item.InsteadOf is not null || item.Chosen))
            throw new ArgumentException("The copy on the wall shows what a rank asks and nothing about one child: no agreed way, no kept or chosen item, no sighting.", nameof(Child));
    }
}
