using System.Globalization;
using System.Text;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.Tokens;

namespace Keikocho.Paper.Tests;

/// <summary>Reads a paper back with a PDF reader that is not the library that wrote it.</summary>
internal static class PdfReading
{
    /// <summary>Number of pages.</summary>
    public static int PageCount(byte[] pdf)
    {
        using var document = PdfDocument.Open(pdf);
        return document.NumberOfPages;
    }

    /// <summary>Every page's text in drawing order, without regard to places.</summary>
    public static string Text(byte[] pdf)
    {
        using var document = PdfDocument.Open(pdf);
        return string.Join("\n", document.GetPages().Select(page => string.Concat(page.Letters.Select(letter => letter.Value))));
    }

    /// <summary>Every page's text in drawing order, a page a line, with a space where a new line or column begins, but not after a hyphen.</summary>
    public static string Flowing(byte[] pdf)
    {
        using var document = PdfDocument.Open(pdf);
        return string.Join("\n", document.GetPages().Select(page =>
        {
            var text = new StringBuilder();
            Letter? before = null;
            foreach (var letter in page.Letters)
            {
                var jump = before is not null && (Math.Abs(letter.StartBaseLine.Y - before.StartBaseLine.Y) > 1 || letter.StartBaseLine.X - before.EndBaseLine.X > 4);
                if (jump && text[^1] is not (' ' or '-'))
                    text.Append(' ');
                text.Append(letter.Value == "\u00A0" ? " " : letter.Value);
                before = letter;
            }

            return text.ToString();
        }));
    }

    /// <summary>Lines from top to bottom with their places in steps of 2 points: coarse, so that only a visible move changes them.</summary>
    public static string Places(byte[] pdf)
    {
        using var document = PdfDocument.Open(pdf);
        var text = new StringBuilder();
        foreach (var page in document.GetPages())
        {
            text.Append(CultureInfo.InvariantCulture, $"page {page.Number}: {page.Width:0} x {page.Height:0}\n");
            foreach (var line in page.Letters.GroupBy(letter => Step(page.Height - letter.StartBaseLine.Y)).OrderBy(line => line.Key))
                text.Append(CultureInfo.InvariantCulture, $"{line.Key,5}  {string.Join("  ", Pieces(line))}\n");
        }

        return text.ToString();
    }

    /// <summary>All objects of the file that are dictionaries.</summary>
    public static List<DictionaryToken> Dictionaries(PdfDocument document) =>
        [.. document.Structure.CrossReferenceTable.ObjectOffsets.Keys.Select(key => document.Structure.GetObject(key).Data).OfType<DictionaryToken>()];

    private static IEnumerable<string> Pieces(IEnumerable<Letter> line)
    {
        var piece = new StringBuilder();
        Letter? before = null;
        foreach (var letter in line.OrderBy(letter => letter.StartBaseLine.X))
        {
            if (before is null || letter.StartBaseLine.X - before.EndBaseLine.X > 4)
            {
                if (before is not null)
                    yield return piece.ToString();
                piece.Clear().Append(CultureInfo.InvariantCulture, $"[{Step(letter.StartBaseLine.X)}]");
            }

            piece.Append(letter.Value);
            before = letter;
        }

        yield return piece.ToString();
    }

    private static int Step(double points) => 2 * (int)Math.Round(points / 2, MidpointRounding.AwayFromZero);
}
