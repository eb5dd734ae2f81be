using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PdfSharp.UniversalAccessibility;

namespace Keikocho.Paper.Layout;

/// <summary>Draws a finished draft as a tagged PDF with embedded fonts.</summary>
internal static class PdfWriter
{
    // The PDF library keeps its fonts in tables of the whole process. A paper takes a few milliseconds: one at a time is enough.
    private static readonly Lock Gate = new();

    /// <summary>The paper.</summary>
    public static PaperResult Write(Draft draft) => Write([draft], draft.Title);

    /// <summary>Papers one after the other in one file, each with its own count of pages. The fonts are embedded once.</summary>
    /// <param name="drafts">At least one; the first names club, language and day.</param>
    /// <param name="title">For the file's title line.</param>
    public static PaperResult Write(IReadOnlyList<Draft> drafts, string title)
    {
        foreach (var draft in drafts)
            Bounds.Check(draft);
        lock (Gate)
        {
            EmbeddedFontResolver.Use();
            using var document = new PdfDocument();
            document.Info.Title = title;
            document.Info.Author = drafts[0].Author;
            document.Info.Creator = "Keikocho";
            document.Info.CreationDate = drafts[0].Made.ToDateTime(TimeOnly.MinValue, DateTimeKind.Utc);
            // The fonts are most of a file. Packed well they take half of the time of a paper; packed fast a paper is a third larger.
            document.Options.FlateEncodeMode = PdfFlateEncodeMode.BestSpeed;
            var access = UAManager.ForDocument(document);
            access.SetDocumentLanguage(drafts[0].Language);
            var pen = new PdfPen(access.StructureBuilder);
            foreach (var draft in drafts)
            {
                foreach (var page in draft.Pages)
                    pen.Draw(document, draft.Format, page);
            }

            using var stream = new MemoryStream();
            document.Save(stream, false);
            return new PaperResult(stream.ToArray(), [.. drafts.SelectMany(draft => draft.Missing).Distinct().Order().Select(char.ConvertFromUtf32)]);
        }
    }

    private sealed class PdfPen(StructureBuilder structure)
    {
        private readonly Dictionary<(FontFace Face, double Size), XFont> _fonts = [];
        private readonly Stack<PaperTag> _open = [];
        private bool _decorating;

        public void Draw(PdfDocument document, SheetFormat format, Page page)
        {
            var sheet = document.AddPage();
            sheet.Width = XUnit.FromPoint(format.Width);
            sheet.Height = XUnit.FromPoint(format.Height);
            using var graphics = XGraphics.FromPdfPage(sheet);
            foreach (var ink in page.Ink)
                Draw(graphics, ink);
            EndDecoration();
        }

        private void Draw(XGraphics graphics, Ink ink)
        {
            switch (ink)
            {
                case OpenTag open:
                    EndDecoration();
                    Open(open.Tag);
                    break;
                case CloseTag:
                    EndDecoration();
                    structure.End();
                    _open.Pop();
                    break;
                case TextInk { Upward: false, Decoration: false } text when HoldsText():
                    EndDecoration();
                    Text(graphics, text);
                    break;
                default:
                    // What is drawn on end is one artifact: each costs two operators and an object.
                    if (!_decorating)
                        structure.BeginArtifact();
                    _decorating = true;
                    Decoration(graphics, ink);
                    break;
            }
        }

        private void EndDecoration()
        {
            if (_decorating)
                structure.End();
            _decorating = false;
        }

        private bool HoldsText() => _open.TryPeek(out var tag) && tag is not (PaperTag.Table or PaperTag.Row);

        private void Open(PaperTag tag)
        {
            _open.Push(tag);
            switch (tag)
            {
                case PaperTag.Title:
                    structure.BeginElement(PdfBlockLevelElementTag.Heading1);
                    break;
                case PaperTag.Heading:
                    structure.BeginElement(PdfBlockLevelElementTag.Heading2);
                    break;
                case PaperTag.Paragraph:
                    structure.BeginElement(PdfBlockLevelElementTag.Paragraph);
                    break;
                case PaperTag.Table:
                    structure.BeginElement(PdfBlockLevelElementTag.Table);
                    break;
                case PaperTag.Row:
                    structure.BeginElement(PdfBlockLevelElementTag.TableRow);
                    break;
                case PaperTag.HeadCell:
                    structure.BeginElement(PdfBlockLevelElementTag.TableHeaderCell);
                    break;
                case PaperTag.Cell:
                    structure.BeginElement(PdfBlockLevelElementTag.TableDataCell);
                    break;
                default:
                    throw new ArgumentOutOfRangeException(nameof(tag), tag, "No such element.");
            }
        }

