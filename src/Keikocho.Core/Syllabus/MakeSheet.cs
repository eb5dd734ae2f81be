namespace Keikocho.Core.Syllabus;

/// <summary>What must be shown for one rank at one test (C24, C31, C32 and every shape of a requirement).</summary>
public static class MakeSheet
{
    /// <summary>Makes the sheet.</summary>
    /// <exception cref="ArgumentException">The rank or unit is not in the edition, or the edition contradicts itself.</exception>
    public static RequirementSheet Make(SheetSnapshot snapshot) => throw new NotImplementedException();
}
