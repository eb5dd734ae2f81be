using Keikocho.App.Club;
using Keikocho.App.Shared;
using Keikocho.App.Shared.Parts;
using Keikocho.App.Syllabus.Edits;
using Keikocho.Core.Intake;

namespace Keikocho.App.Syllabus.Draft;

/// <summary>Takes changes of the ladder of a draft.</summary>
internal static class RankPosts
{
    public static Task<IResult> NamesAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        return SyllabusPosts.StepAsync(club, sent, Back, _ =>
        {
            var ladder = sent.Name("ladder", "The ladder has no name. “Juniors” will do.");
            var name = sent.Name("edition", "The edition has no name. “edition 1” will do.");
            return sent.IsTaken ? EditRanks.Names(_.Edition, ladder, name) : null;
        }, DraftAgain, cancel);
    }

    public static Task<IResult> OrderAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        var (what, key) = Ordered(sent.Text("do"));
        return SyllabusPosts.StepAsync(club, sent, Back, desk => what switch
        {
            "up" => EditRanks.Move(desk.Edition, key, higher: false),
            "down" => EditRanks.Move(desk.Edition, key, higher: true),
            "drop" => EditRanks.Drop(desk.Edition, key),
            _ => null,
        }, DraftAgain, cancel);
    }

    public static Task<IResult> AddAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        return SyllabusPosts.StepAsync(club, sent, Back, desk =>
        {
            var name = sent.Name("rank-name", "The rank has no name. “Yellow, one red tip” will do.");
            if (desk.Edition.Ranks.Any(r => NameFold.Fold(r.Name) == NameFold.Fold(name))) sent.Refuse("rank-name", $"The ladder has a rank {name} already.");
            var (cloth, tips) = Belt(sent, "rank-cloth", "rank-tips", name);
            return sent.IsTaken ? EditRanks.Add(desk.Edition, name, cloth, tips, sent.Text("rank-after")) : null;
        }, DraftAgain, cancel);
    }

    public static Task<IResult> ChangeAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        var key = sent.Text("rank");
        return SyllabusPosts.StepAsync(club, sent, programme => SyllabusAddress.Rank(programme, key), desk =>
        {
            if (desk.Edition.Ranks.FirstOrDefault(r => r.Key == key) is not { } was) return null;
            var name = sent.Name("name", "The rank has no name. Type one.");
            if (desk.Edition.Ranks.Any(r => r.Key != key && NameFold.Fold(r.Name) == NameFold.Fold(name))) sent.Refuse("name", $"The ladder has another rank {name}.");
            var (cloth, tips) = Belt(sent, "cloth", "tips", name);
            var minima = MinimaFields.Read(sent, was.Minima);
            var rank = was with
            {
                Name = name,
                ShortName = sent.NameIfAny("short"),
                Cloth = cloth,
                Tips = tips,
                Given = sent.NameIfAny("given"),
                FirstCourse = sent.Text("first-course") == "on",
                Minima = minima,
            };
            return sent.IsTaken ? EditRanks.Change(desk.Edition, rank) : null;
        }, (desk, refused) => RankAgain(desk, key, refused), cancel);
    }

    internal static IResult RankAgain(DraftDesk desk, string key, RefusedForm refused) => OnePage.Of<RankPage>(new Dictionary<string, object?>
    {
        [nameof(RankPage.Key)] = key,
        [nameof(RankPage.Known)] = desk,
        [nameof(RankPage.Refused)] = refused,
    });

    internal static IResult DraftAgain(DraftDesk desk, RefusedForm refused) => OnePage.Of<DraftPage>(new Dictionary<string, object?>
    {
        [nameof(DraftPage.Known)] = desk,
        [nameof(DraftPage.Refused)] = refused,
    });

    /// <summary>A button's "up:yellow" as its two parts.</summary>
    internal static (string What, string Key) Ordered(string pressed)
    {
        var at = pressed.IndexOf(':', StringComparison.Ordinal);
        return at < 0 ? (pressed, "") : (pressed[..at], pressed[(at + 1)..]);
    }

    private static string Back(Guid programme) => SyllabusAddress.Of(SyllabusAddress.Draft, programme, "ranks-part");

    private static (string? Cloth, int Tips) Belt(SentForm sent, string clothId, string tipsId, string name)
    {
        var tips = sent.WholeIfAny(tipsId, 0, 4, "Tips");
        var chosen = sent.Text(clothId);
        if (chosen == "none") return (null, tips ?? 0);
        if (Enum.TryParse<BeltCloth>(chosen, ignoreCase: true, out var cloth) && Enum.IsDefined(cloth)) return (cloth.ToString().ToLowerInvariant(), tips ?? 0);
        // Nothing chosen: the name says what it looks like.
        var read = RankWords.Read(name);
        return (read.Cloth, tips ?? read.Tips);
    }
}
