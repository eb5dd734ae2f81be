namespace Keikocho.App.Syllabus;

/// <summary>Addresses of the syllabus. A club with several programmes has a ladder for each: the address names the programme.</summary>
public static class SyllabusAddress
{
    /// <summary>The ladder that holds, its units and editions.</summary>
    public const string Page = "/syllabus";

    /// <summary>The draft of the next edition.</summary>
    public const string Draft = "/syllabus/draft";

    /// <summary>One rank of the draft, as a route.</summary>
    public const string RankRoute = "/syllabus/draft/rank/{key}";

    /// <summary>One item of the draft, as a route.</summary>
    public const string ItemRoute = "/syllabus/draft/item/{key}";

    /// <summary>The whole draft as a text.</summary>
    public const string Text = "/syllabus/draft/text";

    /// <summary>Begins a draft.</summary>
    public const string Begin = "/syllabus/draft/begin";

    /// <summary>Takes the last step back.</summary>
    public const string Undo = "/syllabus/draft/undo";

    /// <summary>Throws the draft away.</summary>
    public const string ThrowAway = "/syllabus/draft/throw-away";

    /// <summary>Publishes the draft.</summary>
    public const string Publish = "/syllabus/draft/publish";

    /// <summary>The names of ladder and edition.</summary>
    public const string Names = "/syllabus/draft/names";

    /// <summary>Moves or drops a rank.</summary>
    public const string Ranks = "/syllabus/draft/ranks";

    /// <summary>A new rank.</summary>
    public const string AddRank = "/syllabus/draft/ranks/add";

    /// <summary>What a rank is called, and its least time and age.</summary>
    public const string ChangeRank = "/syllabus/draft/ranks/change";

    /// <summary>Moves, drops, joins or parts lines of a rank.</summary>
    public const string Lines = "/syllabus/draft/lines";

    /// <summary>A new line of a rank.</summary>
    public const string AddLine = "/syllabus/draft/lines/add";

    /// <summary>What a line says.</summary>
    public const string ChangeLine = "/syllabus/draft/lines/change";

    /// <summary>What an item is.</summary>
    public const string ChangeItem = "/syllabus/draft/items/change";

    /// <summary>Moves or drops a unit.</summary>
    public const string Units = "/syllabus/draft/units";

    /// <summary>A new unit.</summary>
    public const string AddUnit = "/syllabus/draft/units/add";

    /// <summary>What is taught in a unit or in the first course.</summary>
    public const string Taught = "/syllabus/draft/taught";

    /// <summary>A term's unit.</summary>
    public const string SetUnit = "/syllabus/units";

    /// <summary>A new age rule.</summary>
    public const string AddAgeRule = "/syllabus/age-rules/add";

    /// <summary>Takes an age rule out.</summary>
    public const string EndAgeRule = "/syllabus/age-rules/end";

    /// <summary>An edition as a text, as a route.</summary>
    public const string DownloadRoute = "/syllabus/editions/{id:guid}/text";

    /// <summary>An address with its programme.</summary>
    public static string Of(string address, Guid programme, string? part = null) => $"{address}?programme={programme:D}{(part is null ? "" : "#" + part)}";

    /// <summary>One rank of the draft.</summary>
    public static string Rank(Guid programme, string key, string? line = null) =>
        $"/syllabus/draft/rank/{Uri.EscapeDataString(key)}?programme={programme:D}{(line is null ? "" : $"&line={Uri.EscapeDataString(line)}#line-part")}";

    /// <summary>One item of the draft.</summary>
    public static string Item(Guid programme, string key) => $"/syllabus/draft/item/{Uri.EscapeDataString(key)}?programme={programme:D}";

    /// <summary>An edition as a text.</summary>
    public static string Download(Guid edition) => $"/syllabus/editions/{edition:D}/text";
}
