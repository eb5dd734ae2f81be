using Keikocho.Paper.Layout;

namespace Keikocho.Paper.Register;

/// <summary>The round stamps of the register, as on the screen: a shape for each mark. The words stand beside them.</summary>
internal static class RegisterStamp
{
    /// <summary>Draws the stamp of a mark around a point.</summary>
    public static void Draw(Page page, RegisterMark mark, double x, double y, double radius) => Draw(page, mark.Word, mark.Late, x, y, radius);

    /// <summary>Draws a stamp around a point.</summary>
    public static void Draw(Page page, RegisterWord word, bool late, double x, double y, double radius)
    {
        switch (word)
        {
            case RegisterWord.NotMarked:
                page.Add(new CircleInk(x, y, radius - 0.4, 0.6, 1.2));
                break;
            case RegisterWord.Present when !late:
                page.Add(new CircleInk(x, y, radius, 0));
                Kanji(page, "出", x, y, radius, true);
                break;
            case RegisterWord.Present:
                page.Add(new CircleInk(x, y, radius - 0.7, 1.3));
                Kanji(page, "遅", x, y, radius, false);
                break;
            case RegisterWord.Left:
                page.Add(new BoxInk(new Area(x - radius + 0.7, y - radius + 0.7, (2 * radius) - 1.4, (2 * radius) - 1.4), 1.1));
                Kanji(page, "早", x, y, radius, false);
                break;
            case RegisterWord.ToldUs:
                page.Add(new CircleInk(x, y, radius - 0.4, 0.6));
                Kanji(page, "届", x, y, radius, false);
                break;
            case RegisterWord.Absent:
                page.Add(new CircleInk(x, y, radius - 0.4, 0.6, 2));
                Kanji(page, "欠", x, y, radius, false);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(word), word, "No such mark.");
        }
    }

    private static void Kanji(Page page, string sign, double x, double y, double radius, bool white)
    {
        var size = radius * 1.3;
        foreach (var run in FontSet.Runs(sign, true, page.Missing))
            page.Add(new TextInk(x - (run.Width * size / 2), y + (size * 0.375), size, run, white, Decoration: true));
    }
}
