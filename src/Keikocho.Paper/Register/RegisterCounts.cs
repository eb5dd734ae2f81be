using System.Globalization;

namespace Keikocho.Paper.Register;

/// <summary>The numbers under the register, counted from its own rows so that they cannot disagree with them.</summary>
/// <param name="Here">Here to the end.</param>
/// <param name="Late">Of all who came, how many came late.</param>
/// <param name="Left">Came and left.</param>
/// <param name="ToldUs">Absent, told us.</param>
/// <param name="Absent">Absent, nobody told us.</param>
/// <param name="NotMarked">Nobody has marked them.</param>
internal sealed record RegisterCounts(int Here, int Late, int Left, int ToldUs, int Absent, int NotMarked)
{
    /// <summary>Counts the rows.</summary>
    public static RegisterCounts Of(IReadOnlyList<RegisterChild> children)
    {
        int Count(RegisterWord word) => children.Count(child => child.Mark.Word == word);
        return new(
            Count(RegisterWord.Present),
            children.Count(child => child.Mark.Late),
            Count(RegisterWord.Left),
            Count(RegisterWord.ToldUs),
            Count(RegisterWord.Absent),
            Count(RegisterWord.NotMarked));
    }

    /// <summary>"31 children: 22 present, 1 left (2 of them came late), 4 absent and 3 told us, 1 not marked".</summary>
    public string Sentence()
    {
        var all = Here + Left + ToldUs + Absent + NotMarked;
        var parts = new List<string> { Text(Here, "present") };
        if (Left > 0)
            parts.Add(Text(Left, "left"));
        if (Late > 0)
            parts[^1] += string.Create(CultureInfo.InvariantCulture, $" ({Late} came late)");
        if (ToldUs > 0)
            parts.Add(Text(ToldUs, "absent and told us"));
        if (Absent > 0)
            parts.Add(Text(Absent, "absent"));
        if (NotMarked > 0)
            parts.Add(Text(NotMarked, "not marked"));
        return $"{(all == 1 ? "1 child" : Text(all, "children"))}: {string.Join(", ", parts)}";
    }

    private static string Text(int count, string what) => string.Create(CultureInfo.InvariantCulture, $"{count} {what}");
}
