namespace Keikocho.Architecture.Tests.Statements;

/// <summary>A method that carries [Statement(n)].</summary>
/// <param name="Statement">The number.</param>
/// <param name="Project">Short name of its project: "Core".</param>
/// <param name="TypeName">Its class, without the namespace.</param>
/// <param name="Method">Its name.</param>
/// <param name="IsTest">Whether it is a fact or a theory that always runs (no fixed Skip).</param>
internal sealed record CoveringTest(int Statement, string Project, string TypeName, string Method, bool IsTest);
