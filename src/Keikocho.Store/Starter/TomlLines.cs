using System.Globalization;
using System.Text;

namespace Keikocho.Store.Starter;

/// <summary>Writes TOML line by line. What is null, false or nothing is left out.</summary>
internal sealed class TomlLines
{
    private const int Wide = 120;
    private readonly StringBuilder text = new();

    /// <summary>A line as it is.</summary>
    public TomlLines Line(string line = "")
    {
        text.Append(line).Append('\n');
        return this;
    }

    /// <summary>A text; left out when null.</summary>
    public TomlLines Text(string name, string? value) => value is null ? this : Line($"{name} = {Quoted(value)}");

    /// <summary>A number; left out when null.</summary>
    public TomlLines Number(string name, int? value) => value is null ? this : Line($"{name} = {Plain(value.Value)}");

    /// <summary>A number; left out when 0.</summary>
    public TomlLines Count(string name, int value) => value == 0 ? this : Number(name, value);

    /// <summary>True; left out when false.</summary>
    public TomlLines Truth(string name, bool value) => value ? Line($"{name} = true") : this;

    /// <summary>Texts; left out when null, on lines of their own when they are many.</summary>
    public TomlLines Texts(string name, IReadOnlyList<string>? values)
    {
        if (values is null) return this;
        var line = $"{name} = [{string.Join(", ", values.Select(Quoted))}]";
        if (line.Length <= Wide) return Line(line);
        Line($"{name} = [");
        var row = "";
        foreach (var value in values.Select(Quoted))
        {
            if (row.Length > 0 && row.Length + value.Length + 6 > Wide)
            {
                Line($"  {row.TrimEnd()}");
                row = "";
            }

            row += $"{value}, ";
        }

        if (row.Length > 0) Line($"  {row.TrimEnd()}");
        return Line("]");
    }

    /// <summary>A text in double quotes.</summary>
    public static string Quoted(string value)
    {
        var made = new StringBuilder("\"");
        foreach (var c in value)
        {
            _ = c switch
            {
                '"' => made.Append("\\\""),
                '\\' => made.Append("\\\\"),
                '\n' => made.Append("\\n"),
                '\t' => made.Append("\\t"),
                '\r' => made.Append("\\r"),
                < ' ' or '\u007f' => made.Append(CultureInfo.InvariantCulture, $"\\u{(int)c:x4}"),
                _ => made.Append(c),
            };
        }

        return made.Append('"').ToString();
    }

    /// <summary>A number.</summary>
    public static string Plain(int value) => value.ToString(CultureInfo.InvariantCulture);

    /// <summary>The whole text.</summary>
    public override string ToString() => text.ToString();
}
