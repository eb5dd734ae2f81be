using System.Text.Json;
using Keikocho.Core.Kernel;
using Keikocho.Paper.Sheets;
using Keikocho.Store.Promotion;

namespace Keikocho.App.ParentsPages;

/// <summary>Papers of one child as they were kept. What was kept once must always be read.</summary>
public static class KeptPaper
{
    /// <summary>The text that is kept of a parent's page.</summary>
    public static string Write(ToldPage page) => SumJson.Write(page);

    /// <summary>The text that is kept of a sheet. Why something is left out is for the instructor and stands on no sheet, so it is not kept with it.</summary>
    public static string Write(RequirementSheetContent sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        return SumJson.Write(sheet with { Sheet = sheet.Sheet with { LeftOut = [], Reasons = [] } });
    }

    /// <summary>A parent's page; null where it is another paper.</summary>
    /// <exception cref="InvalidDataException">The text is damaged.</exception>
    public static ToldPage? ReadPage(HeldAnswer held) => Read<ToldPage>(held, KeptAnswerStore.ParentsPage);

    /// <summary>A sheet; null where it is another paper.</summary>
    /// <exception cref="InvalidDataException">The text is damaged.</exception>
    public static RequirementSheetContent? ReadSheet(HeldAnswer held) => Read<RequirementSheetContent>(held, KeptAnswerStore.Sheet);

    private static T? Read<T>(HeldAnswer held, string kind)
        where T : class
    {
        ArgumentNullException.ThrowIfNull(held);
        if (held.Kind != kind) return null;
        try
        {
            return SumJson.Read<T>(held.Answer);
        }
        catch (JsonException cause)
        {
            throw new InvalidDataException("A kept paper is damaged. Run the check command on this file.", cause);
        }
    }
}
