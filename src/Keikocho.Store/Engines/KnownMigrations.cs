using System.Reflection;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

namespace Keikocho.Store.Engines;

/// <summary>The migrations of this version, named without the migration tool, which costs half a second.</summary>
internal static class KnownMigrations
{
    /// <summary>Names of those of one engine.</summary>
    /// <param name="context">The engine's context.</param>
    public static IEnumerable<string> Of(Type context) => context.Assembly.GetTypes()
        .Where(t => t.GetCustomAttribute<DbContextAttribute>()?.ContextType == context)
        .Select(t => t.GetCustomAttribute<MigrationAttribute>()?.Id)
        .OfType<string>();
}
