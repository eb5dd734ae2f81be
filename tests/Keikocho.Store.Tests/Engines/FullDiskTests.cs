using Keikocho.Store.Engines;
using Microsoft.Data.Sqlite;

namespace Keikocho.Store.Tests.Engines;

public sealed class FullDiskTests
{
    [Fact]
    public void A_full_disk_is_known_however_deep_it_lies_and_nothing_else_is_taken_for_one()
    {
        // 13 is SQLITE_FULL, 8 is SQLITE_READONLY (sqlite.org, result codes).
        Assert.True(FullDisk.Is(new SqliteException("database or disk is full", 13)));
        Assert.True(FullDisk.Is(new InvalidOperationException("outer", new SqliteException("database or disk is full", 13))));
        Assert.False(FullDisk.Is(new SqliteException("attempt to write a readonly database", 8)));
        Assert.False(FullDisk.Is(new IOException("something else")));
        Assert.False(FullDisk.Is(null));
    }
}
