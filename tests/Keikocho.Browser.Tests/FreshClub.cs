using Keikocho.App.Tests.Shell;
using Keikocho.Testing;
using Microsoft.Extensions.DependencyInjection;

namespace Keikocho.Browser.Tests;

/// <summary>A club's own file that does not exist yet.</summary>
internal static class FreshClub
{
    public static Task<RunningApp> StartAsync(FixedTime time) =>
        RunningApp.StartAsync(services => services.AddSingleton<TimeProvider>(time), isDemo: false);
}
