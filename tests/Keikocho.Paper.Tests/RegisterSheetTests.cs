using System.Globalization;
using Keikocho.Paper.Register;
using Keikocho.Testing;
using Xunit;

namespace Keikocho.Paper.Tests;

public sealed class RegisterSheetTests
{
    [Theory]
    [InlineData(0, 1)]
    [InlineData(1, 1)]
    [InlineData(30, 1)]
    [InlineData(40, 1)]
    [InlineData(80, 3)]
    public void Children_take_this_many_pages_on_A4_and_on_Letter(int children, int pages)
    {
        Assert.Equal(pages, PdfReading.PageCount(RegisterSheet.Render(Samples.Sheet(children), PaperSize.A4).Pdf));
        Assert.Equal(pages, PdfReading.PageCount(RegisterSheet.Render(Samples.Sheet(children), PaperSize.Letter).Pdf));
    }

    [Theory]
    [InlineData(41, PaperSize.A4)]
    [InlineData(45, PaperSize.Letter)]
    [InlineData(80, PaperSize.A4)]
    [InlineData(80, PaperSize.Letter)]
    public void Each_child_stands_once_and_every_page_says_which_it_is(int children, PaperSize size)
    {
        var pdf = RegisterSheet.Render(Samples.Sheet(children) with { Children = [.. Enumerable.Range(1, children).Select(i => Samples.Child(i) with { FirstName = $"<child {i}>" })] }, size).Pdf;
        var text = PdfReading.Text(pdf);
        var pages = PdfReading.PageCount(pdf);
        for (var i = 1; i <= children; i++)
            Assert.Equal(1, Occurrences(text, $"<child {i}>"));
        for (var page = 1; page <= pages; page++)
            Assert.Equal(1, Occurrences(text, string.Create(CultureInfo.InvariantCulture, $"Page {page} of {pages}")));
        Assert.Equal(pages, Occurrences(text, "Osier Quay Judo Club"));
        Assert.Equal(pages, Occurrences(text, "Tuesday 10 November 2026"));
        Assert.Equal(pages, Occurrences(text, "Collected"));
    }

    [Fact]
    public void Children_stand_in_the_order_given()
    {
        var text = PdfReading.Text(RegisterSheet.Render(Samples.Sheet(30), PaperSize.A4).Pdf);
        var at = 0;
        foreach (var child in Samples.Sheet(30).Children)
        {
            var next = text.IndexOf(child.FirstName, at, StringComparison.Ordinal);
            Assert.True(next >= at, child.FirstName);
            at = next;
        }
    }

    [Fact]
    public void Each_mark_stands_in_words()
    {
        RegisterMark[] marks =
        [
            RegisterMark.Present, RegisterMark.CameLate(new TimeOnly(17, 41)), RegisterMark.CameLate(null), RegisterMark.Left(new TimeOnly(18, 10)), RegisterMark.Left(null),
            RegisterMark.Left(new TimeOnly(18, 5), true, new TimeOnly(17, 50)), RegisterMark.ToldUs, RegisterMark.Absent, RegisterMark.NotMarked,
        ];
        string[] words = ["present", "came 17:41", "came late", "left 18:10", "left", "came 17:50, left 18:05", "absent, told us", "absent", "not marked"];
        for (var i = 0; i < marks.Length; i++)
        {
            var text = TextOf([new("Ada", null, marks[i], null, CollectionBox.NoBox)]);
            Assert.Contains(words[i] + "1 child: ", text, StringComparison.Ordinal);
        }
    }

    [Fact]
    [Statement(6)]
    public void A_register_begun_by_one_and_finished_by_another_bears_both_names()
    {
        var text = PdfReading.Text(RegisterSheet.Render(Samples.Sheet(3), PaperSize.A4).Pdf);
        Assert.Contains("Piet de Vries at 17:36 (began the register), Maren Holt at 18:52 (closed it)", text, StringComparison.Ordinal);
    }