        private void Decoration(XGraphics graphics, Ink ink)
        {
            switch (ink)
            {
                case TextInk { Upward: true } text:
                    var state = graphics.Save();
                    graphics.RotateAtTransform(-90, new XPoint(text.X, text.Baseline));
                    Text(graphics, text);
                    graphics.Restore(state);
                    break;
                case TextInk text:
                    Text(graphics, text);
                    break;
                case LineInk line:
                    graphics.DrawLine(Stroke(line.Weight, line.Dash), line.X1, line.Y1, line.X2, line.Y2);
                    break;
                case ShapeInk shape:
                    Shape(graphics, shape);
                    break;
                case HatchInk hatch:
                    foreach (var (x1, y1, x2, y2) in Hatch.Lines(hatch.Area, hatch.Pitch))
                        graphics.DrawLine(Stroke(hatch.Weight, 0), x1, y1, x2, y2);
                    break;
                case BoxInk { Weight: 0 } box:
                    graphics.DrawRectangle(box.White ? XBrushes.White : XBrushes.Black, box.Area.X, box.Area.Y, box.Area.Width, box.Area.Height);
                    break;
                case BoxInk box:
                    graphics.DrawRectangle(Stroke(box.Weight, box.Dash), box.Area.X, box.Area.Y, box.Area.Width, box.Area.Height);
                    break;
                case CircleInk { Weight: 0 } circle:
                    graphics.DrawEllipse(XBrushes.Black, circle.X - circle.Radius, circle.Y - circle.Radius, 2 * circle.Radius, 2 * circle.Radius);
                    break;
                case CircleInk circle:
                    graphics.DrawEllipse(Stroke(circle.Weight, circle.Dash), circle.X - circle.Radius, circle.Y - circle.Radius, 2 * circle.Radius, 2 * circle.Radius);
                    break;
                default:
                    throw new ArgumentOutOfRangeException(nameof(ink), ink, "No such ink.");
            }
        }

        private void Text(XGraphics graphics, TextInk text) =>
            graphics.DrawString(text.Run.Text, Font(text.Run.Face, text.Size), text.White ? XBrushes.White : XBrushes.Black, text.X, text.Baseline);

        private static void Shape(XGraphics graphics, ShapeInk shape)
        {
            var path = new XGraphicsPath();
            foreach (var curve in shape.Outline.Curves)
                path.AddBezier(curve.X1, curve.Y1, curve.X2, curve.Y2, curve.X3, curve.Y3, curve.X4, curve.Y4);
            if (shape.Fill is { } fill)
            {
                path.CloseFigure();
                graphics.DrawPath(new XSolidBrush(Of(fill)), path);
            }

            if (shape.Weight > 0)
                graphics.DrawPath(new XPen(Of(shape.Stroke), shape.Weight), path);
        }

        private static XColor Of(Colour colour) => XColor.FromArgb(colour.Red, colour.Green, colour.Blue);

        private XFont Font(FontFace face, double size)
        {
            if (!_fonts.TryGetValue((face, size), out var font))
            {
                var options = new XPdfFontOptions(PdfFontEncoding.Unicode);
                font = new XFont(face.Family, size, face.Bold ? XFontStyleEx.Bold : XFontStyleEx.Regular, options);
                _fonts.Add((face, size), font);
            }

            return font;
        }

        private static XPen Stroke(double weight, double dash)
        {
            var pen = new XPen(XColors.Black, weight);
            if (dash > 0)
            {
                // PDFsharp counts dashes in pen widths.
                pen.DashPattern = [dash / weight, dash / weight];
            }

            return pen;
        }
    }
}
