using Keikocho.Store.Hall;

namespace Keikocho.App.Shared;

/// <summary>From where a request looks: which kind of device, in whose role. Pages leave out what is not for it.</summary>
/// <param name="Device">The kind of device.</param>
/// <param name="Role">The roles it may see as.</param>
/// <param name="Join">The evening it has joined; null on the laptop.</param>
public sealed record SeenAs(Device Device, Role Role, JoinRow? Join)
{
    /// <summary>The laptop itself. Sign-in comes later; until then whoever sits before it sees what any role sees.</summary>
    public static SeenAs Laptop { get; } = new(Device.Laptop, Role.Anyone, null);

    /// <summary>A tablet that has joined nothing.</summary>
    public static SeenAs Stranger { get; } = new(Device.Tablet, Role.None, null);

    /// <summary>Whether it is the laptop.</summary>
    public bool IsLaptop => Device == Device.Laptop;

    /// <summary>Whether an adult who teaches holds it.</summary>
    public bool Teaches => (Role & Role.Teaching) != 0;

    /// <summary>Whether this may see what is marked so.</summary>
    public bool May(SeenByAttribute seen)
    {
        ArgumentNullException.ThrowIfNull(seen);
        return (seen.Devices & Device) != 0 && (seen.Roles & Role) != 0;
    }

    /// <summary>From where a request looks.</summary>
    public static SeenAs Of(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        return context.Features.Get<SeenAs>() ?? (HallDoor.Is(context) ? Stranger : Laptop);
    }

    /// <summary>A tablet with its evening.</summary>
    public static SeenAs Tablet(JoinRow join)
    {
        ArgumentNullException.ThrowIfNull(join);
        return new SeenAs(Device.Tablet, join.Role == JoinRole.JuniorLeader ? Role.JuniorLeader : Role.Teaching, join);
    }
}
