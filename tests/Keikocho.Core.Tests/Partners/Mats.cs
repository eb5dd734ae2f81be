using Keikocho.Core.Kernel;
using Keikocho.Core.Partners;

namespace Keikocho.Core.Tests.Partners;

/// <summary>Children on a mat for the tests.</summary>
internal static class Mats
{
    public static readonly DateOnly Today = new(2026, 3, 24);

    public static readonly PartnersActivity Throwing = new("throwing", true, 15);

    public static readonly PartnersActivity TurnIns = new("turn-ins", false, 25);

    public static readonly PartnersActivity Holds = new("holds", false, 40);

    /// <summary>The id of a child by its letter.</summary>
    public static PersonId Id(char letter) => new(new Guid(letter, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0));

    public static PartnersChild Child(char letter, decimal? kilograms, int? age) =>
        new(Id(letter), letter.ToString(), letter, age, true, true, true, kilograms, Today.AddDays(-20));

    public static TwoChildren Two(string letters) => new(Id(letters[0]), Id(letters[1]));

    public static WorkedTogether Together(string letters, int ago) => new(Id(letters[0]), Id(letters[1]), ago);

    /// <summary>The worked seven: kilograms and ages; C and D apart; A with B and E with F in the last class.</summary>
    public static PartnersQuestion Seven { get; } = new(
        Today, Throwing,
        [Child('A', 24, 7), Child('B', 26, 8), Child('C', 29, 9), Child('D', 30, 9), Child('E', 33, 10), Child('F', 36, 10), Child('G', 39, 12)],
        [], KeepApart: [Two("CD")], Together: [Together("AB", 1), Together("EF", 1)], Instead: [TurnIns]);

    /// <summary>"A-B-C D-E F-G", a child with an adult as "A+Anna".</summary>
    public static string Text(Arrangement arrangement) =>
        string.Join(' ', arrangement.Groups.Select(g => string.Join('-', g.Members.Select(m => m.Name)) + (g.Adult is null ? "" : "+" + g.Adult)));

    public static PartnersAnswer Make(PartnersQuestion question)
    {
        var answer = PairsTonight.Make(question);
        Assert.Empty(PartnersCheck.Objections(question, answer));
        return answer;
    }
}
