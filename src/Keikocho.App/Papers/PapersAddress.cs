using Keikocho.Core.Kernel;

namespace Keikocho.App.Papers;

/// <summary>Addresses of the papers.</summary>
public static class PapersAddress
{
    /// <summary>The page.</summary>
    public const string Page = "/papers";

    /// <summary>The register of one evening.</summary>
    public const string Register = "/papers/register.pdf";

    /// <summary>The register to fill in with a pen.</summary>
    public const string Blank = "/papers/blank-register.pdf";

    /// <summary>The register of one lesson, on the club's usual paper.</summary>
    public static string RegisterOf(Guid lesson) => $"{Register}?lesson={lesson:D}";

    /// <summary>The blank register of a programme and a span, on the club's usual paper.</summary>
    public static string BlankOf(Guid programme, DateOnly from, DateOnly to) => $"{Blank}?programme={programme:D}&from={from.Iso()}&to={to.Iso()}";
}
