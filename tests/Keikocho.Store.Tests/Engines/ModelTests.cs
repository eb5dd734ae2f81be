using Keikocho.Store.Engines;
using Keikocho.Store.Kernel;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;

namespace Keikocho.Store.Tests.Engines;

public sealed class ModelTests
{
    public static TheoryData<string> Contexts => ["SQLite", "PostgreSQL"];

    [Theory, MemberData(nameof(Contexts))]
    public void A_change_of_the_model_has_its_migration(string engine)
    {
        using var db = Open(engine);
        Assert.False(db.Database.HasPendingModelChanges(), "The model has changed. Run eng/add-migration.sh NAME.");
    }

    [Theory, MemberData(nameof(Contexts))]
    public void The_club_leads_every_key_link_and_index(string engine)
    {
        using var db = Open(engine);
        Assert.Empty(NotLedByTheClub(db.Model));
        Assert.True(db.Model.GetEntityTypes().Count() > 40);
    }

    [Fact]
    public void A_key_or_index_without_the_club_in_front_is_found()
    {
        using var db = new Offender(new DbContextOptionsBuilder<Offender>().UseSqlite("Data Source=:memory:").Options);
        Assert.Equal(["Late: key Id, Club", "Late: index Name"], NotLedByTheClub(db.Model));
    }

    private static List<string> NotLedByTheClub(IModel model)
    {
        var offenders = new List<string>();
        foreach (var type in model.GetEntityTypes())
        {
            foreach (var key in type.GetKeys().Where(k => k.Properties[0].Name != nameof(IClubRow.Club)))
                offenders.Add($"{type.ShortName()}: key {Names(key.Properties)}");
            foreach (var link in type.GetForeignKeys().Where(k => k.Properties[0].Name != nameof(IClubRow.Club)))
                offenders.Add($"{type.ShortName()}: link {Names(link.Properties)}");
            foreach (var index in type.GetIndexes().Where(k => k.Properties[0].Name != nameof(IClubRow.Club)))
                offenders.Add($"{type.ShortName()}: index {Names(index.Properties)}");
        }

        return offenders;
    }

    private static string Names(IReadOnlyList<IReadOnlyProperty> properties) => string.Join(", ", properties.Select(p => p.Name));

    private static KeikochoDb Open(string engine) =>
        engine == "SQLite" ? new SqliteEngine("no-file-is-opened").OpenDb() : new PostgresEngine("Host=localhost").OpenDb();

    private sealed class Late
    {
        public int Club { get; set; }
        public Guid Id { get; set; }
        public string Name { get; set; } = "";
    }

    private sealed class Offender(DbContextOptions<Offender> options) : DbContext(options)
    {
        protected override void OnModelCreating(ModelBuilder modelBuilder)
        {
            modelBuilder.Entity<Late>().HasKey(r => new { r.Id, r.Club });
            modelBuilder.Entity<Late>().HasIndex(r => r.Name);
        }
    }
}
