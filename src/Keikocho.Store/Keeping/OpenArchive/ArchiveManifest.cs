using System.Reflection;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Keikocho.Store.Keeping.OpenArchive;

/// <summary>One file of the archive as its manifest lists it.</summary>
/// <param name="File">Name inside the archive, with forward slashes.</param>
/// <param name="Sha256">SHA-256 in lower-case hexadecimal.</param>
public sealed record ArchivedFile(string File, string Sha256);

/// <summary>One table of the archive as its manifest lists it.</summary>
/// <param name="Name">Name of the table.</param>
/// <param name="File">Name of its file inside the archive.</param>
/// <param name="Rows">Number of rows, without the header row.</param>
/// <param name="Sha256">SHA-256 of the file in lower-case hexadecimal.</param>
public sealed record ArchivedTable(string Name, string File, long Rows, string Sha256);

/// <summary>The archive's first page: what it is, and what must be in it.</summary>
/// <param name="Format">Always <see cref="FormatName"/>.</param>
/// <param name="Version">Version of the format; this product writes and reads <see cref="CurrentVersion"/>.</param>
/// <param name="Product">Which product and version wrote it.</param>
/// <param name="MadeAt">When, UTC.</param>
/// <param name="Note">Says that the values are not sealed, and which of them are all the same.</param>
/// <param name="Tables">Every table, in the order of its name.</param>
/// <param name="Codes">The list of what coded numbers mean.</param>
/// <param name="Files">Attachments and the like, in the order of their hashes.</param>
public sealed record ArchiveManifest(
    string Format,
    int Version,
    string Product,
    DateTimeOffset MadeAt,
    string Note,
    IReadOnlyList<ArchivedTable> Tables,
    ArchivedFile Codes,
    IReadOnlyList<ArchivedFile> Files)
{
    /// <summary>Name of the manifest's own file.</summary>
    public const string FileName = "manifest.json";

    /// <summary>The format's name.</summary>
    public const string FormatName = "keikocho-club-archive";

    /// <summary>The format's version.</summary>
    public const int CurrentVersion = 1;

    internal const string PlainNote =
        "Names, birth dates, telephone numbers and all other personal values are written open in these files. Keep them where only the club can read them.";

    internal const string SealedNote =
        " Sizes and care notes are closed by the club's lock and are carried so, as \"sealed:\" with hexadecimal bytes: they open only with the club's passphrase or recovery key.";

    private static readonly JsonSerializerOptions Form = new(JsonSerializerDefaults.Web)
    {
        WriteIndented = true,
        NewLine = "\n",
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
    };

    internal static string ProductName { get; } =
        $"Keikocho {typeof(ArchiveManifest).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion.Split('+')[0]}";

    internal byte[] ToBytes() => [.. JsonSerializer.SerializeToUtf8Bytes(this, Form), (byte)'\n'];

    /// <exception cref="JsonException">The bytes are not a manifest.</exception>
    internal static ArchiveManifest FromBytes(byte[] bytes) =>
        JsonSerializer.Deserialize<ArchiveManifest>(bytes, Form) ?? throw new JsonException("The manifest is empty.");
}
