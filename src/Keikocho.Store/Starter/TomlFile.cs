using System.Globalization;
using Tomlyn;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace Keikocho.Store.Starter;

/// <summary>Reads TOML into values that know their lines.</summary>
internal static class TomlFile
{
    /// <summary>The whole file, or null with what is wrong.</summary>
    public static TomlNode.Table? Parse(string text, string file, List<TextFault> faults)
    {
        DocumentSyntax document;
        try
        {
            document = SyntaxParser.Parse(text, file, validate: true);
        }
        catch (Exception e) when (e is TomlException or ArgumentException or InvalidOperationException or IndexOutOfRangeException or FormatException)
        {
            // The parser gives up at signs that are no text and at brackets in brackets without end.
            faults.Add(new TextFault(file, 1, "", "This is not TOML: it has a sign that is no text, or more than 64 brackets in one another; mend it."));
            return null;
        }

        foreach (var message in document.Diagnostics)
        {
            if (message.Kind == DiagnosticMessageKind.Error)
                faults.Add(new TextFault(file, Line(message.Span), "", $"This is not TOML ({message.Message.Trim().TrimEnd('.')}); mend it."));
        }

        if (faults.Count > 0) return null;
        return new Building(file, faults).Build(document);
    }

    private static int Line(SourceSpan span) => span.Start.Line + 1;

    private sealed class Building(string file, List<TextFault> faults)
    {
        public TomlNode.Table Build(DocumentSyntax document)
        {
            var root = new TomlNode.Table(1, []);
            foreach (var pair in document.KeyValues) Put(root, pair);
            foreach (var block in document.Tables)
            {
                var into = Open(root, Names(block.Name!), Line(block.Span), block is TableArraySyntax);
                if (into is null) continue;
                foreach (var pair in block.Items) Put(into, pair);
            }

            return root;
        }

        private TomlNode.Table? Open(TomlNode.Table root, List<string> names, int line, bool isOneOfMany)
        {
            var here = Walk(root, names, line);
            if (here is null) return null;
            var last = names[^1];
            var fresh = new TomlNode.Table(line, []);
            if (!here.Values.TryGetValue(last, out var found))
            {
                here.Values.Add(last, isOneOfMany ? new TomlNode.List(line, [fresh]) : fresh);
                return fresh;
            }

            if (isOneOfMany && found is TomlNode.List many)
            {
                many.Values.Add(fresh);
                return fresh;
            }

            if (!isOneOfMany && found is TomlNode.Table table) return table;
            return Clash(names, line);
        }

        private void Put(TomlNode.Table into, KeyValueSyntax pair)
        {
            var names = Names(pair.Key!);
            var line = Line(pair.Span);
            if (Walk(into, names, line) is { } here && !here.Values.TryAdd(names[^1], Value(pair.Value!, line)))
                Clash(names, line);
        }

        /// <summary>The table in which the last of the names lies; of blocks of one name, the latest.</summary>
        private TomlNode.Table? Walk(TomlNode.Table from, List<string> names, int line)
        {
            var here = from;
            foreach (var name in names.SkipLast(1))
            {
                if (!here.Values.TryGetValue(name, out var found)) here.Values.Add(name, found = new TomlNode.Table(line, []));
                var table = found as TomlNode.Table ?? (found as TomlNode.List)?.Values.LastOrDefault() as TomlNode.Table;
                if (table is null) return Clash(names, line);
                here = table;
            }

            return here;
        }

        private TomlNode.Table? Clash(List<string> names, int line)
        {
            faults.Add(new TextFault(file, line, string.Join('.', names), "This stands twice, or as two kinds of thing; keep one."));
            return null;
        }

        private TomlNode Value(ValueSyntax value, int line)
        {
            line = value.Span.Start.Line >= 0 ? Line(value.Span) : line;
            return value switch
            {
                StringValueSyntax text => new TomlNode.Text(line, text.Value ?? ""),
                IntegerValueSyntax number => new TomlNode.Number(line, number.Value),
                BooleanValueSyntax truth => new TomlNode.Truth(line, truth.Value),
                DateTimeValueSyntax { Kind: SyntaxKind.LocalDate } day => new TomlNode.Day(line, DateOnly.FromDateTime(day.Value.DateTime.DateTime)),
                DateTimeValueSyntax => new TomlNode.Other(line, "a time"),
                FloatValueSyntax => new TomlNode.Other(line, "a fraction"),
                ArraySyntax list => new TomlNode.List(line, [.. list.Items.Select(item => Value(item.Value!, line))]),
                InlineTableSyntax table => Inline(table, line),
                _ => new TomlNode.Other(line, value.Kind.ToString().ToLower(CultureInfo.InvariantCulture)),
            };
        }

        private TomlNode.Table Inline(InlineTableSyntax table, int line)
        {
            var made = new TomlNode.Table(line, []);
            foreach (var item in table.Items) Put(made, item.KeyValue!);
            return made;
        }

        private static List<string> Names(KeySyntax key) => [Name(key.Key!), .. key.DotKeys.Select(dotted => Name(dotted.Key!))];

        private static string Name(BareKeyOrStringValueSyntax key) => key switch
        {
            BareKeySyntax bare => bare.Key!.Text!,
            StringValueSyntax text => text.Value!,
            _ => key.ToString(),
        };
    }
}
