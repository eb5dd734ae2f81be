using System.Text;

namespace Keikocho.Paper.Layout;

/// <summary>Files inside the program; papers read no others.</summary>
internal static class EmbeddedFile
{
    /// <summary>The bytes of the file of this name.</summary>
    public static byte[] Bytes(string name)
    {
        using var stream = Open(name);
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }

    /// <summary>The file of this name, to read a part of it.</summary>
    public static Stream Open(string name) => typeof(EmbeddedFile).Assembly.GetManifestResourceStream(name)
        ?? throw new ArgumentException($"No file '{name}' is embedded in the papers.", nameof(name));

    /// <summary>The text of the file of this name.</summary>
    public static string Text(string name) => Encoding.UTF8.GetString(Bytes(name)).ReplaceLineEndings("\n");
}
