using System.Globalization;

namespace Keikocho.Store.Engines;

/// <summary>Ids as the values of an <c>IN (...)</c>; the list itself is never text of the statement.</summary>
internal sealed class IdList
{
    public IdList(IReadOnlyCollection<Guid> ids)
    {
        Values = [.. ids.Select((id, number) => (string.Create(CultureInfo.InvariantCulture, $"@id{number}"), (object?)id))];
        Names = string.Join(", ", Values.Select(v => v.Name));
    }

    /// <summary>The names, as they stand between the brackets.</summary>
    public string Names { get; }

    /// <summary>Names and ids.</summary>
    public IReadOnlyList<(string Name, object? Value)> Values { get; }
}
