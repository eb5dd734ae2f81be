using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace Keikocho.Store.Engines;

/// <summary>A club in a PostgreSQL database of many.</summary>
public sealed class PostgresKeikochoDb(DbContextOptions<PostgresKeikochoDb> options, int club) : KeikochoDb(options, club);

/// <summary>For the tool that writes migrations; it opens no connection.</summary>
internal sealed class PostgresDesign : IDesignTimeDbContextFactory<PostgresKeikochoDb>
{
    public PostgresKeikochoDb CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<PostgresKeikochoDb>().UseNpgsql("Host=localhost").Options, 1);
}
