namespace Keikocho.App.Hosting;

/// <summary>Says that a request was refused because the page it came from is too old, or is none of ours.</summary>
internal sealed record StalePage;
