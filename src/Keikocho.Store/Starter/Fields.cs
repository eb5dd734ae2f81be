using System.Globalization;

namespace Keikocho.Store.Starter;

/// <summary>What is known while a file is read: what is wrong, and on which line each member of the answer stands.</summary>
internal sealed class TextTrace(string file)
{
    private readonly Dictionary<string, (int Line, string Field)> places = new(StringComparer.Ordinal);

    /// <summary>What is wrong so far.</summary>
    public List<TextFault> Faults { get; } = [];

    /// <summary>The file's name.</summary>
    public string File => file;

    /// <summary>Notes where a member stands.</summary>
    public void Note(string member, int line, string field) => places.TryAdd(member, (line, field));

    /// <summary>Something is wrong.</summary>
    public void Fault(int line, string field, string sentence) => Faults.Add(new TextFault(file, line, field, sentence));

    /// <summary>Where a member stands; the nearest member around it where it does not stand itself.</summary>
    public (int Line, string Field) Of(string member)
    {
        for (var at = member; at.Length > 0; at = Around(at))
        {
            if (places.TryGetValue(at, out var place)) return place;
        }

        return (1, "");
    }

    /// <summary>The faults in the order of the file.</summary>
    public IReadOnlyList<TextFault> Sorted() => [.. Faults.Distinct().OrderBy(fault => fault.Line)];

    private static string Around(string member)
    {
        var end = Math.Max(member.LastIndexOf('.'), member.LastIndexOf('['));
        return end < 0 ? "" : member[..end];
    }
}

/// <summary>
/// The fields of one block, read one by one. What is of the wrong kind is noted and read as nothing; what nobody asked for is refused at
/// the end.
/// </summary>
/// <param name="table">The block.</param>
/// <param name="path">Its name in the file's words; empty for the file itself.</param>
/// <param name="member">Its name in the members of the answer; empty for the answer itself.</param>
/// <param name="trace">Where faults and lines are noted.</param>
internal sealed class Fields(TomlNode.Table table, string path, string member, TextTrace trace)
{
    private readonly SortedSet<string> known = new(StringComparer.Ordinal);

    /// <summary>Line of the block.</summary>
    public int Line => table.Line;

    /// <summary>Where faults are noted.</summary>
    public TextTrace Trace => trace;

    /// <summary>Its name in the members of the answer.</summary>
    public string Member => member;

    /// <summary>Whether a field stands here.</summary>
    public bool Has(string name) => table.Values.ContainsKey(name);

    /// <summary>Line of a field; of the block where the field is not there.</summary>
    public int LineOf(string name) => table.Values.TryGetValue(name, out var node) ? node.Line : table.Line;

    /// <summary>Notes that something is wrong with a field.</summary>
    public void Fault(string name, string sentence) => trace.Fault(LineOf(name), PathOf(name), sentence);

    /// <summary>A text; null where it is not there.</summary>
    public string? Text(string name, string? to = null) => Get(name, to) switch
    {
        null => null,
        TomlNode.Text text => text.Value,
        var other => Wrong<string>(other, name, "a text in double quotes"),
    };

    /// <summary>A text that must be there and not empty.</summary>
    public string Needed(string name, string? to = null)
    {
        var text = Text(name, to);
        if (!string.IsNullOrWhiteSpace(text)) return text;
        if (!Has(name)) trace.Fault(Line, PathOf(name), "This is missing; write it.");
        else if (text is not null) Fault(name, "This is empty; write something or take the whole block out.");
        return "";
    }

    /// <summary>A whole number; null where it is not there.</summary>
    public int? Number(string name, string? to = null, int least = 0, int most = 1_000_000)
    {
        var wanted = string.Create(CultureInfo.InvariantCulture, $"a whole number from {least} to {most}");
        return Get(name, to) switch
        {
            null => null,
            TomlNode.Number number when number.Value >= least && number.Value <= most => (int)number.Value,
            var other => WrongValue<int>(other, name, wanted),
        };
    }

    /// <summary>True or false; false where it is not there.</summary>
    public bool Truth(string name, string? to = null) => Get(name, to) switch
    {
        null => false,
        TomlNode.Truth truth => truth.Value,
        var other => WrongValue<bool>(other, name, "true or false") ?? false,
    };

    /// <summary>A day; null where it is not there.</summary>
    public DateOnly? Day(string name, string? to = null) => Get(name, to) switch
    {
        null => null,
        TomlNode.Day day => day.Value,
        var other => WrongValue<DateOnly>(other, name, "a day as 2026-09-01, without quotes"),
    };

