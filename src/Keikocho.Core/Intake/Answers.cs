using System.Globalization;

namespace Keikocho.Core.Intake;

/// <summary>The answers given so far, by the doubts' keys. Part of the question, so that a reading can be repeated.</summary>
/// <param name="ByKey">Doubt key to offer code, or "=" and the typed value.</param>
public sealed record Answers(IReadOnlyDictionary<string, string> ByKey)
{
    /// <summary>No answers yet.</summary>
    public static Answers None { get; } = new(new Dictionary<string, string>());

    /// <summary>These answers and one more.</summary>
    public Answers With(string key, string answer) => new(new Dictionary<string, string>(ByKey) { [key] = answer });

    /// <summary>These answers and, for every open doubt that has one, the proposed answer.</summary>
    public Answers WithProposed(IEnumerable<Doubt> doubts)
    {
        ArgumentNullException.ThrowIfNull(doubts);
        var all = new Dictionary<string, string>(ByKey);
        foreach (var doubt in doubts)
            if (!doubt.IsSettled && doubt.Proposed is { } proposed) all[doubt.Key] = proposed;
        return new(all);
    }
}

/// <summary>Collects the doubts of one reading and looks up what was answered.</summary>
internal sealed class DoubtBook(Answers answers)
{
    private readonly Dictionary<string, Doubt> _byKey = [];
    private readonly Dictionary<int, List<string>> _keysOfRow = [];
    private readonly List<Doubt> _doubts = [];

    /// <summary>The doubts in the order they came up, without those taken back.</summary>
    internal IReadOnlyList<Doubt> Doubts => [.. _doubts.Where(doubt => _byKey.TryGetValue(doubt.Key, out var held) && ReferenceEquals(held, doubt))];

    /// <summary>The doubt of a key; null when there is none.</summary>
    internal Doubt? Of(string key) => _byKey.GetValueOrDefault(key);

    /// <summary>Puts a doubt down, once a key, and gives the answer when there is a valid one.</summary>
    internal string? Ask(string key, DoubtKind kind, string sentence, IReadOnlyList<Offer> offers, string? proposed = null, TypedAnswer typed = TypedAnswer.None, params IReadOnlyList<int> rows)
        => Ask(key, kind, sentence, offers, proposed, typed, value => Fits(value, typed), rows);

    /// <summary>The same, where only some of what may be typed is an answer.</summary>
    internal string? Ask(string key, DoubtKind kind, string sentence, IReadOnlyList<Offer> offers, string? proposed, TypedAnswer typed, Func<string, bool> fits, IReadOnlyList<int> rows)
    {
        if (_byKey.TryGetValue(key, out var known)) return known.Answer;
        string? answer = null;
        if (answers.ByKey.TryGetValue(key, out var given))
        {
            if (offers.Any(offer => offer.Code == given) || given.StartsWith('=') && fits(given[1..])) answer = given;
            else sentence = $"'{given.TrimStart('=')}' is not an answer to this{(typed == TypedAnswer.Date ? "; type a date as 2026-03-14" : "")}. {sentence}";
        }
        var doubt = new Doubt(key, kind, sentence, offers, proposed, typed, rows, answer);
        _byKey.Add(key, doubt);
        _doubts.Add(doubt);
        if (rows is [var only])
        {
            if (!_keysOfRow.TryGetValue(only, out var keys)) _keysOfRow.Add(only, keys = []);
            keys.Add(key);
        }
        return answer;
    }

    /// <summary>Takes back the open doubts that speak of this row alone: the line was set aside.</summary>
    internal void ForgetOpen(int row)
    {
        if (!_keysOfRow.TryGetValue(row, out var keys)) return;
        foreach (var key in keys)
            if (_byKey.TryGetValue(key, out var doubt) && !doubt.IsSettled) _byKey.Remove(key);
    }

    /// <summary>Takes back one doubt: something else has settled it.</summary>
    internal void ForgetKey(string key) => _byKey.Remove(key);

    private static bool Fits(string value, TypedAnswer typed) => typed switch
    {
        TypedAnswer.Date => TypedDate(value) is not null,
        TypedAnswer.Year => int.TryParse(value, NumberStyles.None, CultureInfo.InvariantCulture, out var year) && year is >= 1950 and <= 2199,
        TypedAnswer.Text => value.Trim().Length > 0,
        _ => false,
    };

    internal static DateOnly? TypedDate(string value)
        => DateOnly.TryParseExact(value.Trim(), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day : null;
}
