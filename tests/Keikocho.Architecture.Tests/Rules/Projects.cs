using System.Reflection;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using System.Xml.Linq;

namespace Keikocho.Architecture.Tests.Rules;

/// <summary>Who may know whom. Each rule gives all offenders, one sentence each.</summary>
internal static class Projects
{
    /// <summary>The arrows: App -> Paper, Store, Planning -> Core.</summary>
    public static readonly IReadOnlyDictionary<string, IReadOnlyList<string>> Arrows = new Dictionary<string, IReadOnlyList<string>>
    {
        ["Keikocho.Core"] = [],
        ["Keikocho.Planning"] = ["Keikocho.Core"],
        ["Keikocho.Store"] = ["Keikocho.Core"],
        ["Keikocho.Paper"] = ["Keikocho.Core"],
        ["Keikocho.App"] = ["Keikocho.Core", "Keikocho.Planning", "Keikocho.Store", "Keikocho.Paper"],
    };

    // What the sums may use of the base library: nothing of files, networks, databases, processes, hosts.
    private static readonly string[] NotForSums =
    [
        "System.IO", "System.Net", "System.Data", "System.Diagnostics", "System.Security", "System.Xml", "System.Timers", "System.Reflection",
        "Microsoft", "Npgsql", "PdfSharp",
    ];

    // In-memory text, and what the compiler itself writes into every assembly.
    private static readonly string[] ForSumsAllTheSame =
    [
        "System.IO.StringReader", "System.IO.StringWriter", "System.IO.TextReader", "System.IO.TextWriter",
        "System.Diagnostics.DebuggableAttribute", "System.Diagnostics.DebuggerBrowsableAttribute", "System.Diagnostics.DebuggerBrowsableState",
        "System.Diagnostics.DebuggerHiddenAttribute", "System.Diagnostics.DebuggerStepThroughAttribute", "System.Diagnostics.UnreachableException",
        "System.Diagnostics.CodeAnalysis", "System.Reflection.AssemblyCompanyAttribute", "System.Reflection.AssemblyConfigurationAttribute",
        "System.Reflection.AssemblyFileVersionAttribute", "System.Reflection.AssemblyInformationalVersionAttribute",
        "System.Reflection.AssemblyProductAttribute", "System.Reflection.AssemblyTitleAttribute", "System.Reflection.AssemblyMetadataAttribute",
        "System.Reflection.DefaultMemberAttribute", "Microsoft.CodeAnalysis.EmbeddedAttribute",
    ];

    /// <summary>Projects that refer to another against the arrows, and projects that no arrow knows.</summary>
    /// <param name="projectFiles">Each project's name and the text of its file.</param>
    public static IReadOnlyList<string> AgainstTheArrows(IEnumerable<(string Name, string Xml)> projectFiles) =>
    [
        .. from project in projectFiles
           let references = XDocument.Parse(project.Xml).Descendants("ProjectReference")
               .Select(reference => Path.GetFileNameWithoutExtension(((string?)reference.Attribute("Include") ?? "").Replace('\\', '/')))
           from fault in Arrows.TryGetValue(project.Name, out var allowed)
               ? references.Except(allowed).Select(other => $"{project.Name} must not know {other}")
               : [$"{project.Name} has no place in the arrows"]
           select fault,
    ];

    /// <summary>Packages that a project refers to and may not.</summary>
    /// <param name="projectXml">The text of the project's file.</param>
    /// <param name="allowed">The packages it may have.</param>
    public static IReadOnlyList<string> PackagesBeyond(string projectXml, params string[] allowed) =>
        [.. XDocument.Parse(projectXml).Descendants("PackageReference").Select(p => (string?)p.Attribute("Include") ?? "").Except(allowed)];

    /// <summary>Assemblies of ours that a built assembly uses and may not.</summary>
    /// <param name="assembly">The assembly.</param>
    /// <param name="allowed">The assemblies of ours that it may use.</param>
    public static IReadOnlyList<string> OursBeyond(Assembly assembly, IEnumerable<string> allowed) =>
    [
        .. assembly.GetReferencedAssemblies()
            .Select(reference => reference.Name!)
            .Where(name => name.StartsWith("keikocho", StringComparison.OrdinalIgnoreCase))
            .Except(allowed, StringComparer.OrdinalIgnoreCase)
            .Order(StringComparer.Ordinal),
    ];

    /// <summary>Types that a sum has no business with (files, networks, databases, hosts) and that the assembly all the same refers to.</summary>
    public static IReadOnlyList<string> NotForSumsIn(string assemblyPath)
    {
        using var stream = File.OpenRead(assemblyPath);
        using var file = new PEReader(stream);
        var metadata = file.GetMetadataReader();
        return
        [
            .. metadata.TypeReferences
                .Select(metadata.GetTypeReference)
                .Select(type => $"{metadata.GetString(type.Namespace)}.{metadata.GetString(type.Name)}")
                .Where(name => NotForSums.Any(banned => IsWithin(name, banned)) && !ForSumsAllTheSame.Any(fine => IsWithin(name, fine)))
                .Distinct()
                .Order(StringComparer.Ordinal),
        ];
    }

    private static bool IsWithin(string name, string space) => name == space || name.StartsWith(space + ".", StringComparison.Ordinal);
}
