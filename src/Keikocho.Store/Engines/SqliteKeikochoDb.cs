using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace Keikocho.Store.Engines;

/// <summary>A club in a SQLite file.</summary>
public sealed class SqliteKeikochoDb(DbContextOptions<SqliteKeikochoDb> options, int club) : KeikochoDb(options, club)
{
    /// <inheritdoc/>
    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder)
    {
        base.ConfigureConventions(configurationBuilder);
        Conversions.UseOnSqlite(configurationBuilder);
    }
}

/// <summary>For the tool that writes migrations; it opens no file.</summary>
internal sealed class SqliteDesign : IDesignTimeDbContextFactory<SqliteKeikochoDb>
{
    public SqliteKeikochoDb CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<SqliteKeikochoDb>().UseSqlite("Data Source=:memory:").Options, 1);
}
