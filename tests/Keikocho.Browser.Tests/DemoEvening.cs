using Keikocho.App.Tests.Shell;
using Keikocho.Testing;
using Microsoft.Extensions.DependencyInjection;

namespace Keikocho.Browser.Tests;

/// <summary>The demo club on a Tuesday evening at twenty past five, ten minutes before the bow.</summary>
internal static class DemoEvening
{
    public static readonly DateOnly Day = new(2026, 11, 24);

    public static FixedTime TenMinutesBefore() => FixedTime.At("2026-11-24T17:20");

    public static Task<RunningApp> StartAsync(FixedTime time) =>
        RunningApp.StartAsync(services => services.AddSingleton<TimeProvider>(time));
}
