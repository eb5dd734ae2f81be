using System.Collections.Frozen;
using static Keikocho.Core.Intake.ColumnMeaning;

namespace Keikocho.Core.Intake;

/// <summary>The headers that are recognised: English, and common ones in French, German, Dutch and Spanish. From common practice, no source.</summary>
public static class HeaderWords
{
    /// <summary>Each meaning's headers, folded (<see cref="NameFold.Fold"/>). Printed in docs/formats/import.md.</summary>
    public static IReadOnlyList<(ColumnMeaning Meaning, IReadOnlyList<string> Headers)> Table { get; } =
    [
        (GivenName, ["given name", "given names", "first name", "firstname", "forename", "forenames", "given", "prenom", "vorname", "voornaam", "nombre", "nombre de pila", "child first name", "childs first name"]),
        (FamilyName, ["family name", "surname", "last name", "lastname", "family", "nom", "nom de famille", "nachname", "familienname", "achternaam", "familienaam", "apellido", "apellidos", "child surname", "childs surname"]),
        (FullName, ["name", "full name", "child", "childs name", "child name", "name of child", "student", "students name", "student name", "judoka", "member", "member name", "nom prenom", "nom et prenom", "prenom nom", "enfant", "vor und nachname", "name vorname", "kind", "naam", "naam kind", "nombre y apellidos", "apellidos y nombre", "alumno"]),
        (CalledName, ["called", "known as", "preferred name", "nickname", "called name", "goes by", "surnom", "rufname", "spitzname", "roepnaam", "apodo"]),
        (BirthDate, ["birth date", "birthdate", "date of birth", "dob", "d o b", "born", "birthday", "birth", "date de naissance", "naissance", "ne le", "nee le", "geburtsdatum", "geboren", "geburtstag", "geb datum", "geb", "geboortedatum", "geboren op", "fecha de nacimiento", "nacimiento", "f nacimiento"]),
        (Sex, ["sex", "gender", "m f", "f m", "boy girl", "sexe", "geschlecht", "geslacht", "sexo"]),
        (Rank, ["rank", "belt", "grade", "current grade", "current rank", "current belt", "belt colour", "belt color", "kyu", "mon", "ceinture", "gurtel", "guertel", "gurtelfarbe", "kyu grad", "band", "gordel", "graad", "cinturon", "grado"]),
        (FirstClass, ["first class", "first lesson", "joined", "date joined", "joined on", "join date", "start", "started", "start date", "since", "member since", "date of joining", "inscription", "date inscription", "entree", "date entree", "eintritt", "eintrittsdatum", "beginn", "dabei seit", "lid sinds", "begonnen", "startdatum", "alta", "fecha de alta", "inicio"]),
        (LastPromotion, ["last promotion", "last grading", "last graded", "graded", "graded on", "date graded", "grading date", "promoted", "promoted on", "promotion date", "date of last grading", "dernier passage", "date ceinture", "letzte prufung", "prufung am", "prufungsdatum", "laatste examen", "examen", "ultimo examen", "fecha de grado"]),
        (ContactName, ["contact", "contact name", "parent", "parents", "parent name", "parents name", "guardian", "guardian name", "carer", "emergency contact", "emergency contact name", "responsable legal", "parent responsable", "eltern", "erziehungsberechtigte", "ansprechpartner", "kontakt", "ouder", "ouders", "contactpersoon", "padres", "tutor", "contacto"]),
        (ContactPhone, ["phone", "phone number", "telephone", "tel", "tel no", "tel number", "telephone number", "mobile", "mobile number", "mobile phone", "mob", "cell", "cell phone", "contact number", "contact phone", "contact tel", "home phone", "telefon", "telefonnummer", "handy", "mobil", "portable", "telefoon", "telefoonnummer", "gsm", "mobiel", "telefono", "movil", "tlf"]),
        (ContactEmail, ["email", "e mail", "email address", "e mail address", "mail", "contact email", "courriel", "adresse mail", "e mail adresse", "mailadresse", "emailadres", "correo", "correo electronico"]),
        (Relation, ["relation", "relationship", "relation to child", "relationship to child", "lien", "lien de parente", "verhaltnis", "beziehung", "relatie", "parentesco"]),
        (PhotoConsent, ["photo", "photos", "photo consent", "photo ok", "photos ok", "photo permission", "photographs", "pictures ok", "image consent", "media consent", "droit a l image", "autorisation photo", "foto", "fotos", "fotoerlaubnis", "fotos ok", "foto toestemming", "toestemming foto", "permiso fotos", "fotos permitidas"]),
        (RegistrationNumber, ["registration", "registration number", "registration no", "reg no", "reg number", "reg", "licence", "licence number", "licence no", "license", "license number", "license no", "membership number", "membership no", "member number", "member no", "membership id", "body number", "numero de licence", "n licence", "no licence", "passnummer", "judopass", "lizenz", "lizenznummer", "mitgliedsnummer", "licentie", "licentienummer", "bondsnummer", "lidnummer", "licencia", "numero de licencia"]),
        (RegistrationExpiry, ["expiry", "expiry date", "expires", "expires on", "valid until", "valid to", "registration expiry", "registration expires", "reg expiry", "licence expiry", "licence expires", "license expiry", "membership expiry", "membership expires", "renewal", "renewal date", "expiration", "valable jusqu au", "fin de validite", "gultig bis", "ablauf", "ablaufdatum", "geldig tot", "vervaldatum", "caducidad", "valido hasta", "vence"]),
        (Group, ["group", "class", "programme", "program", "school", "section", "squad", "groupe", "cours", "ecole", "gruppe", "klasse", "schule", "groep", "klas", "grupo", "clase", "colegio"]),
        (Notes, ["notes", "note", "comment", "comments", "remarks", "remark", "other", "remarques", "remarque", "commentaire", "bemerkung", "bemerkungen", "notiz", "notizen", "opmerking", "opmerkingen", "notas", "observaciones"]),
        (Medical, ["medical", "medical notes", "medical conditions", "medical information", "health", "health notes", "allergies", "allergy", "medication", "medicines", "asthma", "conditions", "injuries", "special needs", "additional needs", "sante", "allergie", "traitement", "certificat medical", "gesundheit", "allergien", "medikamente", "krankheiten", "medisch", "allergieen", "medicatie", "gezondheid", "salud", "alergias", "medicacion"]),
        (Size, ["weight", "weight kg", "kg", "height", "height cm", "cm", "size", "suit size", "judogi size", "gi size", "belt size", "poids", "taille", "gewicht", "grosse", "lengte", "maat", "peso", "altura", "talla"]),
        (NotRead, ["no", "nr", "num", "number", "id", "age", "alter", "leeftijd", "edad", "address", "adresse", "adres", "direccion", "anschrift", "strasse", "postcode", "post code", "zip", "plz", "city", "town", "ort", "ville", "plaats", "fees", "fee", "paid", "dues", "total", "attended", "attendance", "doctor", "gp"]),
    ];

