using Keikocho.Core.Syllabus;

namespace Keikocho.Store.Starter;

/// <summary>What a rank asks, from its block.</summary>
internal static class SyllabusAsks
{
    private static readonly string[] Shapes = ["all", "any", "pool", "share", "draw", "the-other"];

    /// <summary>One block under [[rank.asks]].</summary>
    public static Requirement Requirement(Fields block)
    {
        var key = block.Needed("key");
        var ask = Shape(block);
        var made = new Requirement(
            key,
            ask,
            block.Text("title"),
            block.Text("condition"),
            Ages(block.Block("ages")),
            block.Truth("critical"),
            block.Word("carry", SyllabusWords.Carries) ?? Carry.ThisRank,
            block.Text("unit"),
            block.Truth("at-once"));
        block.NothingElse();
        return made;
    }

    private static AgeBand? Ages(Fields? block)
    {
        if (block is null) return null;
        var band = new AgeBand(block.Number("from"), block.Number("to"));
        block.NothingElse();
        return band;
    }

    private static Ask Shape(Fields block)
    {
        var here = Shapes.Where(block.Has).ToList();
        if (here.Count == 0)
            block.Trace.Fault(block.Line, "rank.asks", $"It does not say what is asked; write one of {string.Join(", ", Shapes)}.");
        else if (here.Count > 1)
            block.Fault(here[1], $"One block asks one thing, and this one has {string.Join(" and ", here)}; make a block of each.");
        return here.FirstOrDefault() switch
        {
            "any" => new Ask.AnyOf(block.Number("any", "ask.count") ?? 0, Of(block)),
            "pool" => new Ask.FromPool(
                block.Number("pool", "ask.count") ?? 0, Chooser(block), block.Texts("of", "ask.pool") ?? [], Kinds(block)),
            "share" => new Ask.ShareOfRank(RankOf(block), block.Number("share", "ask.percent", 1, 99) ?? 0, Kinds(block)),
            "draw" => new Ask.DrawnFromEarlier(block.Number("draw", "ask.count") ?? 0, block.Texts("ranks", "ask.ranks") ?? [], Kinds(block)),
            "the-other" => TheOther(block.Block("the-other", "ask")),
            _ => new Ask.AllOf(block.Texts("all", "ask.items") ?? []),
        };
    }

    private static IReadOnlyList<string> Of(Fields block)
    {
        if (!block.Has("of")) block.Fault("any", "It does not say of what; write of = [...] with the keys of the items.");
        return block.Texts("of", "ask.items") ?? [];
    }

    private static Chooser Chooser(Fields block) => block.Word("chosen-by", SyllabusWords.Choosers, "ask.chosenBy") ?? Core.Syllabus.Chooser.Child;

    private static IReadOnlyList<ItemKind>? Kinds(Fields block) => block.WordsOf("kinds", SyllabusWords.Kinds, "ask.kinds");

    private static string RankOf(Fields block) => block.Needed("of-rank", "ask.rank");

    private static Ask.TheOther TheOther(Fields? block)
    {
        if (block is null) return new Ask.TheOther("", "");
        var made = new Ask.TheOther(block.Needed("rank"), block.Needed("asks", "requirement"));
        block.NothingElse();
        return made;
    }
}
