using System.Globalization;
using Keikocho.Paper.Layout;

namespace Keikocho.Paper.Folder;

/// <summary>The register to fill in with a pen: every child who is expected, and empty lines for newcomers and adults.</summary>
internal static class FolderRegisterPages
{
    private const int Newcomers = 4;
    private const int Adults = 4;
    private const double RowHeight = 20;
    private const double LowestRow = 15;
    private const double Number = 52;

    /// <summary>Draws one register on pages of its own.</summary>
    public static void Draw(Draft draft, FolderFrame frame, FolderRegister register, IReadOnlyDictionary<int, FolderChild> children)
    {
        Row[] rows =
        [
            .. register.Children.Select(n => Line(n.ToString(CultureInfo.InvariantCulture), Name(children[n]), n % 5 == 0)),
            .. Enumerable.Repeat(Line("new", [], false), Newcomers),
            .. Enumerable.Repeat(Line("adult", [], false), Adults),
        ];
        var scratch = draft.Scratch();
        var room = FolderFrame.Bottom(scratch) - frame.Again(scratch, Part(register));
        var inside = draft.Format.Inside;
        Table table = Make(RowHeight);
        // One page where lower rows make it one.
        for (var height = RowHeight; height >= LowestRow; height -= 0.5)
        {
            if (Height(Make(height), 0, rows.Length, draft) > room) continue;
            table = Make(height);
            break;
        }

        for (var from = 0; from < rows.Length;)
        {
            var to = from + 1;
            while (to < rows.Length && Height(table, from, to + 1, draft) <= room) to++;
            var page = draft.NewPage();
            var top = frame.Again(page, Part(register));
            var (first, last) = (from, to);
            page.Tagged(PaperTag.Table, () => table.Draw(page, inside.X, top, first, last));
            from = to;
        }

        Table Make(double height) => new(
            [new("No", Number), new("Name", inside.Width - Number - 60 - 64 - 140), new("Here", 60, Align.Centre), new("Gone at", 64, Align.Centre), new("Fetched by", 140)],
            rows, Math.Min(14, height * 0.66), height)
        { UprightRulesFrom = 2, HeadHeight = 17 };
    }

    private static string Part(FolderRegister register) => $"Register, {register.Name}";

    private static double Height(Table table, int from, int to, Draft draft) => table.HeadHeight + Enumerable.Range(from, to - from).Sum(i => table.HeightOf(i, draft.Missing));

    private static Words[] Name(FolderChild child) => child.Second is null ? [new(child.First, true)] : [new(child.First, true), " ", child.Second];

    private static Row Line(string number, Words[] name, bool heavy) => new(
        [
            new([number]),
            new(name) { HeadsRow = true },
            new([], (page, area, _) =>
            {
                var side = Math.Min(area.Height - 6, 13);
                page.Add(new BoxInk(new Area(area.X + ((area.Width - side) / 2), area.Y + ((area.Height - side) / 2), side, side), 0.9));
            }),
            Cell.Empty,
            Cell.Empty,
        ],
        heavy ? 0.9 : 0.3);
}
