using Keikocho.Core.Intake;
using Keikocho.Core.Kernel;

namespace Keikocho.Core.Tests.Intake;

/// <summary>Sheets from lines of text, and short questions about them.</summary>
internal static class Grids
{
    internal static readonly DateOnly Today = new(2026, 11, 25);
    internal static readonly Dictionary<(PersonId, DateOnly), RegisterSays> NothingHeld = [];

    /// <summary>Rows parted by line ends, cells by |.</summary>
    internal static Sheet Of(string text, bool from1904 = false)
        => new("Juniors", [.. text.Split('\n').Select(line => (IReadOnlyList<Cell>)[.. line.Split('|').Select(Cell.OfText)])], from1904: from1904);

    internal static Cell Day(int year, int month, int day) => new(CellKind.Date, $"{year}-{month:00}-{day:00}", Day: new DateOnly(year, month, day));

    internal static Cell Number(double value) => new(CellKind.Number, value.ToString(System.Globalization.CultureInfo.InvariantCulture), value);

    internal static RosterReading Roster(Sheet sheet, Answers? answers = null, IReadOnlyList<KnownPerson>? known = null, IReadOnlyList<string>? ranks = null, IReadOnlyDictionary<int, ColumnMeaning>? said = null)
        => ReadRoster.Read(new(sheet, Today, said ?? new Dictionary<int, ColumnMeaning>(), ranks ?? [], known ?? [], ErasedPersons.None, answers ?? Answers.None));

    internal static RegisterReading Register(Sheet sheet, Answers? answers = null, IReadOnlyList<KnownPerson>? known = null, IReadOnlyDictionary<(PersonId, DateOnly), RegisterSays>? held = null)
        => ReadRegister.Read(new(sheet, Today, known ?? [], held ?? NothingHeld, ErasedPersons.None, answers ?? Answers.None));

    internal static KnownPerson Known(int number, string given, string family, DateOnly? birth = null, string called = "", string registration = "")
        => new(new PersonId(new Guid(number, 0, 0, new byte[8])), new RosterChild { GivenName = given, FamilyName = family, BirthDate = birth, CalledName = called, RegistrationNumber = registration });

    internal static Answers Say(params (string Key, string Answer)[] answers) => new(answers.ToDictionary(one => one.Key, one => one.Answer));
}
