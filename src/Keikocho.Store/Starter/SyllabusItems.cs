using Keikocho.Core.Syllabus;

namespace Keikocho.Store.Starter;

/// <summary>An item, from its block.</summary>
internal static class SyllabusItems
{
    private static readonly string[] Orders = ["into", "countered-by", "escape", "turnover"];

    /// <summary>One block under [[item]].</summary>
    public static Item Item(Fields block)
    {
        var name = block.Needed("name");
        var item = new Item(
            SyllabusReader.Key(block, name),
            block.NeededWord("kind", SyllabusWords.Kinds),
            name,
            block.Text("technique"),
            OrderOf(block),
            Fall(block.Block("fall")),
            block.Text("kana"),
            block.Text("kanji"),
            block.Text("meaning"),
            block.Text("look-for"),
            block.Number("seconds"),
            block.Number("times"),
            block.Texts("answers"),
            block.Truth("safety"),
            block.Truth("loads-the-neck"),
            block.Text("alternative"),
            block.Texts("covers"));
        block.NothingElse();
        return item;
    }

    private static Order? OrderOf(Fields block)
    {
        var here = Orders.Where(block.Has).ToList();
        if (here.Count > 1)
            block.Fault(here[1], $"One item has one order, and this one has {string.Join(" and ", here)}; make an item of each.");
        var pair = Pair(block, "into", "first", "second");
        var counter = Pair(block, "countered-by", "attack", "counter");
        var escape = Escape(block.Block("escape", "order"));
        var turnover = Turnover(block.Block("turnover", "order"));
        return pair is { } p ? new Order.Into(p.First, p.Second)
            : counter is { } c ? new Order.CounteredBy(c.First, c.Second)
            : escape ?? (Order?)turnover;
    }

    private static (string First, string Second)? Pair(Fields block, string name, string first, string second)
    {
        if (block.Texts(name, "order") is not { } pair) return null;
        block.Trace.Note($"{block.Member}.order.{first}", block.LineOf(name), $"item.{name}");
        block.Trace.Note($"{block.Member}.order.{second}", block.LineOf(name), $"item.{name}");
        if (pair.Count == 2) return (pair[0], pair[1]);
        block.Fault(name, $"This takes two techniques, as {name} = [\"O-soto-otoshi\", \"Kesa-gatame\"]; write it so.");
        return null;
    }

    private static Order.EscapeFrom? Escape(Fields? block)
    {
        if (block is null) return null;
        var made = new Order.EscapeFrom(block.Needed("hold"), block.Needed("by"));
        block.NothingElse();
        return made;
    }

    private static Order.TurnoverInto? Turnover(Fields? block)
    {
        if (block is null) return null;
        var made = new Order.TurnoverInto(block.Text("into", "hold"), block.Needed("position"));
        block.NothingElse();
        return made;
    }

    private static FallForm? Fall(Fields? block)
    {
        if (block is null) return null;
        var made = new FallForm(
            block.NeededWord("direction", SyllabusWords.Falls),
            block.Truth("both-sides"),
            SyllabusReader.NeededNumber(block, "stage", least: 1, most: 6));
        block.NothingElse();
        return made;
    }
}
