namespace Keikocho.Paper.Layout;

/// <summary>A paper while it is laid out.</summary>
/// <param name="format">The sheet.</param>
/// <param name="title">For the file's title line.</param>
/// <param name="author">The club.</param>
/// <param name="made">The file's date.</param>
internal sealed class Draft(SheetFormat format, string title, string author, DateOnly made)
{
    private readonly List<Page> _pages = [];
    private readonly SortedSet<int> _missing = [];

    /// <summary>The sheet.</summary>
    public SheetFormat Format { get; } = format;

    /// <summary>For the file's title line.</summary>
    public string Title { get; } = title;

    /// <summary>The club.</summary>
    public string Author { get; } = author;

    /// <summary>The file's date.</summary>
    public DateOnly Made { get; } = made;

    /// <summary>Language of the texts, by its BCP 47 code.</summary>
    public string Language { get; } = "en";

    /// <summary>The pages so far.</summary>
    public IReadOnlyList<Page> Pages => _pages;

    /// <summary>Characters that no font has, by code point.</summary>
    public SortedSet<int> Missing => _missing;

    /// <summary>A page for measuring on, which is not part of the paper.</summary>
    public Page Scratch() => new(Format.Inside, _missing);

    /// <summary>A new page at the end.</summary>
    public Page NewPage()
    {
        var page = Scratch();
        _pages.Add(page);
        return page;
    }
}
