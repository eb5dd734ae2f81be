using Keikocho.Core.Kernel;

namespace Keikocho.Core.Intake;

/// <summary>The values of a child as texts to compare and to show.</summary>
internal static class RosterFields
{
    internal static IReadOnlyList<(string Field, string Text)> Of(RosterChild child) =>
    [
        ("given name", child.GivenName),
        ("family name", child.FamilyName),
        ("called name", child.CalledName),
        ("birth date", Day(child.BirthDate)),
        ("sex", child.Sex),
        ("rank", child.Rank),
        ("first lesson", Day(child.FirstClass)),
        ("last promotion", Day(child.LastPromotion)),
        ("contacts", string.Join("; ", Merged(child.Contacts).Select(Text))),
        ("photo consent", child.PhotoConsent switch { true => "yes", false => "no", null => "" }),
        ("registration number", child.RegistrationNumber),
        ("registration expiry", Day(child.RegistrationExpiry)),
        ("group", child.Group),
        ("notes", child.Notes),
    ];

    /// <summary>Neighbours of one name and relation are one contact with several numbers.</summary>
    internal static IReadOnlyList<RosterContact> Merged(IReadOnlyList<RosterContact> contacts)
    {
        var merged = new List<RosterContact>();
        foreach (var contact in contacts)
        {
            if (merged.Count > 0 && merged[^1].Name == contact.Name && merged[^1].Relation == contact.Relation)
                merged[^1] = merged[^1] with { Phones = [.. merged[^1].Phones, .. contact.Phones], Emails = [.. merged[^1].Emails, .. contact.Emails] };
            else merged.Add(contact);
        }

        return merged;
    }

    /// <summary>A telephone or an address in common, or the same name and nothing that parts them.</summary>
    internal static bool SameContact(RosterContact one, RosterContact other)
        => one.Phones.Any(phone => other.Phones.Any(another => Digits(phone) == Digits(another)))
            || one.Emails.Any(email => other.Emails.Contains(email, StringComparer.OrdinalIgnoreCase))
            || one.Name.Length > 0 && NameFold.Key(one.Name) == NameFold.Key(other.Name) && one.Phones.Count + one.Emails.Count == 0;

    private static string Digits(string phone) => string.Concat(phone.Where(char.IsAsciiDigit));

    private static string Text(RosterContact contact)
        => string.Join(", ", new[] { contact.Name, contact.Relation }.Concat(contact.Phones).Concat(contact.Emails).Where(text => text.Length > 0));

    private static string Day(DateOnly? day) => day?.Iso() ?? "";
}
