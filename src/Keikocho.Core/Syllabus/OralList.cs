namespace Keikocho.Core.Syllabus;

/// <summary>One word or question on an oral list.</summary>
/// <param name="On">The word or question as the sheet has it.</param>
/// <param name="Line">The line of the sheet that asks it.</param>
/// <param name="Certain">Asked in any case; false where the line leaves a choice.</param>
public sealed record OralQuestion(SheetItem On, SheetLine Line, bool Certain)
{
    /// <summary>The word or question with its accepted answers.</summary>
    public Item Item => On.Item;
}

/// <summary>The words and questions of a sheet, safety first.</summary>
public static class OralList
{
    /// <summary>Each word and question once: what stops everything, then what is asked in any case, then the choices; else as on the sheet.</summary>
    public static IReadOnlyList<OralQuestion> Of(RequirementSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        return
        [
            .. sheet.Lines.SelectMany(l => l.Items, (line, item) => new OralQuestion(item, line, line.IsAll))
                .Where(q => q.Item.Kind is ItemKind.Word or ItemKind.Question)
                .OrderByDescending(q => q.Item.Safety).ThenByDescending(q => q.Certain)
                .DistinctBy(q => q.Item.Key),
        ];
    }
}
