using Keikocho.Core.Intake;

namespace Keikocho.Store.Intake;

/// <summary>What came of reading a file.</summary>
public abstract record TableReading
{
    private TableReading() { }

    /// <summary>The sheets of the file.</summary>
    /// <param name="Sheets">At least one; hidden ones too, marked so.</param>
    /// <param name="Notes">How it was read: the encoding and separator taken, merged cells, hidden sheets. Sentences.</param>
    public sealed record Read(IReadOnlyList<Sheet> Sheets, IReadOnlyList<string> Notes) : TableReading;

    /// <summary>The file cannot be read.</summary>
    /// <param name="Sentence">What is wrong, where, and what to do.</param>
    public sealed record Refused(string Sentence) : TableReading;
}

/// <summary>Leaves a reading with its refusal. Thrown and caught inside this folder only.</summary>
internal sealed class RefusedException(string sentence) : Exception(sentence);
