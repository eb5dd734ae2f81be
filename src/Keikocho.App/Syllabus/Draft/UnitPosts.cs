using Keikocho.App.Club;
using Keikocho.App.Syllabus.Edits;
using Keikocho.Core.Intake;

namespace Keikocho.App.Syllabus.Draft;

/// <summary>Takes changes of the units and of the first course of a draft.</summary>
internal static class UnitPosts
{
    public static Task<IResult> AddAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        return SyllabusPosts.StepAsync(club, sent, Back, desk =>
        {
            var name = sent.Name("unit-name", "The unit has no name. “Hip throws” will do.");
            if (desk.Edition.Units.Any(u => NameFold.Fold(u.Name) == NameFold.Fold(name))) sent.Refuse("unit-name", $"There is a unit {name} already.");
            return sent.IsTaken ? EditUnits.Add(desk.Edition, name) : null;
        }, RankPosts.DraftAgain, cancel);
    }

    public static Task<IResult> OrderAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        var (what, key) = RankPosts.Ordered(sent.Text("do"));
        return SyllabusPosts.StepAsync(club, sent, Back, desk => what switch
        {
            "up" => EditUnits.Move(desk.Edition, key, earlier: true),
            "down" => EditUnits.Move(desk.Edition, key, earlier: false),
            "drop" => EditUnits.Drop(desk.Edition, key),
            _ => null,
        }, RankPosts.DraftAgain, cancel);
    }

    public static Task<IResult> TaughtAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        var unit = sent.Text("unit");
        var (what, key) = RankPosts.Ordered(sent.Text("do"));
        // The ids of its fields begin with the unit's key, since every unit stands on one page.
        var beginning = "taught-" + unit;
        return SyllabusPosts.StepAsync(club, sent, programme => SyllabusAddress.Of(SyllabusAddress.Draft, programme, beginning), desk =>
        {
            switch (what)
            {
                case "up": return EditUnits.MoveItem(desk.Edition, unit, key, up: true);
                case "down": return EditUnits.MoveItem(desk.Edition, unit, key, up: false);
                case "out": return EditUnits.TakeOut(desk.Edition, unit, key);
                case "rename":
                    var name = sent.Name(beginning + "-name", "The unit has no name. Type one.");
                    return sent.IsTaken ? EditUnits.Rename(desk.Edition, unit, name) : null;
                default:
                    if (LinePosts.ItemOf(club, sent, desk.Edition, beginning + "-item", beginning + "-kind") is not { } item) return null;
                    var (edition, own) = EditItems.With(desk.Edition, item);
                    return EditUnits.Teach(edition, unit, own);
            }
        }, RankPosts.DraftAgain, cancel);
    }

    private static string Back(Guid programme) => SyllabusAddress.Of(SyllabusAddress.Draft, programme, "units-part");
}
