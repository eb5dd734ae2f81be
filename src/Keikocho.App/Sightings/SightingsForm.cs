using Keikocho.Core.Evening;
using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Marks;

namespace Keikocho.App.Sightings;

/// <summary>
/// The grid of an evening as its form sends it. Anything in it that the page did not offer makes the whole form unreadable: nothing of
/// it is stored then.
/// </summary>
public static class SightingsForm
{
    private const string CellStart = "s.", FallStart = "f.";

    /// <summary>The name of a cell.</summary>
    public static string Cell(Guid person, Guid item) => $"{CellStart}{person:N}.{item:N}";

    /// <summary>The name of a child's fall.</summary>
    public static string Fall(Guid person) => $"{FallStart}{person:N}";

    /// <summary>
    /// The cells that were changed, and those that "all here, but those marked otherwise" fills: only of children who were here, of whom
    /// nothing stands for that item on that evening, and never of a critical item. Null when the form cannot be read.
    /// </summary>
    public static IReadOnlyList<SeenCell>? ReadItems(IFormCollection form, SightingsView view)
    {
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(view);
        if (view.Choice is not { } choice) return null;
        var items = choice.All.ToDictionary(i => i.Id);
        var children = view.Children.Children.Select(c => c.PersonId).ToHashSet();
        var cells = new List<SeenCell>();
        var said = new HashSet<(Guid, Guid)>();
        foreach (var (name, value) in form.Where(f => f.Key.StartsWith(CellStart, StringComparison.Ordinal)).OrderBy(f => f.Key, StringComparer.Ordinal))
        {
            var parts = name[CellStart.Length..].Split('.');
            if (parts.Length != 2 || !Guid.TryParseExact(parts[0], "N", out var person) || !Guid.TryParseExact(parts[1], "N", out var id)
                || !children.Contains(person) || !items.TryGetValue(id, out var item) || value.Count != 1)
                return null;
            if (value[0] is not { Length: > 0 } word) continue;
            var seen = SeenWords.Read(word);
            if (seen is null && word != SeenWords.Nothing) return null;
            said.Add((person, id));
            cells.Add(new SeenCell(person, id, SeenWords.MarkOf(item.Item.Kind), seen is { } some ? EvidenceCode.OfWord(some) : 0));
        }

        foreach (var key in form["all"])
        {
            if (choice.Shown.FirstOrDefault(i => i.Item.Key == key) is not { Critical: false, Item.Kind: not ItemKind.Fall } item || !view.Children.RegisterTaken) return null;
            cells.AddRange(view.Rows.Where(r => r.Child.WasHere && !said.Contains((r.Child.PersonId, item.Id)) && r.Cells.First(c => c.Item.Id == item.Id).Stands is null)
                .Select(r => new SeenCell(r.Child.PersonId, item.Id, SeenWords.MarkOf(item.Item.Kind), EvidenceCode.OfWord(SeenWord.Good))));
        }

        return cells;
    }

    /// <summary>The falls that were changed; null when the form cannot be read.</summary>
    public static IReadOnlyList<SeenCell>? ReadFalls(IFormCollection form, EveningChildren evening, FallWay way, int stage)
    {
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(evening);
        var children = evening.Children.Select(c => c.PersonId).ToHashSet();
        var place = EvidenceCode.OfFall(way, stage, clean: true);
        var cells = new List<SeenCell>();
        foreach (var (name, value) in form.Where(f => f.Key.StartsWith(FallStart, StringComparison.Ordinal)).OrderBy(f => f.Key, StringComparer.Ordinal))
        {
            if (!Guid.TryParseExact(name[FallStart.Length..], "N", out var person) || !children.Contains(person) || value.Count != 1) return null;
            if (value[0] is not { Length: > 0 } word) continue;
            if (word is not ("clean" or "touched" or SeenWords.Nothing)) return null;
            cells.Add(new SeenCell(person, MarkCode.Falls, MarkKind.Fall, word == SeenWords.Nothing ? 0 : EvidenceCode.OfFall(way, stage, word == "clean"), place));
        }

        return cells;
    }
}
