namespace Keikocho.Paper.Layout;

/// <summary>Pieces of text one below the other, from page to page.</summary>
/// <param name="draft">The paper.</param>
/// <param name="again">Draws the head of a new page and says where it ends.</param>
internal sealed class Flow(Draft draft, Func<Page, double> again)
{
    /// <summary>Draws the pieces; each draws itself from a height down and says where it ends.</summary>
    public void Draw(Page page, double y, IEnumerable<Func<Page, double, double>> pieces)
    {
        foreach (var piece in pieces)
        {
            if (y + Height(piece) > Frame.Bottom(page))
            {
                page = draft.NewPage();
                y = again(page);
            }

            y = piece(page, y);
        }
    }

    /// <summary>Height of one piece.</summary>
    public double Height(Func<Page, double, double> piece)
    {
        var page = draft.Scratch();
        return piece(page, page.Inside.Y) - page.Inside.Y;
    }
}
