using CsCheck;
using Keikocho.Core.Names;
using Keikocho.Testing;
using static Keikocho.Core.Tests.Names.NameLists;

namespace Keikocho.Core.Tests.Names;

/// <summary>Names that lie close together are never joined, however they are written.</summary>
public sealed class NeverAGuessTests
{
    // Pairs of different throws that are one letter apart without hyphens (calculated from the list), and those two apart.
    public static TheoryData<string, string> Traps => new()
    {
        { "O-soto-gari", "Ko-soto-gari" },
        { "O-uchi-gari", "Ko-uchi-gari" },
        { "O-uchi-gaeshi", "Ko-uchi-gaeshi" },
        { "Soto-makikomi", "O-soto-makikomi" },
        { "Tai-otoshi", "Tani-otoshi" },
        { "Tsuri-goshi", "Utsuri-goshi" },
        { "Kataha-jime", "Katate-jime" },
        { "Kesa-gatame", "Kata-gatame" },
        { "Ko-soto-gari", "Ko-soto-gake" },
        { "Koshi-guruma", "Ashi-guruma" },
        { "Uki-otoshi", "Sumi-otoshi" },
        { "Uki-otoshi", "Obi-otoshi" },
        { "Uki-gatame", "Ura-gatame" },
        { "Ude-hishigi-hiza-gatame", "Ude-hishigi-hara-gatame" },
        { "Ude-hishigi-ude-gatame", "Ude-hishigi-te-gatame" },
        { "Hiza-gatame", "Hara-gatame" },
        { "Ude-gatame", "Te-gatame" },
    };

    private static readonly (string Clear, string Voiced)[] Joints =
    [
        ("harai", "barai"), ("kari", "gari"), ("kake", "gake"), ("koshi", "goshi"), ("katame", "gatame"), ("shime", "jime"),
        ("kuruma", "guruma"), ("kaeshi", "gaeshi"), ("karami", "garami"), ("hasami", "basami"),
    ];

    private static readonly Gen<KnownName> AnyListed = Pick.From<KnownName>([.. Techniques.Where(n => Listed.Contains(n.Name))]);

    // A way to write a name: system, separator, voicing of each joint, capitals.
    private static readonly Gen<(string Written, string Name)> AnyWay =
        Gen.Select(AnyListed, Pick.From(Enum.GetValues<RomajiSystem>()), Pick.From("-", "", " ", " - "), Gen.Int[0, 15], Gen.Int[0, 2], Gen.Int[0, 2])
            .Select((name, system, separator, voicing, capitals, length) =>
            {
                var elements = KanaElements.Split(name.Name, name.Kana!)!.Select(k => Romanise.Of(k, system)).ToArray();
                for (var i = 1; i < elements.Length; i++)
                {
                    if (system != RomajiSystem.Kunrei && (voicing >> i & 1) == 1)
                        elements[i] = OtherWay(elements[i]);
                }

                var written = string.Join(separator, elements);
                if (length == 1)
                    written = written.Replace("ō", "ou", StringComparison.Ordinal).Replace("ū", "uu", StringComparison.Ordinal);
                if (length == 2)
                    written = written.Replace("ō", "oh", StringComparison.Ordinal).Replace("ū", "u", StringComparison.Ordinal);
                return (capitals switch { 0 => written, 1 => written.ToUpperInvariant(), _ => char.ToUpperInvariant(written[0]) + written[1..] }, name.Name);
            });

    [Theory, MemberData(nameof(Traps)), Statement(56)]
    public void Names_a_letter_or_two_apart_are_never_joined(string one, string other)
    {
        foreach (var name in new[] { one, other })
        {
            foreach (var written in new[] { name, name.Replace("-", "", StringComparison.Ordinal), name.Replace('-', ' ').ToUpperInvariant() })
            {
                var listed = Techniques.First(n => n.Name == name).CountedAs ?? name;
                Assert.Equal(listed, Assert.IsType<NameOutcome.One>(Known.Resolve(written), exactMatch: true).Name);
            }
        }
    }

    [Fact, Statement(56)]
    public void Any_way_to_write_a_name_is_that_name() =>
        AnyWay.Sample(
            way => Known.Resolve(way.Written) is NameOutcome.One one && one.Name == way.Name,
            iter: 20_000, print: way => $"{way.Written}: {Known.Resolve(way.Written)}");

    [Fact]
    public void With_the_words_beside_them_any_way_to_write_a_name_is_never_another_name() =>
        AnyWay.Sample(
            way => Together.Resolve(way.Written) is NameOutcome.One one && one.Name == way.Name,
            iter: 5_000, print: way => $"{way.Written}: {Together.Resolve(way.Written)}");

    [Fact]
    public void One_wrong_letter_never_makes_another_name_unless_that_is_how_it_is_written() =>
        Gen.Select(AnyListed, Gen.Int[0, 40], Gen.Int[0, 2], Gen.Char['a', 'z']).Sample(
            (name, place, kind, letter) =>
            {
                var letters = name.Name.Replace("-", "", StringComparison.Ordinal).ToLowerInvariant();
                var at = place % letters.Length;
                var written = kind switch
                {
                    0 => letters.Remove(at, 1),
                    1 => letters.Insert(at, letter.ToString()),
                    _ => letters.Remove(at, 1).Insert(at, letter.ToString()),
                };
                return Known.Resolve(written) is not NameOutcome.One one || one.Name == name.Name || !one.How.Contains("letter from it", StringComparison.Ordinal);
            },
            iter: 10_000);

    // The letters that part a trap's two names, put where the names of other throws have them: ko for o and so on.
    [Fact]
    public void A_parting_letter_is_never_forgiven()
    {
        foreach (var name in Listed)
        {
            var letters = name.Replace("-", "", StringComparison.Ordinal).ToLowerInvariant();
            string[] turned =
            [
                name.StartsWith("O-", StringComparison.Ordinal) ? "k" + letters : letters,
                name.StartsWith("Ko-", StringComparison.Ordinal) ? letters[1..] : letters,
                name.StartsWith("Soto-", StringComparison.Ordinal) ? "o" + letters : letters,
            ];
            foreach (var written in turned.Where(t => t != letters))
                Assert.False(Known.Resolve(written) is NameOutcome.One one && one.Name == name, $"{written} was taken for {name}");
        }
    }

    private static string OtherWay(string element)
    {
        foreach (var (clear, voiced) in Joints)
        {
            if (element == clear)
                return voiced;
            if (element == voiced)
                return clear;
        }

        return element;
    }
}
