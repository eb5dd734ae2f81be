using System.Runtime.InteropServices;

namespace Keikocho.Store.Keeping.Checking;

/// <summary>The columns of the row that a SQLite statement stands on; what a pointer shows is gone with the next row.</summary>
internal static class SqliteColumns
{
    // The same library that the base library loads: it lies beside the program.
    private const string Library = "e_sqlite3";

    [DllImport(Library, EntryPoint = "sqlite3_column_blob")]
    public static extern nint Blob(nint statement, int column);

    [DllImport(Library, EntryPoint = "sqlite3_column_text")]
    public static extern nint Text(nint statement, int column);

    /// <summary>How many bytes a blob or a text has, asked after it.</summary>
    [DllImport(Library, EntryPoint = "sqlite3_column_bytes")]
    public static extern int Length(nint statement, int column);

    [DllImport(Library, EntryPoint = "sqlite3_column_int")]
    public static extern int Whole(nint statement, int column);

    [DllImport(Library, EntryPoint = "sqlite3_column_int64")]
    public static extern long Long(nint statement, int column);

    /// <summary>What is stored there, by SQLite's numbers.</summary>
    [DllImport(Library, EntryPoint = "sqlite3_column_type")]
    public static extern int Kind(nint statement, int column);
}
