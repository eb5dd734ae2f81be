using System.Collections.Frozen;

namespace Keikocho.Core.Intake;

/// <summary>Names of months and weekdays in English, French, German, Dutch and Spanish, folded. From common practice, no source.</summary>
public static class MonthWords
{
    /// <summary>January first; each with its names and shortened names.</summary>
    public static IReadOnlyList<IReadOnlyList<string>> Months { get; } =
    [
        ["january", "jan", "janvier", "janv", "januar", "janner", "januari", "enero", "ene"],
        ["february", "feb", "fevrier", "fev", "fevr", "februar", "februari", "febrero"],
        ["march", "mar", "mars", "marz", "maerz", "mrz", "maart", "mrt", "marzo"],
        ["april", "apr", "avril", "avr", "abril", "abr"],
        ["may", "mai", "mei", "mayo"],
        ["june", "jun", "juin", "juni", "junio"],
        ["july", "jul", "juillet", "juil", "juli", "julio"],
        ["august", "aug", "aout", "augustus", "agosto", "ago"],
        ["september", "sep", "sept", "septembre", "septiembre"],
        ["october", "oct", "octobre", "oktober", "okt", "octubre"],
        ["november", "nov", "novembre", "noviembre"],
        ["december", "dec", "decembre", "dezember", "dez", "diciembre", "dic"],
    ];

    /// <summary>Monday first.</summary>
    public static IReadOnlyList<IReadOnlyList<string>> Weekdays { get; } =
    [
        ["monday", "mon", "lundi", "lun", "montag", "mo", "maandag", "ma", "lunes"],
        ["tuesday", "tue", "tues", "tu", "mardi", "dienstag", "di", "dinsdag", "martes"],
        ["wednesday", "wed", "weds", "we", "mercredi", "mer", "mittwoch", "mi", "woensdag", "wo", "miercoles", "mie"],
        ["thursday", "thu", "thur", "thurs", "th", "jeudi", "jeu", "donnerstag", "do", "donderdag", "jueves", "jue"],
        ["friday", "fri", "fr", "vendredi", "ven", "freitag", "vrijdag", "vr", "viernes", "vie"],
        ["saturday", "sat", "sa", "samedi", "sam", "samstag", "zaterdag", "za", "sabado", "sab"],
        ["sunday", "sun", "su", "dimanche", "dim", "sonntag", "so", "zondag", "zo", "domingo", "dom"],
    ];

    private static readonly FrozenDictionary<string, int> MonthOf = Index(Months);
    private static readonly FrozenDictionary<string, int> WeekdayOf = Index(Weekdays);

    /// <summary>1 to 12, or null when the word is no month.</summary>
    public static int? Month(string word) => MonthOf.TryGetValue(NameFold.Fold(word), out var month) ? month : null;

    /// <summary>The weekday, or null when the word is none.</summary>
    public static DayOfWeek? Weekday(string word) => WeekdayOf.TryGetValue(NameFold.Fold(word), out var day) ? (DayOfWeek)(day % 7) : null;

    private static FrozenDictionary<string, int> Index(IReadOnlyList<IReadOnlyList<string>> table)
        => table.SelectMany((words, i) => words.Select(word => (word, i))).ToFrozenDictionary(pair => pair.word, pair => pair.i + 1, StringComparer.Ordinal);
}
