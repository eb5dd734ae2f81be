namespace Keikocho.Testing;

/// <summary>Says which numbered acceptance statements a test holds; <c>docs/statements.md</c> is made from these.</summary>
[AttributeUsage(AttributeTargets.Method, AllowMultiple = true)]
public sealed class StatementAttribute(int number) : Attribute
{
    /// <summary>The statement's number, 1 to 100.</summary>
    public int Number { get; } = number;
}
