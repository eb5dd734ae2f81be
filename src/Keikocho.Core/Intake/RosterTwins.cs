using Keikocho.Core.Kernel;

namespace Keikocho.Core.Intake;

/// <summary>Finds lines that may be one child, asks, and joins them.</summary>
internal static class RosterTwins
{
    private const int NearestCompared = 20;

    /// <summary>The lines with those joined that are one child; the earlier line keeps its place.</summary>
    internal static List<DraftLine> Join(List<DraftLine> lines, Dictionary<int, KnownPerson?> sure, Sheet sheet, DoubtBook book, List<string> notes)
    {
        var kept = new List<DraftLine>();
        var byName = new Dictionary<string, (DraftLine First, Dictionary<DateOnly, DraftLine> ByBirth, DraftLine? WithoutBirth)>(StringComparer.Ordinal);
        var byBirth = new Dictionary<(DateOnly, string), List<DraftLine>>();
        foreach (var line in lines)
        {
            kept.Add(line);
            if (line.SetAside is not null || line.Child.NameKey.Length == 0) continue;
            var key = line.Child.NameKey;
            if (byName.TryGetValue(key, out var same))
            {
                var twin = line.Child.BirthDate is { } birth && same.ByBirth.TryGetValue(birth, out var exact) ? exact
                    : line.Child.BirthDate is null ? same.WithoutBirth ?? same.First
                    : same.WithoutBirth ?? same.First;
                if (Settle(twin, line, sure, sheet, book, notes)) kept.RemoveAt(kept.Count - 1);
                if (line.Child.BirthDate is { } own) same.ByBirth.TryAdd(own, kept[^1] == line ? line : twin);
                else if (same.WithoutBirth is null) byName[key] = same with { WithoutBirth = kept[^1] == line ? line : twin };
                continue;
            }
            var dates = new Dictionary<DateOnly, DraftLine>();
            if (line.Child.BirthDate is { } day) dates.Add(day, line);
            byName.Add(key, (line, dates, line.Child.BirthDate is null ? line : null));

            if (line.Child.BirthDate is not { } born || line.Child.FamilyName.Length == 0) continue;
            var family = (born, NameFold.Fold(line.Child.FamilyName));
            if (!byBirth.TryGetValue(family, out var siblings)) byBirth.Add(family, siblings = []);
            var near = siblings.Take(NearestCompared).FirstOrDefault(other => NearlySame(other.Child, line.Child));
            siblings.Add(line);
            if (near is not null && Nearly(near, line, sure, sheet, book)) kept.RemoveAt(kept.Count - 1);
        }
        return kept;
    }

    /// <summary>One given name begins the other, is the other's called name, or differs by at most two letters (one in names of up to four).</summary>
    internal static bool NearlySame(RosterChild one, RosterChild other)
    {
        var a = NameFold.Fold(one.GivenName);
        var b = NameFold.Fold(other.GivenName);
        if (a.Length == 0 || b.Length == 0) return false;
        return a.StartsWith(b, StringComparison.Ordinal) || b.StartsWith(a, StringComparison.Ordinal)
            || NameFold.Fold(one.CalledName) == b || NameFold.Fold(other.CalledName) == a
            || Math.Min(a.Length, b.Length) is var least && NameFold.Distance(a, b, least <= 4 ? 1 : 2) <= (least <= 4 ? 1 : 2);
    }

