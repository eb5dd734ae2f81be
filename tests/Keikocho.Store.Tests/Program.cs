using Keikocho.Store.Tests;
using Keikocho.Store.Tests.Engines;
using Xunit.MicrosoftTestingPlatform;
using Xunit.Runner.InProc.SystemConsole;

if (args is [TappingChild.Verb, var file]) return await TappingChild.RunAsync(file);
// As xunit generates it.
return args.Any(a => a is "--server" or "--internal-msbuild-node")
    ? await TestPlatformTestFramework.RunAsync(args, SelfRegisteredExtensions.AddSelfRegisteredExtensions)
    : await ConsoleRunner.Run(args);
