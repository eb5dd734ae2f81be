using Keikocho.Core.Intake;
using Keikocho.Store.Intake;

namespace Keikocho.Store.Tests.Intake;

/// <summary>The fixtures, and short ways to read them.</summary>
internal static class IntakeFiles
{
    internal static readonly DateOnly Today = new(2026, 11, 25);

    internal static readonly IReadOnlyList<string> Ranks = ["white", "white-yellow", "yellow", "yellow-orange", "orange"];

    internal static string PathOf(string name) => Path.Combine(AppContext.BaseDirectory, "Fixtures", "intake", name);

    internal static TableReading Read(string name, ReadLimits? limits = null)
    {
        using var file = File.OpenRead(PathOf(name));
        return ReadTable.Read(file, name, limits ?? ReadLimits.Proposed, null, TestContext.Current.CancellationToken);
    }

    internal static TableReading Read(byte[] bytes, string name, ReadLimits? limits = null)
        => ReadTable.Read(new MemoryStream(bytes), name, limits ?? ReadLimits.Proposed, null, TestContext.Current.CancellationToken);

    internal static TableReading.Read Good(string name) => Assert.IsType<TableReading.Read>(Read(name));

    internal static Sheet Sheet(string name) => Good(name).Sheets[0];

    internal static RosterQuestion Roster(Sheet sheet, Answers? answers = null, IReadOnlyList<KnownPerson>? known = null, ErasedPersons? erased = null)
        => new(sheet, Today, new Dictionary<int, ColumnMeaning>(), Ranks, known ?? [], erased ?? ErasedPersons.None, answers ?? Answers.None);
}
