namespace Keikocho.Store.Starter;

/// <summary>A value of a TOML file with the line on which it stands. A closed set.</summary>
/// <param name="Line">Line, from 1.</param>
internal abstract record TomlNode(int Line)
{
    /// <summary>A text.</summary>
    public sealed record Text(int Line, string Value) : TomlNode(Line);

    /// <summary>A whole number.</summary>
    public sealed record Number(int Line, long Value) : TomlNode(Line);

    /// <summary>True or false.</summary>
    public sealed record Truth(int Line, bool Value) : TomlNode(Line);

    /// <summary>A day without a time.</summary>
    public sealed record Day(int Line, DateOnly Value) : TomlNode(Line);

    /// <summary>A value of a kind that no field takes: a fraction, a time.</summary>
    public sealed record Other(int Line, string Kind) : TomlNode(Line);

    /// <summary>Values in brackets, or blocks of one name.</summary>
    public sealed record List(int Line, List<TomlNode> Values) : TomlNode(Line);

    /// <summary>Fields with their values.</summary>
    public sealed record Table(int Line, Dictionary<string, TomlNode> Values) : TomlNode(Line);
}
