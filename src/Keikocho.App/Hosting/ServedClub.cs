using Keikocho.Store.Engines;

namespace Keikocho.App.Hosting;

/// <summary>Which club this process serves.</summary>
/// <param name="Engine">The club's file, which may not exist yet, or its database.</param>
/// <param name="DataFolder">Where keys and copies are kept, see <see cref="Commands.DataFolder"/>.</param>
/// <param name="IsDemo">Whether it is the invented club, which may be made again at any time.</param>
public sealed record ServedClub(Engine Engine, string DataFolder, bool IsDemo)
{
    /// <summary>A club in a file.</summary>
    /// <param name="FilePath">Path of the club's file; it may not exist yet.</param>
    /// <param name="DataFolder">Where keys and copies are kept.</param>
    /// <param name="IsDemo">Whether it is the invented club.</param>
    public ServedClub(string FilePath, string DataFolder, bool IsDemo)
        : this(new SqliteEngine(FilePath), DataFolder, IsDemo)
    {
    }

    /// <summary>Where the club lies, in words and without a password.</summary>
    public string Place => Engine.Place;
}
