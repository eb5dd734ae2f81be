namespace Keikocho.App.Hall;

/// <summary>An address that a tablet may still use when its evening is over: it hands in the marks it holds, and sees nothing.</summary>
[AttributeUsage(AttributeTargets.Class | AttributeTargets.Method)]
public sealed class AfterItsEveningAttribute : Attribute;