    /// <summary>Words in a header that say whose a contact's column is, folded, and the relation they mean (empty: only a group).</summary>
    public static IReadOnlyList<(string Word, string Relation)> Whose { get; } =
    [
        ("mother", "mother"), ("mothers", "mother"), ("mum", "mother"), ("mums", "mother"), ("mom", "mother"), ("moms", "mother"), ("mere", "mother"), ("mutter", "mother"), ("moeder", "mother"), ("madre", "mother"),
        ("father", "father"), ("fathers", "father"), ("dad", "father"), ("dads", "father"), ("pere", "father"), ("vater", "father"), ("vader", "father"), ("padre", "father"),
        ("parent", "parent"), ("parents", "parent"), ("guardian", "guardian"), ("guardians", "guardian"), ("carer", "carer"), ("carers", "carer"), ("grandmother", "grandmother"), ("grandfather", "grandfather"),
        ("emergency", ""), ("contact", ""), ("second", ""), ("other", ""),
    ];

    /// <summary>Words that begin a line or head a column of totals, folded.</summary>
    public static IReadOnlyList<string> Totals { get; } =
        ["total", "totals", "sum", "count", "average", "avg", "attended", "attendance", "attendances", "present", "percent", "percentage", "rate", "number present", "grand total", "totaal", "summe", "gesamt", "anzahl", "schnitt", "somme", "moyenne", "nombre total", "aantal", "gemiddelde", "suma", "promedio", "classes", "lessons"];