    [Fact]
    [Statement(12)]
    public void Two_children_of_one_first_name_stand_with_their_second_part()
    {
        var text = TextOf([new("Ada", "Holt", RegisterMark.Present, null, CollectionBox.Open), new("Ada", "Lund", RegisterMark.Absent, null, CollectionBox.NoBox)]);
        Assert.Contains("Ada Holt", text, StringComparison.Ordinal);
        Assert.Contains("Ada Lund", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_child_past_its_trial_lessons_needs_the_form()
    {
        Assert.Contains("trial 3 of 3", TextOf([new("Ada", null, RegisterMark.Present, LessonNote.TrialLesson(3, 3), CollectionBox.Open)]), StringComparison.Ordinal);
        Assert.Contains("trial 4: form needed", TextOf([new("Ada", null, RegisterMark.Present, LessonNote.TrialLesson(4, 3), CollectionBox.Open)]), StringComparison.Ordinal);
        Assert.Contains("lesson 7 of 14", TextOf([new("Ada", null, RegisterMark.Present, LessonNote.FirstCourse(7, 14), CollectionBox.Open)]), StringComparison.Ordinal);
    }

    [Fact]
    public void Collection_says_check_with_the_instructor_and_no_more()
    {
        Assert.Contains("presentcheck with instructor1 child", TextOf([new("Ada", null, RegisterMark.Present, null, CollectionBox.CheckWithInstructor)]), StringComparison.Ordinal);
        Assert.Contains("present✓1 child", TextOf([new("Ada", null, RegisterMark.Present, null, CollectionBox.Collected)]), StringComparison.Ordinal);
        Assert.Contains("present1 child", TextOf([new("Ada", null, RegisterMark.Present, null, CollectionBox.Open)]), StringComparison.Ordinal);
    }

    [Fact]
    public void The_numbers_are_those_of_the_rows()
    {
        var content = Samples.Sheet(41);
        var text = PdfReading.Text(RegisterSheet.Render(content, PaperSize.A4).Pdf);
        int Rows(Func<RegisterChild, bool> which) => content.Children.Count(which);
        var sentence = string.Create(CultureInfo.InvariantCulture,
            $"41 children: {Rows(c => c.Mark.Word == RegisterWord.Present)} present, {Rows(c => c.Mark.Word == RegisterWord.Left)} left ({Rows(c => c.Mark.Late)} came late), {Rows(c => c.Mark.Word == RegisterWord.ToldUs)} absent and told us, {Rows(c => c.Mark.Word == RegisterWord.Absent)} absent, {Rows(c => c.Mark.Word == RegisterWord.NotMarked)} not marked.");
        Assert.Contains(sentence, text.Replace("not\n", "not ", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public void The_edition_stands_only_where_it_is_given()
    {
        Assert.DoesNotContain("edition", PdfReading.Text(RegisterSheet.Render(Samples.Sheet(3), PaperSize.A4).Pdf), StringComparison.OrdinalIgnoreCase);
        Assert.Contains("Syllabus edition 3", PdfReading.Text(RegisterSheet.Render(Samples.Sheet(3) with { Edition = "Syllabus edition 3" }, PaperSize.A4).Pdf), StringComparison.Ordinal);
    }

    [Fact]
    public void Many_remarks_run_on_to_further_pages()
    {
        var content = Samples.Sheet(30) with { Remarks = [.. Enumerable.Range(1, 120).Select(i => $"<remark {i}>")] };
        var pdf = RegisterSheet.Render(content, PaperSize.Letter).Pdf;
        var text = PdfReading.Text(pdf);
        Assert.True(PdfReading.PageCount(pdf) >= 3);
        Assert.All(content.Remarks, remark => Assert.Contains(remark, text, StringComparison.Ordinal));
    }

    [Fact]
    public void A_very_long_name_is_wrapped_and_not_cut()
    {
        var name = string.Join(' ', Enumerable.Range(1, 30).Select(i => $"Name{i}"));
        var text = TextOf([new(name, null, RegisterMark.Present, null, CollectionBox.Open)]);
        Assert.Equal(30, Enumerable.Range(1, 30).Count(i => text.Contains($"Name{i}", StringComparison.Ordinal)));
    }

    [Fact]
    public void What_cannot_stand_on_a_sheet_is_refused()
    {
        Assert.Throws<ArgumentNullException>(() => RegisterSheet.Render(null!, PaperSize.A4));
        Assert.Throws<ArgumentException>(() => RegisterSheet.Render(Samples.Sheet(1) with { End = new TimeOnly(17, 30) }, PaperSize.A4));
        Assert.Throws<ArgumentException>(() => RegisterSheet.Render(Samples.Sheet(1) with { AdultsNeeded = -1 }, PaperSize.A4));
        Assert.Throws<ArgumentOutOfRangeException>(() => RegisterSheet.Render(Samples.Sheet(1), (PaperSize)7));
        Assert.Throws<ArgumentException>(() => RegisterSheet.Render(Samples.Sheet(1) with { Remarks = [new string('W', 20_000)] }, PaperSize.A4));
        Assert.Throws<ArgumentException>(() => RegisterMark.Left(new TimeOnly(17, 0), true, new TimeOnly(18, 0)));
        Assert.Throws<ArgumentException>(() => RegisterMark.Left(new TimeOnly(18, 0), false, new TimeOnly(17, 0)));
        Assert.Throws<ArgumentOutOfRangeException>(() => LessonNote.TrialLesson(0, 3));
        Assert.Throws<ArgumentOutOfRangeException>(() => LessonNote.FirstCourse(1, 0));
    }

    private static string TextOf(RegisterChild[] children) =>
        PdfReading.Text(RegisterSheet.Render(Samples.Sheet(0) with { Children = children }, PaperSize.A4).Pdf);

    private static int Occurrences(string text, string part) => text.Split(part).Length - 1;
}
