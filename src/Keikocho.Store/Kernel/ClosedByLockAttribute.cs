namespace Keikocho.Store.Kernel;

/// <summary>A sealed value that the club's lock closes and that has no other form: an archive carries its bytes, and a plain one is a fault.</summary>
[AttributeUsage(AttributeTargets.Property)]
internal sealed class ClosedByLockAttribute : Attribute;
