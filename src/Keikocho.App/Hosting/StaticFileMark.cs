namespace Keikocho.App.Hosting;

/// <summary>Marks the endpoints that send style, script and fonts: the only answers a browser may keep.</summary>
public sealed record StaticFileMark;
