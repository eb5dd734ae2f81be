using System.Globalization;
using System.Text;
using Keikocho.Core.Kernel;
using Keikocho.Core.Syllabus;

namespace Keikocho.Core.Tests.Syllabus;

/// <summary>A sheet as lines of text, for the kept answers.</summary>
internal static class SheetText
{
    public static string Of(string heading, RequirementSheet sheet)
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"== {heading}\n{sheet.FromRankName ?? "-"} to {sheet.RankName}, {sheet.EditionName} from {sheet.EditionFrom?.Iso()}, unit {sheet.UnitNumber?.ToString(CultureInfo.InvariantCulture) ?? "-"} {sheet.UnitName ?? "-"}, test {sheet.TestOn.Iso()}, draw {sheet.Draw?.ToString(CultureInfo.InvariantCulture) ?? "-"}\n");
        text.Append(CultureInfo.InvariantCulture, $"minima: {sheet.Minima.Lessons} lessons, {sheet.Minima.Weeks} weeks, {sheet.Minima.Months} months\n");
        foreach (var line in sheet.Lines)
        {
            text.Append(CultureInfo.InvariantCulture, $"{line.Part} [{line.Requirement}] {line.Title}");
            text.Append(CultureInfo.InvariantCulture, $" ({line.Count} of {line.Items.Count}){(line.Condition is { } c ? $"; {c}" : "")}{(line.Critical ? "; critical" : "")}{(line.Carry == Carry.ThisRank ? "" : $"; {line.Carry}")}{(line.FromRank is { } f ? $"; from {f}" : "")}{(line.Ages is { } a ? $"; {a}" : "")}\n");
            foreach (var item in line.Items)
                text.Append(CultureInfo.InvariantCulture, $"  - {item.Item.Name}{(item.Way is { } w ? $", {w}" : "")}{(item.InsteadOf is { } i ? $" instead of {i}" : "")}{(item.KeptUntil is { } k ? $" kept until {k.Iso()}" : "")}{(item.Chosen ? " *" : "")}\n");
        }

        foreach (var reason in sheet.LeftOut)
            text.Append(CultureInfo.InvariantCulture, $"left out: {reason.Sentence}\n");
        foreach (var reason in sheet.Reasons)
            text.Append(CultureInfo.InvariantCulture, $"reason: {reason.Sentence}\n");
        return text.Append('\n').ToString();
    }
}
