namespace Keikocho.Store.Starter;

/// <summary>Reads one TOML file of the starter kit: all of it or nothing.</summary>
internal static class WholeFile
{
    /// <summary>Reads a text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="fileName">Its name, for the sentences.</param>
    /// <param name="make">Makes the value; what nobody asked for at the top is refused afterwards.</param>
    public static TextReading<T> Read<T>(string text, string fileName, Func<Fields, T> make)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(fileName);
        var trace = new TextTrace(fileName);
        if (TomlFile.Parse(text, fileName, trace.Faults) is not { } root) return new TextReading<T>.Faulty(trace.Sorted());
        var file = new Fields(root, "", "", trace);
        var value = make(file);
        file.NothingElse();
        return trace.Faults.Count > 0 ? new TextReading<T>.Faulty(trace.Sorted()) : new TextReading<T>.Read(value);
    }
}
