namespace Keikocho.App.Import;

/// <summary>Addresses of reading in the club's own files.</summary>
public static class ImportAddress
{
    /// <summary>The page, and where a file is sent.</summary>
    public const string Page = "/club/import";

    /// <summary>One reading.</summary>
    public static string Of(Guid reading) => $"{Page}/{reading:D}";

    /// <summary>Where the answers of one reading are sent.</summary>
    public static string Answers(Guid reading) => $"{Page}/{reading:D}/answers";

    /// <summary>Where the undo of one reading is asked for.</summary>
    public static string Undo(Guid reading) => $"{Page}/{reading:D}/undo";
}
