namespace Keikocho.App.Hosting;

/// <summary>Which club this process serves.</summary>
/// <param name="FilePath">Full path of the club's file; it may not exist yet.</param>
/// <param name="DataFolder">Where keys and copies are kept, see <see cref="Commands.DataFolder"/>.</param>
/// <param name="IsDemo">Whether it is the invented club, which may be made again at any time.</param>
public sealed record ServedClub(string FilePath, string DataFolder, bool IsDemo);
