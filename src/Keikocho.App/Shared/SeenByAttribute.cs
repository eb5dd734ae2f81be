namespace Keikocho.App.Shared;

/// <summary>
/// Says who may see what stands at an address, and on which kind of device. Every page (<c>@attribute [SeenBy(...)]</c>) and every
/// endpoint (<c>.WithMetadata(new SeenByAttribute(...))</c>) carries it; the program does not start without.
/// </summary>
/// <param name="roles">The roles that may.</param>
/// <param name="devices">The devices on which they may.</param>
[AttributeUsage(AttributeTargets.Class | AttributeTargets.Method)]
public sealed class SeenByAttribute(Role roles, Device devices) : Attribute
{
    /// <summary>The roles that may.</summary>
    public Role Roles { get; } = roles;

    /// <summary>The devices on which they may.</summary>
    public Device Devices { get; } = devices;
}
