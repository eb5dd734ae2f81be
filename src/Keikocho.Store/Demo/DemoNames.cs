namespace Keikocho.Store.Demo;

/// <summary>When a child of the small demo joined.</summary>
internal enum Joined
{
    /// <summary>Before the register that the club has on file.</summary>
    BeforeTheRegister,
    /// <summary>In the first term that is on file.</summary>
    FirstTerm,
    /// <summary>In the third term.</summary>
    ThirdTerm,
    /// <summary>In the fourth term.</summary>
    FourthTerm,
    /// <summary>In the first two weeks of the present term.</summary>
    ThisTerm,
    /// <summary>Within the last two and a half weeks: a newcomer.</summary>
    Lately,
    /// <summary>Seven days ago.</summary>
    LastWeek,
    /// <summary>At the last lesson.</summary>
    LastLesson,
}

/// <summary>A child of the small demo.</summary>
internal sealed record DemoChild(string Given, string Family, int AgeFrom, int AgeTo, Joined Joined, string? Called = null);

/// <summary>
/// Invented names. Family names are made up or put together so that no pair is a person of note; the telephone numbers are from the ranges
/// that the British regulator sets aside for drama (Ofcom, "Telephone numbers for use in TV and radio drama programmes": 01632 960000 to
/// 960999 for no area, 07700 900000 to 900999 for mobiles), the addresses from the domain reserved for examples (RFC 2606).
/// </summary>
internal static class DemoNames
{
    /// <summary>The children of the juniors who are on the register now. Their order is only the order of making.</summary>
    public static readonly DemoChild[] Juniors =
    [
        new("Adam", "Brackley", 12, 12, Joined.BeforeTheRegister),
        new("Zofia", "Sokolnik", 11, 11, Joined.BeforeTheRegister),
        new("Kacper", "Sokolnik", 9, 9, Joined.BeforeTheRegister),
        new("Lily", "Hartgrave", 10, 10, Joined.BeforeTheRegister),
        new("Thomas", "Hartgrave", 12, 12, Joined.BeforeTheRegister, "Tom"),
        new("Émile", "Vautrel", 9, 9, Joined.BeforeTheRegister),
        new("Chloé", "Vautrel", 11, 11, Joined.BeforeTheRegister),
        new("Amina", "Haddoun", 10, 12, Joined.BeforeTheRegister),
        new("Oscar", "Penfold", 9, 13, Joined.BeforeTheRegister),
        new("Beatriz", "Farrobo", 10, 12, Joined.BeforeTheRegister, "Bia"),
        new("Ewan", "Strand", 11, 12, Joined.BeforeTheRegister),
        new("Daniyal", "Mirzada", 9, 13, Joined.BeforeTheRegister),
        new("Grace", "Tillingham", 12, 13, Joined.BeforeTheRegister),
        new("Søren", "Hvidbak", 9, 13, Joined.BeforeTheRegister),
        new("Harriet", "Oakesley", 9, 13, Joined.BeforeTheRegister),
        new("Jakub", "Wrzosek", 9, 13, Joined.BeforeTheRegister),
        new("Nia", "Pryddle", 9, 13, Joined.BeforeTheRegister),
        new("Finn", "Marrack", 9, 13, Joined.BeforeTheRegister),
        new("Rosa", "Estevana", 9, 12, Joined.FirstTerm),
        new("Ibrahim", "Sallouk", 8, 11, Joined.FirstTerm),
        new("Poppy", "Dunsford", 8, 12, Joined.FirstTerm),
        new("Leo", "Castellane", 8, 12, Joined.FirstTerm),
        new("Hana", "Morikage", 8, 12, Joined.FirstTerm),
        new("Maximilian", "Thornleigh", 8, 12, Joined.FirstTerm, "Max"),
        new("Elif", "Karadere", 7, 12, Joined.ThirdTerm),
        new("Theo", "Wexcombe", 7, 12, Joined.ThirdTerm),
        new("Zuri", "Mbekani", 7, 12, Joined.ThirdTerm),
        new("Alice", "Greenhow", 7, 12, Joined.ThirdTerm),
        new("Benjamin", "Pargate", 7, 12, Joined.ThirdTerm, "Ben"),
        new("Łucja", "Zielnik", 7, 12, Joined.ThirdTerm),
        new("Arjun", "Veliyath", 11, 12, Joined.FourthTerm),
        new("Evie", "Sandover", 7, 11, Joined.FourthTerm),
        new("Noah", "Ridgewell", 7, 11, Joined.FourthTerm),
        new("Sinéad", "Carrowmore", 7, 10, Joined.FourthTerm),
        new("Jack", "Tillingham", 7, 9, Joined.FourthTerm),
        new("Mei", "Tanglin", 7, 11, Joined.FourthTerm),
        new("Mia", "Fairlamb", 7, 8, Joined.ThisTerm),
        new("Mia", "Dresnik", 8, 9, Joined.ThisTerm),
        new("Adam", "Koller", 6, 8, Joined.ThisTerm),
        new("Freya", "Storrow", 6, 10, Joined.ThisTerm),
        new("Tomás", "Quintal", 6, 10, Joined.Lately),
        new("Ottilie", "Marshfold", 6, 9, Joined.Lately),
        new("Ruben", "Achterveld", 7, 10, Joined.LastWeek),
        // Walked in: a first name, an initial, an adult's telephone number; the birth date comes later.
        new("Isla", "P", 7, 7, Joined.LastLesson),
    ];

