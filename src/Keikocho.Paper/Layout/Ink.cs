namespace Keikocho.Paper.Layout;

/// <summary>One thing on a page, in drawing order.</summary>
internal abstract record Ink
{
    /// <summary>The same at another place; tags have none.</summary>
    public virtual Ink Moved(double across, double down) => this;
}

/// <summary>Text of one font. With <paramref name="Upward"/> it runs up the page from its start. Decoration is not read out: it repeats words beside it.</summary>
internal sealed record TextInk(double X, double Baseline, double Size, FontRun Run, bool White = false, bool Upward = false, bool Decoration = false) : Ink
{
    /// <inheritdoc/>
    public override Ink Moved(double across, double down) => this with { X = X + across, Baseline = Baseline + down };
}

/// <summary>A rule. Dashes are the lengths of stroke and gap in points, or none.</summary>
internal sealed record LineInk(double X1, double Y1, double X2, double Y2, double Weight, double Dash = 0) : Ink
{
    /// <inheritdoc/>
    public override Ink Moved(double across, double down) => this with { X1 = X1 + across, Y1 = Y1 + down, X2 = X2 + across, Y2 = Y2 + down };
}

/// <summary>A rectangle: outlined, or filled with black or white when the weight is 0.</summary>
internal sealed record BoxInk(Area Area, double Weight, double Dash = 0, bool White = false) : Ink
{
    /// <inheritdoc/>
    public override Ink Moved(double across, double down) => this with { Area = Area.Moved(across, down) };
}

/// <summary>A circle: outlined, or filled with black when the weight is 0.</summary>
internal sealed record CircleInk(double X, double Y, double Radius, double Weight, double Dash = 0) : Ink
{
    /// <inheritdoc/>
    public override Ink Moved(double across, double down) => this with { X = X + across, Y = Y + down };
}

/// <summary>From here to its <see cref="CloseTag"/> the text is one element for a reader who does not see the page.</summary>
internal sealed record OpenTag(PaperTag Tag) : Ink;

/// <summary>Ends the innermost open element.</summary>
internal sealed record CloseTag : Ink;

/// <summary>The elements that papers use.</summary>
internal enum PaperTag
{
    /// <summary>The paper's title.</summary>
    Title,

    /// <summary>A heading below the title.</summary>
    Heading,

    /// <summary>A paragraph.</summary>
    Paragraph,

    /// <summary>A table; holds rows.</summary>
    Table,

    /// <summary>A row; holds cells.</summary>
    Row,

    /// <summary>A cell that heads a column or a row.</summary>
    HeadCell,

    /// <summary>A cell.</summary>
    Cell,
}

/// <summary>An area filled with slanting lines.</summary>
internal sealed record HatchInk(Area Area, double Pitch, double Weight) : Ink
{
    /// <inheritdoc/>
    public override Ink Moved(double across, double down) => this with { Area = Area.Moved(across, down) };
}
