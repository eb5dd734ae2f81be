using CsCheck;
using Keikocho.Core.Intake;
using Keikocho.Core.Kernel;

namespace Keikocho.Core.Tests.Intake;

public sealed class DateFormsTests
{
    [Theory]
    [InlineData("2015-03-14", "2015-03-14", "2015-03-14")]
    [InlineData("2015/3/4", "2015-03-04", "2015-03-04")]
    [InlineData("2015-03-14 00:00:00", "2015-03-14", "2015-03-14")]
    [InlineData("2015-03-14T00:00:00", "2015-03-14", "2015-03-14")]
    [InlineData("20150314", "2015-03-14", "2015-03-14")]
    [InlineData("14/3/2015", "2015-03-14", null)]
    [InlineData("3/14/2015", null, "2015-03-14")]
    [InlineData("3/4/2015", "2015-04-03", "2015-03-04")]
    [InlineData("03-04-15", "2015-04-03", "2015-03-04")]
    [InlineData("3.4.2015", "2015-04-03", "2015-04-03")]
    [InlineData("14 March 2015", "2015-03-14", "2015-03-14")]
    [InlineData("14th of March, 2015", "2015-03-14", "2015-03-14")]
    [InlineData("March 14, 2015", "2015-03-14", "2015-03-14")]
    [InlineData("Sat 14 Mar 2015", "2015-03-14", "2015-03-14")]
    [InlineData("14-Mär-15", "2015-03-14", "2015-03-14")]
    [InlineData("14-Mrz-15", "2015-03-14", "2015-03-14")]
    [InlineData("1er août 2014", "2014-08-01", "2014-08-01")]
    [InlineData("3 de enero de 2014", "2014-01-03", "2014-01-03")]
    [InlineData("29/02/2016", "2016-02-29", null)]
    [InlineData("29/02/2015", null, null)]
    [InlineData("31.04.2015", null, null)]
    [InlineData("2015", null, null)]
    [InlineData("10 years", null, null)]
    public void A_text_is_the_day_it_says_both_ways(string text, string? dayFirst, string? monthFirst)
    {
        var read = DateForms.Read(Cell.OfText(text), latestYear: 2026);
        Assert.Equal((dayFirst, monthFirst), (read.DayFirst?.Iso(), read.MonthFirst?.Iso()));
    }

    [Theory]
    [InlineData("1/1/26", 2026, "2026-01-01")]
    [InlineData("1/1/27", 2026, "1927-01-01")]
    [InlineData("1/1/99", 2026, "1999-01-01")]
    [InlineData("1/1/27", 2046, "2027-01-01")]
    public void Two_digits_are_the_latest_such_year_that_is_allowed(string text, int latestYear, string day)
        => Assert.Equal(day, DateForms.Read(Cell.OfText(text), latestYear: latestYear).DayFirst?.Iso());

    [Theory]
    // ECMA-376 part 1, 18.17.4.1: in the 1900 system 1 is 1 January 1900 and 60 the day that never was; 1904: 0 is 1 January 1904. From memory.
    [InlineData(1, false, "1900-01-01")]
    [InlineData(59, false, "1900-02-28")]
    [InlineData(60, false, null)]
    [InlineData(61, false, "1900-03-01")]
    [InlineData(42077, false, "2015-03-14")]
    [InlineData(40615, true, "2015-03-14")]
    [InlineData(0, true, "1904-01-01")]
    [InlineData(0, false, null)]
    public void A_day_number_is_its_day(double serial, bool from1904, string? day) => Assert.Equal(day, DateForms.OfSerial(serial, from1904)?.Iso());

    [Fact]
    public void A_day_written_in_any_form_is_read_back()
        => Gen.DateOnly[new(1930, 1, 1), new(2026, 12, 31)].Sample(day =>
        {
            foreach (var form in new[] { "yyyy-MM-dd", "yyyyMMdd", "d MMM yyyy", "MMMM d, yyyy", "d.M.yyyy", "dddd d MMMM yyyy" })
                if (DateForms.Read(Cell.OfText(day.ToString(form, System.Globalization.CultureInfo.InvariantCulture)), latestYear: 2026) is not { IsAmbiguous: false } read || read.DayFirst != day) return false;
            var slashes = DateForms.Read(Cell.OfText($"{day.Day}/{day.Month}/{day.Year}"), latestYear: 2026);
            var swapped = DateForms.Read(Cell.OfText($"{day.Month}/{day.Day}/{day.Year}"), latestYear: 2026);
            return slashes.DayFirst == day && swapped.MonthFirst == day && slashes.IsAmbiguous == (day.Day <= 12 && day.Day != day.Month);
        });

    [Fact]
    public void Any_text_is_a_date_or_not() => Gen.String.Sample(text => { DateForms.Read(Cell.OfText(text)); });
}