    /// <summary>The younger children of the teens. The last two came up from the juniors.</summary>
    public static readonly DemoChild[] YoungTeens =
    [
        new("Malachi", "Trewinnow", 13, 13, Joined.ThirdTerm),
        new("Katya", "Belovar", 12, 13, Joined.FourthTerm),
        new("Yusuf", "Sallouk", 12, 13, Joined.BeforeTheRegister),
        new("Aoife", "Carrowmore", 13, 13, Joined.BeforeTheRegister),
        new("Harvey", "Stannage", 13, 13, Joined.BeforeTheRegister),
    ];

    /// <summary>Junior leaders: 14 or 15, they train in the teens and help with the juniors.</summary>
    public static readonly DemoChild[] Leaders =
    [
        new("Callum", "Strand", 15, 15, Joined.BeforeTheRegister),
        new("Inês", "Farrobo", 14, 14, Joined.BeforeTheRegister),
        new("Amara", "Okelu", 15, 15, Joined.BeforeTheRegister),
    ];

    /// <summary>Children who have left.</summary>
    public static readonly DemoChild[] Gone =
    [
        new("George", "Plimsole", 9, 13, Joined.BeforeTheRegister),
        new("Maya", "Anandale", 9, 13, Joined.BeforeTheRegister),
        new("Luca", "Ferrandel", 9, 13, Joined.BeforeTheRegister),
        new("Ella", "Winterbourn", 9, 13, Joined.BeforeTheRegister),
        new("Sami", "Koivumaa", 9, 13, Joined.BeforeTheRegister),
        new("Dilan", "Yazgul", 8, 12, Joined.FirstTerm),
        new("Molly", "Greatrake", 8, 12, Joined.FirstTerm),
        new("Patrick", "Odunwo", 8, 12, Joined.FirstTerm),
        new("Ana", "Vukelja", 8, 12, Joined.FirstTerm),
        new("Charlie", "Dacey", 8, 12, Joined.FirstTerm),
        new("Rhys", "Penhollow", 8, 12, Joined.FirstTerm),
    ];

    /// <summary>The adults: head instructor, instructor, two assistants, registrar.</summary>
    public static readonly (string Given, string Family)[] Adults =
    [
        ("Ruth", "Aldersey"), ("Graham", "Pettiford"), ("Ewa", "Sokolnik"), ("Samir", "Haddoun"), ("Jean", "Thackwray"),
    ];

    /// <summary>First names for contacts and for the large club.</summary>
    public static readonly string[] Given =
    [
        "Alba", "Aled", "Anouk", "Arlo", "Astrid", "Bilal", "Bríd", "Carys", "Cem", "Chidi", "Clara", "Corin", "Dario", "Delphine", "Dunja",
        "Eira", "Elio", "Emre", "Esme", "Farah", "Felix", "Gwen", "Hamza", "Hedda", "Hugo", "Ilse", "Imani", "Ioan", "Jaya", "Joren", "Kaito",
        "Kirsten", "Lale", "Lena", "Liam", "Lotte", "Magnus", "Malika", "Marek", "Mina", "Nadia", "Niamh", "Olek", "Oona", "Otis", "Paloma",
        "Pavel", "Petra", "Rafi", "Rania", "Renzo", "Rhona", "Sakura", "Selma", "Sigrid", "Sofía", "Tariq", "Tilda", "Ugo", "Vera", "Viggo",
        "Wanda", "Yannick", "Zahra",
    ];

    /// <summary>Beginnings of made-up family names.</summary>
    public static readonly string[] FamilyHeads =
    [
        "Alder", "Amber", "Birch", "Bracken", "Bram", "Brindle", "Cobble", "Copper", "Dapple", "Elm", "Fallow", "Fern", "Flint", "Gorse", "Hazel",
        "Heather", "Holm", "Juniper", "Kestrel", "Lark", "Linden", "Mallow", "Marl", "Moss", "Orchard", "Pebble", "Quarry", "Rowan", "Sedge",
        "Thistle", "Tansy", "Yarrow",
    ];

    /// <summary>Ends of made-up family names.</summary>
    public static readonly string[] FamilyTails =
    [
        "acre", "beck", "bourne", "combe", "croft", "dale", "fold", "garth", "holt", "hurst", "leigh", "mere", "shaw", "side", "stead", "thorpe",
        "wick", "with",
    ];

    /// <summary>Order by called name: letters without their marks, then the family name; total through the number.</summary>
    public static string Key(string called, string family, int number) =>
        string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Plain(called)} {Plain(family)} {number:D6}");

    private static string Plain(string name)
    {
        const string marked = "áàâäåçéèêëíîïłñóòôöøśúùûüýźżÁÉÍŁÓØÚ";
        const string plain = "aaaaaceeeeiiilnooooosuuuuyzzAEILOOU";
        return string.Concat(name.Select(c => marked.IndexOf(c, StringComparison.Ordinal) is >= 0 and var at ? plain[at] : c)).ToUpperInvariant();
    }
}
