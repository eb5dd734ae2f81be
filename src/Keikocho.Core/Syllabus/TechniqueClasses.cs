namespace Keikocho.Core.Syllabus;

/// <summary>
/// What kind a technique is by the class of the name library, and, for a name that no library knows, by how it ends. The classes are
/// those of the Kodokan's list; the endings are common practice, no source, and where an ending fits two kinds it is both: shut wins.
/// </summary>
internal static class TechniqueClasses
{
    private static readonly string[] Arms = ["hishigi", "garami", "jujigatame", "udegatame", "hizagatame", "wakigatame", "haragatame", "ashigatame", "tegatame"];

    private static readonly string[] Holds = ["shihogatame", "kesagatame", "katagatame", "munegatame", "ukigatame", "uragatame"];

    private static readonly string[] Throws =
    [
        "gari", "goshi", "nage", "otoshi", "guruma", "harai", "barai", "gake", "gaeshi", "makikomi", "ashi", "mata", "wakare", "basami", "arashi",
    ];

    /// <summary>The kind of a class: "shime-waza" is strangles; null for none.</summary>
    public static ItemKind? KindOf(string? name) => name switch
    {
        "te-waza" or "koshi-waza" or "ashi-waza" or "ma-sutemi-waza" or "yoko-sutemi-waza" => ItemKind.Throw,
        "osaekomi-waza" => ItemKind.HoldDown,
        "shime-waza" => ItemKind.Strangle,
        "kansetsu-waza" => ItemKind.Armlock,
        _ => null,
    };

    /// <summary>Whether a rule that says <paramref name="said"/>, folded and without blanks, means a whole class: "sacrifice throws", "koshi-waza".</summary>
    public static bool IsSaidBy(string said, string? name) => name is not null && said switch
    {
        "sutemiwaza" or "sacrificethrow" or "sacrificethrows" or "sacrificetechniques" => name.EndsWith("sutemi-waza", StringComparison.Ordinal),
        "nagewaza" => KindOf(name) == ItemKind.Throw,
        "katamewaza" => KindOf(name) is not (null or ItemKind.Throw),
        _ => said == name.Replace("-", "", StringComparison.Ordinal),
    };

    /// <summary>The kinds that a name may be by its end, folded and without blanks; empty where it says nothing.</summary>
    public static IReadOnlyList<ItemKind> ByEnding(string bare)
    {
        bool Ends(string[] endings) => endings.Any(e => bare.EndsWith(e, StringComparison.Ordinal));
        if (Ends(["jime", "shime"]))
            return [ItemKind.Strangle];
        if (Ends(Holds))
            return [ItemKind.HoldDown];
        if (bare.Contains("hishigi", StringComparison.Ordinal) || Ends(Arms))
            return [ItemKind.Armlock];
        if (Ends(["gatame"]))
            return [ItemKind.HoldDown, ItemKind.Armlock];
        return Ends(Throws) ? [ItemKind.Throw] : [];
    }
}
