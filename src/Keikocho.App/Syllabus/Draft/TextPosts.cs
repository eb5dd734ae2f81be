using Keikocho.App.Club;
using Keikocho.App.Shared;
using Keikocho.App.Syllabus.Edits;
using Keikocho.Store.Starter;

namespace Keikocho.App.Syllabus.Draft;

/// <summary>Takes the whole draft as a text.</summary>
internal static class TextPosts
{
    /// <summary>What a text that was typed here is called in the sentences about it.</summary>
    public const string FileName = "text";

    public static Task<IResult> SaveAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        return SyllabusPosts.StepAsync(club, sent, programme => SyllabusAddress.Of(SyllabusAddress.Text, programme), desk =>
        {
            switch (SyllabusText.ReadDraft(Typed(fields["text"]), FileName))
            {
                // What stands against its publication is listed on the page of the draft; it is kept all the same.
                case SyllabusReading.Read read:
                    var open = read.Cautions.Count(fault => fault.Blocks);
                    return new Edited(read.Edition with { From = null }, open == 0
                        ? "The draft was written anew as a text."
                        : $"The draft was written anew as a text; {Counted.Of(open, "thing")} to mend before it can be published.");
                case SyllabusReading.Faulty faulty:
                    foreach (var fault in faulty.Faults) sent.Refuse("text", Sentence(fault));
                    return null;
                default: return null;
            }
        }, (desk, refused) => OnePage.Of<TextPage>(new Dictionary<string, object?>
        {
            [nameof(TextPage.Known)] = desk,
            [nameof(TextPage.Refused)] = refused,
        }), cancel);
    }

    /// <summary>"Line 14, rank.asks.any: ...".</summary>
    internal static string Sentence(TextFault fault) =>
        $"Line {fault.Line.ToString(System.Globalization.CultureInfo.InvariantCulture)}{(fault.Field.Length == 0 ? "" : ", " + fault.Field)}: {fault.Sentence}";

    /// <summary>A browser sends its own ends of lines.</summary>
    internal static string Typed(string? text) => (text ?? "").ReplaceLineEndings("\n");
}
