using System.Globalization;

namespace Keikocho.Store.Starter;

/// <summary>Something wrong in a text file of the starter format.</summary>
/// <param name="File">Name of the file, as it was given.</param>
/// <param name="Line">Line, from 1.</param>
/// <param name="Field">Which field, in the file's own words: "rank.asks.any"; empty for the file as a whole.</param>
/// <param name="Sentence">What is wrong and what to do, in one sentence.</param>
public sealed record TextFault(string File, int Line, string Field, string Sentence)
{
    /// <summary>"syllabus.toml, line 14, rank.asks.any: this takes a whole number from 1; write one."</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{File}, line {Line}{(Field.Length == 0 ? "" : $", {Field}")}: {Sentence}");
}

/// <summary>What came of a file: all of it, or what is wrong. Nothing is read by halves. A closed set.</summary>
/// <typeparam name="T">What the file holds.</typeparam>
public abstract record TextReading<T>
{
    private TextReading()
    {
    }

    /// <summary>All of it was read.</summary>
    /// <param name="Value">What the file holds.</param>
    public sealed record Read(T Value) : TextReading<T>;

    /// <summary>Nothing was read.</summary>
    /// <param name="Faults">At least one, in the order of the file.</param>
    public sealed record Faulty(IReadOnlyList<TextFault> Faults) : TextReading<T>;
}
