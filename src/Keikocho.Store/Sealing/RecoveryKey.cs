using System.Security.Cryptography;
using System.Text;

namespace Keikocho.Store.Sealing;

/// <summary>
/// The printed key that opens the lock when nobody knows the passphrase any more: seven groups of four signs by chance (140 bits) and a
/// group that catches a slip of the pen. Signs that are mistaken for each other (0 and O, 1 and I) are left out.
/// </summary>
public static class RecoveryKey
{
    private const string Signs = "23456789ABCDEFGHJKLMNPQRSTUVWXYZ";
    private const int Group = 4, Groups = 7, Length = Group * Groups;

    /// <summary>A new one, as it is printed: "7KQM-...".</summary>
    public static string Make() => Show(RandomNumberGenerator.GetString(Signs, Length));

    /// <summary>The signs of a typed one; null where a sign is none or the last group does not fit the others.</summary>
    public static string? Read(string? typed)
    {
        var text = new string([.. (typed ?? "").Where(c => !char.IsWhiteSpace(c) && c is not ('-' or '–')).Select(char.ToUpperInvariant)]);
        return text.Length == Length + Group && text.All(c => Signs.Contains(c, StringComparison.Ordinal)) && text.EndsWith(Check(text[..Length]), StringComparison.Ordinal)
            ? text[..Length]
            : null;
    }

    private static string Show(string signs) => string.Join('-', Enumerable.Range(0, Groups).Select(g => signs.Substring(g * Group, Group)).Append(Check(signs)));

    // Twenty bits of a digest: of a million slips one passes, and that one is refused by the wrapped key.
    private static string Check(string signs)
    {
        var digest = SHA256.HashData(Encoding.ASCII.GetBytes(signs));
        return new string([.. digest.Take(Group).Select(b => Signs[b % Signs.Length])]);
    }
}
