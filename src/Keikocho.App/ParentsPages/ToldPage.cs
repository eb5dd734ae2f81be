using Keikocho.Core.Kernel;
using Keikocho.Core.Readiness;
using Keikocho.Paper.Sheets;

namespace Keikocho.App.ParentsPages;

/// <summary>A parent's page with everything that is needed to show or print it again, whatever has changed since. Its JSON is what is kept.</summary>
/// <param name="Club">Name of the club.</param>
/// <param name="Child">The child's name as the family knows it.</param>
/// <param name="SpeakTo">Whom to ask.</param>
/// <param name="TestOn">The test.</param>
/// <param name="AsOf">The evening that had just been closed.</param>
/// <param name="Page">What it says.</param>
/// <param name="Settings">The settings that the answer used.</param>
public sealed record ToldPage(
    string Club, string Child, string SpeakTo, DateOnly TestOn, DateOnly AsOf, ParentsPageAnswer Page, IReadOnlyList<SettingUsed> Settings)
{
    /// <summary>The page as it is printed.</summary>
    /// <param name="day">The day on which it was told.</param>
    public ParentsPageContent ToPaper(DateOnly day) => new(Club, Child, day, Page, SpeakTo);
}
