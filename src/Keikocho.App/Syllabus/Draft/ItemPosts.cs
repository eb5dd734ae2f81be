using Keikocho.App.Club;
using Keikocho.App.Shared;
using Keikocho.App.Syllabus.Edits;
using Keikocho.Core.Intake;
using Keikocho.Core.Syllabus;

namespace Keikocho.App.Syllabus.Draft;

/// <summary>Takes changes of what one item of a draft is.</summary>
internal static class ItemPosts
{
    public static Task<IResult> ChangeAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        var key = sent.Text("item");
        return SyllabusPosts.StepAsync(club, sent, programme => SyllabusAddress.Item(programme, key), desk =>
        {
            if (desk.Edition.Items.FirstOrDefault(i => i.Key == key) is not { } was) return null;
            var name = sent.Name("name", "The item has no name. Type one.");
            if (desk.Edition.Items.Any(i => i.Key != key && NameFold.Fold(i.Name) == NameFold.Fold(name))) sent.Refuse("name", $"There is another item {name}.");
            if (!Enum.TryParse<ItemKind>(sent.Text("kind"), out var kind) || !Enum.IsDefined(kind)) sent.Refuse("kind", "Choose what kind of thing it is.");
            var fall = kind == ItemKind.Fall ? LinePosts.Fall(sent) : null;
            if (kind == ItemKind.Fall && fall is null) sent.Refuse("fall-direction", "A fall needs its direction and the stage that is enough: choose both.");
            var alternative = sent.Text("alternative");
            var item = was with
            {
                Name = name,
                Kind = kind,
                Technique = sent.NameIfAny("technique"),
                Order = OrderOf(sent, kind, was.Order),
                Fall = fall,
                Meaning = Line(sent, "meaning"),
                LookFor = Line(sent, "look-for"),
                Kana = sent.NameIfAny("kana"),
                Kanji = sent.NameIfAny("kanji"),
                Seconds = sent.WholeIfAny("seconds", 1, 600, "Seconds"),
                Times = sent.WholeIfAny("times", 1, 500, "Times"),
                Answers = Lines(sent, "answers", was.Answers),
                Safety = sent.Text("safety") == "on",
                LoadsTheNeck = sent.Text("neck") == "on",
                Alternative = desk.Edition.Items.Any(i => i.Key == alternative) ? alternative : null,
                Covers = Keys(desk.Edition, fields["covers"], was.Covers),
            };
            return sent.IsTaken ? EditItems.Change(desk.Edition, item) : null;
        }, (desk, refused) => OnePage.Of<ItemPage>(new Dictionary<string, object?>
        {
            [nameof(ItemPage.Key)] = key,
            [nameof(ItemPage.Known)] = desk,
            [nameof(ItemPage.Refused)] = refused,
        }), cancel);
    }

    private static Order? OrderOf(SentForm sent, ItemKind kind, Order? was)
    {
        var (first, second) = (sent.NameIfAny("first"), sent.NameIfAny("second"));
        if (first is null && second is null) return null;
        if (first is null && kind != ItemKind.Turnover) sent.Refuse("first", "Two belong together here: type the first too, or leave both empty.");
        if (second is null) sent.Refuse("second", "Two belong together here: type the second too, or leave both empty.");
        if (!sent.IsTaken) return was;
        return kind switch
        {
            ItemKind.Counter => new Order.CounteredBy(first!, second!),
            ItemKind.Escape => new Order.EscapeFrom(first!, second!),
            ItemKind.Turnover => new Order.TurnoverInto(first, second!),
            _ => new Order.Into(first!, second!),
        };
    }

    private static string? Line(SentForm sent, string id) => sent.Text(id) is { Length: > 0 } text ? text[..Math.Min(text.Length, 300)] : null;

    private static IReadOnlyList<string>? Lines(SentForm sent, string id, IReadOnlyList<string>? was)
    {
        IReadOnlyList<string> lines = [.. sent.Text(id).Split('\n').Select(l => l.Trim()).Where(l => l.Length > 0)];
        return lines.Count == 0 ? null : was is not null && was.SequenceEqual(lines) ? was : lines;
    }

    private static IReadOnlyList<string>? Keys(Edition edition, IEnumerable<string?> sent, IReadOnlyList<string>? was)
    {
        IReadOnlyList<string> keys = [.. sent.OfType<string>().Where(k => edition.Items.Any(i => i.Key == k))];
        return keys.Count == 0 ? null : was is not null && was.SequenceEqual(keys) ? was : keys;
    }
}