    private static readonly FrozenDictionary<string, ColumnMeaning> ByHeader =
        Table.SelectMany(line => line.Headers.Select(header => (header, line.Meaning))).ToFrozenDictionary(pair => pair.header, pair => pair.Meaning, StringComparer.Ordinal);

    private static readonly FrozenDictionary<string, string> RelationOf = Whose.ToFrozenDictionary(pair => pair.Word, pair => pair.Relation, StringComparer.Ordinal);
    private static readonly FrozenSet<string> TotalWords = Totals.ToFrozenSet(StringComparer.Ordinal);

    /// <summary>Begins a line or heads a column of totals.</summary>
    public static bool IsTotal(string text) => text.Trim() is "%" or "Σ" or "#" || TotalWords.Contains(NameFold.Fold(text));

    /// <summary>What a header means; null when it is not one that is known.</summary>
    public static (ColumnMeaning Meaning, ContactOf Contact)? Meaning(string header)
    {
        ArgumentNullException.ThrowIfNull(header);
        if (header.Length > 80) return null;
        var folded = NameFold.Fold(header);
        if (folded.Length == 0) return null;
        if (ByHeader.TryGetValue(folded, out var exact)) return (exact, IsContact(exact) ? Contact(folded.Split(' ')) : default);
        var words = folded.Split(' ');

        // "Mother's mobile", "Parent 2 e-mail", "Emergency tel": take out whose it is, and see whether a contact's column is left.
        var rest = string.Join(' ', words.Where(word => !IsWhose(word)));
        if (rest.Length < folded.Length)
        {
            if (rest.Length == 0) return (ContactName, Contact(words));
            if (rest is "name") return (ContactName, Contact(words));
            if (ByHeader.TryGetValue(rest, out var inner) && (IsContact(inner) || inner is FullName)) return (inner is FullName ? ContactName : inner, Contact(words));
            if (ByHeader.TryGetValue(rest, out inner) && words.All(word => RelationOf.GetValueOrDefault(word, "") == "")) return (inner, default);
        }

        // "Date of birth (dd/mm/yyyy)", "Medical notes - private": the longest known header among the words, medical and sizes before all.
        for (var length = Math.Min(words.Length, 4); length >= 1; length--)
            foreach (var guarded in (bool[])[true, false])
                for (var from = 0; from + length <= words.Length; from++)
                {
                    if (!ByHeader.TryGetValue(string.Join(' ', words[from..(from + length)]), out var part) || part == NotRead) continue;
                    if (part is Medical or Size == guarded && (guarded || length > 1 || from == 0 || words.Length <= 3)) return (part, IsContact(part) ? Contact(words) : default);
                }
        return null;
    }

    private static bool IsContact(ColumnMeaning meaning) => meaning is ContactName or ContactPhone or ContactEmail or Relation;

    private static bool IsWhose(string word) => RelationOf.ContainsKey(word) || word.Length == 1 && char.IsAsciiDigit(word[0]);

    private static ContactOf Contact(string[] words)
    {
        var relation = words.Select(word => RelationOf.GetValueOrDefault(word, "")).FirstOrDefault(found => found.Length > 0);
        var digit = words.FirstOrDefault(word => word.Length == 1 && char.IsAsciiDigit(word[0])) ?? (words.Contains("second") || words.Contains("other") ? "2" : null);
        var group = relation is "mother" or "father" or "grandmother" or "grandfather" ? relation
            : words.Contains("emergency") ? "emergency" + (digit is null or "1" ? "" : digit)
            : digit ?? "";
        return new ContactOf(group, relation);
    }
}
