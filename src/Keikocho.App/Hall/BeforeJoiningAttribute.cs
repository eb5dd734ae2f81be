namespace Keikocho.App.Hall;

/// <summary>An address that a tablet reaches before it has joined: how to join, how to trust the laptop. It holds nothing of anybody.</summary>
[AttributeUsage(AttributeTargets.Class | AttributeTargets.Method)]
public sealed class BeforeJoiningAttribute : Attribute;
