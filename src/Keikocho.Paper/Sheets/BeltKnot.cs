using Keikocho.Paper.Layout;

namespace Keikocho.Paper.Sheets;

/// <summary>The knotted belt of the screen, drawn with the same lines: a field of 144 by 88 units.</summary>
internal static class BeltKnot
{
    private static readonly Colour Edge = new(0x25, 0x22, 0x1c);
    private static readonly Colour White = new(0xff, 0xff, 0xff);

    /// <summary>Height for a width of 1.</summary>
    public const double Slope = 88.0 / 144;

    /// <summary>Draws the belt with its top left corner at a place.</summary>
    public static void Draw(Page page, BeltPicture belt, double x, double y, double width)
    {
        var scale = width / 144;
        (double, double) Place(double across, double down) => (x + (across * scale), y + (down * scale));
        var pen = new Pen(page, belt, scale);
        pen.Tail(Turned(24, 66, 38), 57, (belt.Tips + 0) / 2);
        pen.Tail(Turned(-24, 78, 38), 70, (belt.Tips + 1) / 2);
        pen.Cloth(
            new Outline(1, 17, Place).Bow(36, 25, 68, 23).Line(68, 41).Bow(34, 43, 1, 35).Line(1, 17),
            new Outline(1, 26, Place).Bow(36, 34, 68, 32).Line(68, 41).Bow(34, 43, 1, 35).Line(1, 26));
        pen.Seams(at => new Outline(1, at, Place).Bow(36, at + 8, 68, at + 6), 21.5, 26, 30.5);
        pen.Cloth(
            new Outline(143, 17, Place).Bow(108, 25, 76, 23).Line(76, 41).Bow(110, 43, 143, 35).Line(143, 17),
            new Outline(143, 26, Place).Bow(108, 34, 76, 32).Line(76, 41).Bow(110, 43, 143, 35).Line(143, 26));
        pen.Seams(at => new Outline(143, at, Place).Bow(108, at + 8, 76, at + 6), 21.5, 26, 30.5);
        pen.Cloth(
            new Outline(57, 24, Place).Bow(72, 13, 87, 24).Line(84, 45).Bow(72, 52, 60, 45).Line(57, 24),
            new Outline(58.5, 35, Place).Bow(72, 26, 85.5, 35).Line(84, 45).Bow(72, 52, 60, 45).Line(58.5, 35));
        pen.Seams(at => new Outline(60 + ((at - 29) / 12), at, Place).Bow(72, at - 8.5, 84 - ((at - 29) / 12), at), 29, 35, 41);

        Func<double, double, (double, double)> Turned(double degrees, double aboutX, double aboutY)
        {
            var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
            return (across, down) => Place(
                aboutX + ((across - aboutX) * cos) - ((down - aboutY) * sin),
                aboutY + ((across - aboutX) * sin) + ((down - aboutY) * cos));
        }
    }

    // The cloths of the screen's day paper; red, purple and grey are ours.
    private static Colour Of(BeltColour colour) => colour switch
    {
        BeltColour.White => new(0xfb, 0xfa, 0xf4),
        BeltColour.Yellow => new(0xf0, 0xc4, 0x31),
        BeltColour.Orange => new(0xe2, 0x80, 0x1f),
        BeltColour.Green => new(0x3d, 0x8a, 0x4c),
        BeltColour.Blue => new(0x2c, 0x5a, 0xa6),
        BeltColour.Brown => new(0x6d, 0x45, 0x27),
        BeltColour.Black => new(0x22, 0x20, 0x1d),
        BeltColour.Red => new(0xb8, 0x26, 0x2c),
        BeltColour.Purple => new(0x6b, 0x4a, 0x8c),
        BeltColour.Grey => new(0x9a, 0x98, 0x92),
        _ => throw new ArgumentOutOfRangeException(nameof(colour), colour, "There is no such cloth."),
    };

    private static bool IsLight(BeltColour colour) => colour is BeltColour.White or BeltColour.Yellow;

    private sealed class Pen(Page page, BeltPicture belt, double scale)
    {
        private readonly double _edge = Math.Max(0.45, scale);
        private readonly Colour _seam = IsLight(belt.Cloth) ? new(0xbd, 0xba, 0xb0) : Mixed(Of(belt.Cloth));

        public void Cloth(Outline whole, Outline lowerHalf)
        {
            page.Add(new ShapeInk(whole, Of(belt.Cloth), 0));
            if (belt.Second is { } second)
                page.Add(new ShapeInk(lowerHalf, Of(second), 0));
            page.Add(new ShapeInk(whole, null, _edge, Edge));
        }

        public void Seams(Func<double, Outline> seam, params double[] at)
        {
            foreach (var place in at)
                page.Add(new ShapeInk(seam(place), null, 0.35, _seam));
        }

        // A hanging end of 17 by 48 units, with its tips from the end up.
        public void Tail(Func<double, double, (double, double)> place, double left, int tips)
        {
            Outline Box(double from, double top, double width, double height) => new Outline(left + from, top, place)
                .Line(left + from + width, top).Line(left + from + width, top + height).Line(left + from, top + height).Line(left + from, top);
            Cloth(Box(0, 36, 17, 48), Box(8.5, 36, 8.5, 48));
            // On darker cloth a tip has white piping, or it would sink in.
            for (var tip = 0; tip < tips; tip++)
            {
                var top = 70 - (tip * 13);
                if (!IsLight(belt.Cloth))
                    page.Add(new ShapeInk(Box(0.5, top - 1.5, 16, 12), White, 0));
                page.Add(new ShapeInk(Box(0.5, top, 16, 9), Of(belt.Tip), 0));
            }

            Seams(at => new Outline(left + at, 37, place).Line(left + at, 83), 4, 8.5, 13);
        }

        private static Colour Mixed(Colour cloth) => new(Lighter(cloth.Red), Lighter(cloth.Green), Lighter(cloth.Blue));

        private static byte Lighter(byte part) => (byte)(part + ((255 - part) * 38 / 100));
    }
}
