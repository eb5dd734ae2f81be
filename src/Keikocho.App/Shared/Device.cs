namespace Keikocho.App.Shared;

/// <summary>What kind of device a page is seen on.</summary>
[Flags]
public enum Device
{
    /// <summary>None.</summary>
    None = 0,

    /// <summary>The club's own laptop.</summary>
    Laptop = 1,

    /// <summary>A tablet on the mat: many hands and eyes, so never a weight.</summary>
    Tablet = 2,

    /// <summary>A screen at the door where children are signed in: one child at a time.</summary>
    Desk = 4,

    /// <summary>Any of them.</summary>
    Any = Laptop | Tablet | Desk,
}