    /// <summary>One of a few words; null where it is not there.</summary>
    public T? Word<T>(string name, WordList<T> words, string? to = null)
        where T : struct
    {
        var text = Text(name, to);
        if (text is null) return null;
        if (words.Of(text) is { } value) return value;
        Fault(name, $"\"{text}\" is none of its words; write one of {words.All}.");
        return null;
    }

    /// <summary>One of a few words that must be there.</summary>
    public T NeededWord<T>(string name, WordList<T> words, string? to = null)
        where T : struct
    {
        if (!Has(name)) trace.Fault(Line, PathOf(name), $"This is missing; write one of {words.All}.");
        return Word(name, words, to) ?? default;
    }

    /// <summary>Texts in brackets; null where they are not there.</summary>
    public IReadOnlyList<string>? Texts(string name, string? to = null)
    {
        switch (Get(name, to))
        {
            case null:
                return null;
            case TomlNode.List list:
                var texts = new List<string>();
                for (var i = 0; i < list.Values.Count; i++)
                {
                    Note(to ?? name, i, list.Values[i].Line, name);
                    if (list.Values[i] is TomlNode.Text text) texts.Add(text.Value);
                    else Wrong<string>(list.Values[i], name, "texts in brackets, each in double quotes");
                }

                return texts;
            case var other:
                return Wrong<IReadOnlyList<string>>(other, name, "texts in brackets, as [\"one\", \"two\"]");
        }
    }

    /// <summary>Words in brackets; null where they are not there.</summary>
    public IReadOnlyList<T>? WordsOf<T>(string name, WordList<T> words, string? to = null)
        where T : struct
    {
        if (Texts(name, to) is not { } texts) return null;
        foreach (var strange in texts.Where(text => words.Of(text) is null))
            Fault(name, $"\"{strange}\" is none of its words; write {words.All}.");
        return [.. texts.Select(words.Of).OfType<T>()];
    }

    /// <summary>A block in braces; null where it is not there.</summary>
    public Fields? Block(string name, string? to = null) => Get(name, to) switch
    {
        null => null,
        TomlNode.Table inner => new Fields(inner, PathOf(name), MemberOf(to ?? Camel(name)), trace),
        var other => Wrong<Fields>(other, name, "fields in braces, as { ... }"),
    };

    /// <summary>Blocks of one name; null where there are none.</summary>
    public IReadOnlyList<Fields>? Blocks(string name, string? to = null)
    {
        switch (Get(name, to))
        {
            case null:
                return null;
            case TomlNode.List list:
                var blocks = new List<Fields>();
                for (var i = 0; i < list.Values.Count; i++)
                {
                    var inner = Note(to ?? Camel(name), i, list.Values[i].Line, name);
                    if (list.Values[i] is TomlNode.Table block) blocks.Add(new Fields(block, PathOf(name), inner, trace));
                    else Wrong<Fields>(list.Values[i], name, "fields in braces, as { ... }");
                }

                return blocks;
            case var other:
                return Wrong<IReadOnlyList<Fields>>(other, name, $"one or more blocks that begin with [[{PathOf(name)}]]");
        }
    }

    /// <summary>Refuses every field that nobody asked for.</summary>
    public void NothingElse()
    {
        foreach (var (name, node) in table.Values)
        {
            if (!known.Contains(name))
                trace.Fault(node.Line, PathOf(name), $"There is no such field; take it out or mend its spelling (there are {string.Join(", ", known)}).");
        }
    }

    private TomlNode? Get(string name, string? to)
    {
        known.Add(name);
        if (!table.Values.TryGetValue(name, out var node)) return null;
        trace.Note(MemberOf(to ?? Camel(name)), node.Line, PathOf(name));
        return node;
    }

    private string Note(string to, int place, int line, string name)
    {
        var inner = string.Create(CultureInfo.InvariantCulture, $"{MemberOf(to == name ? Camel(name) : to)}[{place}]");
        trace.Note(inner, line, PathOf(name));
        return inner;
    }

    private T? Wrong<T>(TomlNode node, string name, string wanted)
        where T : class
    {
        trace.Fault(node.Line, PathOf(name), $"This takes {wanted}; write it so.");
        return null;
    }

    private T? WrongValue<T>(TomlNode node, string name, string wanted)
        where T : struct
    {
        trace.Fault(node.Line, PathOf(name), $"This takes {wanted}; write it so.");
        return null;
    }

    private string PathOf(string name) => path.Length == 0 ? name : $"{path}.{name}";

    private string MemberOf(string to) => member.Length == 0 ? to : $"{member}.{to}";

    private static string Camel(string name)
    {
        var words = name.Split('-');
        return words[0] + string.Concat(words.Skip(1).Select(word => word.Length == 0 ? "" : char.ToUpperInvariant(word[0]) + word[1..]));
    }
}
