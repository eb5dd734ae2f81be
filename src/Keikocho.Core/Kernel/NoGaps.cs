namespace Keikocho.Core.Kernel;

/// <summary>Refuses a list with nothing in one of its places, which JSON allows and no sum means.</summary>
internal static class NoGaps
{
    public static void In<T>(IReadOnlyList<T> list, string what)
        where T : class
    {
        ArgumentNullException.ThrowIfNull(list, what);
        for (var i = 0; i < list.Count; i++)
        {
            if (list[i] is null)
                throw new ArgumentException($"Number {i + 1} of the {what} is empty; take it out.", what);
        }
    }
}
