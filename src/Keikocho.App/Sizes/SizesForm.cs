namespace Keikocho.App.Sizes;

/// <summary>Names of the fields of sizes.</summary>
public static class SizesForm
{
    /// <summary>A child's size.</summary>
    public static string Field(Guid person) => $"size-{person:N}";

    /// <summary>That whoever typed it looked again; its value is what was looked at.</summary>
    public static string Sure(Guid person) => $"sure-{person:N}";
}