    // True when the later line was joined to the earlier one.
    private static bool Settle(DraftLine first, DraftLine later, Dictionary<int, KnownPerson?> sure, Sheet sheet, DoubtBook book, List<string> notes)
    {
        if (sure[first.Row] is { } one && sure[later.Row] is { } other)
        {
            if (one.Id != other.Id) return false;
            notes.Add($"Rows {first.Row} and {later.Row} are both {one.Child.FullName}, who is already here; they were read together.");
            Join(first, later, laterStands: false);
            return true;
        }
        var name = later.Child.FullName;
        var differ = Differing(first.Child, later.Child);
        var births = first.Child.BirthDate is { } a && later.Child.BirthDate is { } b && a != b ? (a, b) : ((DateOnly, DateOnly)?)null;
        if (births is { } dates)
        {
            var answer = book.Ask($"twice:{first.Row}+{later.Row}", DoubtKind.Namesakes,
                $"In sheet '{sheet.Name}', rows {first.Row} and {later.Row} are both {name}, born {dates.Item1.Full()} and {dates.Item2.Full()}: two children of one name, or one child with a wrong date?",
                [new("two", "Two children"), new("one", $"One child, born {dates.Item1.Full()}"), new("one-later", $"One child, born {dates.Item2.Full()}"), new("set-aside", $"Set row {later.Row} aside")],
                "two", TypedAnswer.None, first.Row, later.Row);
            return Take(answer, first, later, book);
        }
        List<Offer> offers = differ.Count == 0
            ? [new("one", "One child"), new("two", "Two children"), new("set-aside", $"Set row {later.Row} aside")]
            : [new("one", $"One child; row {first.Row} holds where they differ"), new("one-later", $"One child; row {later.Row} holds where they differ"), new("two", "Two children"), new("set-aside", $"Set row {later.Row} aside")];
        var both = first.Child.BirthDate is { } born && later.Child.BirthDate == born;
        var said = book.Ask($"twice:{first.Row}+{later.Row}", DoubtKind.SameChildTwice,
            $"In sheet '{sheet.Name}', rows {first.Row} and {later.Row} are both {name}{(both ? $", born {first.Child.BirthDate!.Value.Full()}" : ", and not both have a birth date")}{(differ.Count > 0 ? "; they differ in " + string.Join(", ", differ) : "")}: one child, or two?",
            offers, both ? "one" : null, TypedAnswer.None, first.Row, later.Row);
        return Take(said, first, later, book);
    }

    private static bool Nearly(DraftLine first, DraftLine later, Dictionary<int, KnownPerson?> sure, Sheet sheet, DoubtBook book)
    {
        if (sure[first.Row] is { } one && sure[later.Row] is { } other && one.Id != other.Id) return false;
        var said = book.Ask($"nearly:{first.Row}+{later.Row}", DoubtKind.NearlySameChild,
            $"In sheet '{sheet.Name}', {first.Child.FullName} (row {first.Row}) and {later.Child.FullName} (row {later.Row}) were both born {later.Child.BirthDate!.Value.Full()}: one child under two spellings, or two?",
            [new("one", $"One child: {first.Child.FullName}"), new("one-later", $"One child: {later.Child.FullName}"), new("two", "Two children"), new("set-aside", $"Set row {later.Row} aside")],
            null, TypedAnswer.None, first.Row, later.Row);
        return Take(said, first, later, book);
    }

    private static bool Take(string? answer, DraftLine first, DraftLine later, DoubtBook book)
    {
        switch (answer)
        {
            case "one" or "one-later":
                Join(first, later, laterStands: answer == "one-later");
                book.ForgetOpen(later.Row);
                return true;
            case "set-aside":
                later.SetAside = "you set it aside";
                later.Child = new RosterChild();
                book.ForgetOpen(later.Row);
                return false;
            default:
                return false;
        }
    }

    private static void Join(DraftLine first, DraftLine later, bool laterStands)
    {
        first.Child = laterStands ? Filled(later.Child, first.Child) : Filled(first.Child, later.Child);
        first.Rows.AddRange(later.Rows);
        first.Waits |= later.Waits;
    }

    private static RosterChild Filled(RosterChild stands, RosterChild fills) => stands with
    {
        GivenName = Or(stands.GivenName, fills.GivenName),
        FamilyName = Or(stands.FamilyName, fills.FamilyName),
        CalledName = Or(stands.CalledName, fills.CalledName),
        BirthDate = stands.BirthDate ?? fills.BirthDate,
        Sex = Or(stands.Sex, fills.Sex),
        Rank = Or(stands.Rank, fills.Rank),
        FirstClass = stands.FirstClass ?? fills.FirstClass,
        LastPromotion = stands.LastPromotion ?? fills.LastPromotion,
        Contacts = stands.Contacts.Count == 0 ? fills.Contacts
            : [.. stands.Contacts, .. fills.Contacts.Where(contact => !stands.Contacts.Any(other => RosterFields.SameContact(contact, other)))],
        PhotoConsent = stands.PhotoConsent ?? fills.PhotoConsent,
        RegistrationNumber = Or(stands.RegistrationNumber, fills.RegistrationNumber),
        RegistrationExpiry = stands.RegistrationExpiry ?? fills.RegistrationExpiry,
        Group = Or(stands.Group, fills.Group),
        Notes = Or(stands.Notes, fills.Notes),
    };

    private static List<string> Differing(RosterChild one, RosterChild other)
    {
        var others = RosterFields.Of(other).ToDictionary(field => field.Field, field => field.Text);
        return [.. RosterFields.Of(one).Where(field => field.Text.Length > 0 && others[field.Field].Length > 0 && field.Text != others[field.Field]).Select(field => field.Field)];
    }

    private static string Or(string one, string other) => one.Length > 0 ? one : other;
}
