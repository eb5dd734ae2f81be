using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using Keikocho.Testing;

namespace Keikocho.Architecture.Tests.Statements;

/// <summary>Finds [Statement(n)] in a built test assembly by reading its metadata: nothing of it is loaded or run.</summary>
internal static class StatementReader
{
    /// <summary>All methods of the assembly that carry a statement's number, in the order of number, class and name.</summary>
    public static IReadOnlyList<CoveringTest> Read(string assemblyPath)
    {
        using var stream = File.OpenRead(assemblyPath);
        using var file = new PEReader(stream);
        var metadata = file.GetMetadataReader();
        var project = metadata.GetString(metadata.GetAssemblyDefinition().Name).Replace("Keikocho.", "", StringComparison.Ordinal).Replace(".Tests", "", StringComparison.Ordinal);

        var found = new List<CoveringTest>();
        foreach (var method in metadata.MethodDefinitions.Select(metadata.GetMethodDefinition))
        {
            var attributes = method.GetCustomAttributes().Select(metadata.GetCustomAttribute).ToList();
            var numbers = attributes.Where(a => NameOf(metadata, a) == nameof(StatementAttribute)).Select(a => FirstInt(metadata, a)).ToList();
            if (numbers.Count > 0)
            {
                var type = TypeName(metadata, method.GetDeclaringType());
                var isTest = attributes.Any(a => IsFact(NameOf(metadata, a)) && !HasSkip(metadata, a));
                found.AddRange(numbers.Select(n => new CoveringTest(n, project, type, metadata.GetString(method.Name), isTest)));
            }
        }

        return [.. found.OrderBy(t => t.Statement).ThenBy(t => t.TypeName, StringComparer.Ordinal).ThenBy(t => t.Method, StringComparer.Ordinal)];
    }

    private static string TypeName(MetadataReader metadata, TypeDefinitionHandle handle)
    {
        var type = metadata.GetTypeDefinition(handle);
        var name = metadata.GetString(type.Name).Split('`')[0];
        return type.IsNested ? $"{TypeName(metadata, type.GetDeclaringType())}.{name}" : name;
    }

    private static bool IsFact(string attribute) =>
        attribute.EndsWith("FactAttribute", StringComparison.Ordinal) || attribute.EndsWith("TheoryAttribute", StringComparison.Ordinal);

    private static string NameOf(MetadataReader metadata, CustomAttribute attribute)
    {
        var type = attribute.Constructor.Kind == HandleKind.MemberReference
            ? metadata.GetMemberReference((MemberReferenceHandle)attribute.Constructor).Parent
            : metadata.GetMethodDefinition((MethodDefinitionHandle)attribute.Constructor).GetDeclaringType();
        return type.Kind switch
        {
            HandleKind.TypeReference => metadata.GetString(metadata.GetTypeReference((TypeReferenceHandle)type).Name),
            HandleKind.TypeDefinition => metadata.GetString(metadata.GetTypeDefinition((TypeDefinitionHandle)type).Name),
            _ => string.Empty,
        };
    }

    // ECMA-335 II.23.3: the value begins with the prolog 0x0001, then the constructor's arguments as they are.
    private static int FirstInt(MetadataReader metadata, CustomAttribute attribute)
    {
        var value = metadata.GetBlobReader(attribute.Value);
        return value.ReadUInt16() == 1 ? value.ReadInt32() : throw new BadImageFormatException("An attribute's value does not begin with its prolog.");
    }

    // A named argument is stored with its name as UTF-8 with its length before it; "Skip" with 4 before it is that and nothing else.
    private static bool HasSkip(MetadataReader metadata, CustomAttribute attribute) =>
        metadata.GetBlobBytes(attribute.Value).AsSpan().IndexOf("\u0004Skip"u8) >= 0;
}
