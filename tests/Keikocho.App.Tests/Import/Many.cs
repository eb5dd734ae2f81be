using System.Globalization;
using System.Text;

namespace Keikocho.App.Tests.Import;

/// <summary>Large lists with invented names.</summary>
internal static class Many
{
    private static readonly string[] Given = ["Ada", "Bo", "Cy", "Di", "Edda", "Finn", "Gus", "Hal", "Ida", "Jo"];
    private static readonly string[] Syllables = ["bro", "cal", "dun", "el", "far", "gar", "hol", "ing", "ker", "lam", "mor", "ned"];

    /// <summary>A roster without a doubt in it.</summary>
    public static byte[] Roster(int rows)
    {
        var text = new StringBuilder("First name,Surname,Birth date,Mum's mobile,Licence no\n");
        for (var i = 0; i < rows; i++)
        {
            var family = Syllables[i / 10 % 12] + Syllables[i / 120 % 12] + Syllables[i / 1440 % 12];
            text.Append(CultureInfo.InvariantCulture, $"{Given[i % 10]},{char.ToUpperInvariant(family[0])}{family[1..]},{new DateOnly(2013, 1, 1).AddDays(i * 7 % 2500):yyyy-MM-dd},07700 {900000 + i % 1000},L{i}\n");
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }
}
