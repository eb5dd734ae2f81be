using Keikocho.App.Club;
using Keikocho.App.Syllabus.Edits;
using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;

namespace Keikocho.App.Syllabus.Draft;

/// <summary>Takes changes of what one rank of a draft asks.</summary>
internal static class LinePosts
{
    public static Task<IResult> OrderAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        var rank = sent.Text("rank");
        var (what, key) = RankPosts.Ordered(sent.Text("do"));
        return SyllabusPosts.StepAsync(club, sent, programme => SyllabusAddress.Rank(programme, rank), desk => what switch
        {
            "up" => EditLines.Move(desk.Edition, rank, key, up: true),
            "down" => EditLines.Move(desk.Edition, rank, key, up: false),
            "drop" => EditLines.Drop(desk.Edition, rank, key),
            "join" => Join(desk.Edition, rank, sent, fields),
            "part" => EditLines.Part(desk.Edition, rank, key),
            _ => null,
        }, (desk, refused) => RankPosts.RankAgain(desk, rank, refused), cancel);
    }

    public static Task<IResult> AddAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        var rank = sent.Text("rank");
        return SyllabusPosts.StepAsync(club, sent, programme => SyllabusAddress.Rank(programme, rank), desk =>
        {
            var item = ItemOf(club, sent, desk.Edition, "item", "kind");
            var pattern = Pattern(sent, desk.Edition, new Requirement("", new Ask.AllOf([])), "");
            if (item is null || !sent.IsTaken) return null;
            var (edition, own) = EditItems.With(desk.Edition, item);
            return EditLines.Add(edition, rank, own, pattern);
        }, (desk, refused) => RankPosts.RankAgain(desk, rank, refused), cancel);
    }

    public static Task<IResult> ChangeAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        var (rank, key) = (sent.Text("rank"), sent.Text("line"));
        var (what, which) = RankPosts.Ordered(sent.Text("do"));
        return SyllabusPosts.StepAsync(club, sent, programme => SyllabusAddress.Rank(programme, rank, key), desk =>
        {
            if (desk.Edition.Ranks.FirstOrDefault(r => r.Key == rank)?.Requirements.FirstOrDefault(r => r.Key == key) is not { } was) return null;
            if (what == "take") return EditLines.TakeFrom(desk.Edition, rank, key, which);
            if (what == "add")
            {
                if (ItemOf(club, sent, desk.Edition, "more-item", "more-kind") is not { } item) return null;
                var (edition, own) = EditItems.With(desk.Edition, item);
                return EditLines.AddTo(edition, rank, key, own);
            }

            var line = Pattern(sent, desk.Edition, was, "line-") with { Title = sent.NameIfAny("line-title"), Ask = Counted(sent, was.Ask) };
            return sent.IsTaken ? EditLines.Change(desk.Edition, rank, line) : null;
        }, (desk, refused) => RankPosts.RankAgain(desk, rank, refused), cancel);
    }

    /// <summary>The item that two fields name: a known one, or a new one of the chosen kind; null when the form is refused.</summary>
    internal static Item? ItemOf(OpenClub club, SentForm sent, Edition edition, string nameId, string kindId)
    {
        var name = sent.Name(nameId, "Type what is to be shown: a name from the list, or one of your own.");
        if (name.Length == 0) return null;
        var known = KnownItems.Of(club);
        if (EditItems.Find(edition, known, name) is { } found) return found;
        if (!Enum.TryParse<ItemKind>(sent.Text(kindId), out var kind) || !Enum.IsDefined(kind))
        {
            sent.Refuse(kindId, $"“{name}” is new here: choose what kind of thing it is.");
            return null;
        }

        var item = EditItems.New(edition, known, name, kind);
        if (kind != ItemKind.Fall) return item;
        if (Fall(sent) is { } fall) return item with { Fall = fall };
        sent.Refuse("fall-direction", "A fall needs its direction and the stage that is enough: choose both.");
        return null;
    }

    /// <summary>Direction, sides and stage of a fall; null where one is missing.</summary>
    internal static FallForm? Fall(SentForm sent) =>
        Enum.TryParse<FallDirection>(sent.Text("fall-direction"), out var direction) && Enum.IsDefined(direction) && sent.WholeIfAny("fall-stage", 1, 6, "Stage") is { } stage
            ? new FallForm(direction, direction is FallDirection.Side or FallDirection.Rolling, stage)
            : null;

    private static Edited? Join(Edition edition, string rank, SentForm sent, IFormCollection fields)
    {
        var lines = fields["join"].OfType<string>().ToHashSet(StringComparer.Ordinal);
        var count = sent.WholeIfAny("join-count", 1, 50, "So many of them") ?? 1;
        if (lines.Count < 2)
        {
            sent.Refuse("join-count", "Tick two lines or more to make one of them.");
            return null;
        }

        var edited = EditLines.Join(edition, rank, lines, count);
        if (edited is null) sent.Refuse("join-count", $"Any {count} of the ticked lines does not work: ask for fewer than there are, of lines that name their items.");
        return edited;
    }

    private static Ask Counted(SentForm sent, Ask ask)
    {
        var items = EditionKeys.Of(ask);
        var count = sent.WholeIfAny("line-count", 1, 100, "So many of them");
        if (count is not { } k) return ask;
        switch (ask)
        {
            case Ask.AllOf or Ask.AnyOf when k > items.Count:
                sent.Refuse("line-count", $"There are {items.Count} to choose from. Type a number up to that.");
                return ask;
            case Ask.AllOf or Ask.AnyOf:
                return k == items.Count ? ask is Ask.AllOf ? ask : new Ask.AllOf(items) : new Ask.AnyOf(k, items);
            case Ask.FromPool pool: return pool with { Count = k };
            case Ask.DrawnFromEarlier drawn: return drawn with { Count = k };
            case Ask.ShareOfRank share when k < 100: return share with { Percent = k };
            default: return ask;
        }
    }

    private static Requirement Pattern(SentForm sent, Edition edition, Requirement was, string beginning)
    {
        var from = sent.WholeIfAny(beginning + "age-from", 0, 99, "From age");
        var to = sent.WholeIfAny(beginning + "age-to", 0, 99, "To age");
        if (from > to) sent.Refuse(beginning + "age-to", $"{to} is younger than {from}. Type the oldest age.");
        var unit = sent.Text(beginning + "unit");
        return was with
        {
            Condition = sent.NameIfAny(beginning + "condition"),
            Ages = from is null && to is null ? null : new Core.Syllabus.AgeBand(from, to),
            Critical = sent.Text(beginning + "critical") == "on",
            AtOnce = sent.Text(beginning + "at-once") == "on",
            Carry = Enum.TryParse<Carry>(sent.Text(beginning + "carry"), out var carry) && Enum.IsDefined(carry) ? carry : was.Carry,
            Unit = edition.Units.Any(u => u.Key == unit) ? unit : null,
        };
    }
}
