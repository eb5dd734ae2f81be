namespace Keikocho.Core.Intake;

/// <summary>A contact while its columns are being read.</summary>
internal sealed class ContactDraft(string relation)
{
    internal string Name { get; set; } = "";
    internal string Relation { get; set; } = relation;
    internal List<string> Phones { get; } = [];
    internal List<string> Emails { get; } = [];

    // "mother" in the header alone is no contact.
    internal bool HoldsSomething => Name.Length > 0 || Phones.Count > 0 || Emails.Count > 0;

    internal RosterContact Done() => new(Name, Relation, Phones, Emails);

    /// <summary>Takes "Anna Bell 07700 900123" and "07700 900123 (mum)" apart; no number: the text as it is and null.</summary>
    internal static (string Name, string? Phone) NameAndPhone(string text)
    {
        if (ContactForms.IsPhone(text)) return ("", text.Trim());
        var from = -1;
        for (var i = 0; i < text.Length && from < 0; i++)
            if (char.IsAsciiDigit(text[i]) || text[i] == '+' || text[i] == '(' && i + 1 < text.Length && char.IsAsciiDigit(text[i + 1])) from = i;
        if (from < 0) return (text, null);
        var to = text.Length - 1;
        while (to > from && !char.IsAsciiDigit(text[to])) to--;
        var phone = text[from..(to + 1)];
        if (!ContactForms.IsPhone(phone)) return (text, null);
        var rest = (text[..from] + " " + text[(to + 1)..]).Trim(' ', '(', ')', ',', ':', '-', ';', '/', '.');
        return (rest, phone);
    }
}
