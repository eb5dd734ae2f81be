namespace Keikocho.Core.Kernel;

/// <summary>The two ends of the mat. Stored; the numbers never change their meaning.</summary>
public enum MatEnd
{
    /// <summary>The beginners' end.</summary>
    Beginners = 0,
    /// <summary>The main group.</summary>
    Main = 1,
}
