using Keikocho.App.Shared;

namespace Keikocho.App.Tests.Shell;

public sealed class StepsTests
{
    [Fact]
    public async Task The_style_sheet_of_steps_is_the_one_that_is_made()
    {
        await using var app = await RunningApp.StartAsync();
        using var browser = app.Browser();
        Assert.Equal(Steps.StyleSheet(), await browser.GetStringAsync("/css/steps.css", TestContext.Current.CancellationToken));
    }

    [Theory]
    [InlineData(0, "0")]
    [InlineData(12.3, "12.5")]
    [InlineData(61.24, "61")]
    [InlineData(100, "100")]
    public void A_part_of_a_span_is_rounded_to_half_a_percent(double percent, string step) => Assert.Equal(step, Steps.Percent(percent));

    [Theory]
    [InlineData(-0.1)]
    [InlineData(100.1)]
    [InlineData(double.NaN)]
    public void A_part_outside_the_span_is_misuse(double percent) => Assert.Throws<ArgumentOutOfRangeException>(() => Steps.Percent(percent));
}
