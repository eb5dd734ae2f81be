using System.CommandLine;
using Keikocho.App.Import;

namespace Keikocho.App.Commands;

/// <summary>Every verb of the command line, in the order in which the help lists them. A new verb is one line here.</summary>
public static class AllVerbs
{
    /// <summary>Makes a fresh set of commands.</summary>
    public static IEnumerable<Command> Build() =>
    [
        ServeVerb.Build(),
        DemoVerb.Build(),
        BackupVerb.Build(),
        RestoreVerb.Build(),
        CheckVerb.Build(),
        ArchiveVerb.Build(),
        .. SumVerb.BuildAll(),
        SyllabusVerb.Build(),
        ImportVerb.Build(),
    ];
}
