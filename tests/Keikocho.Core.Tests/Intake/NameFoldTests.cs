using CsCheck;
using Keikocho.Core.Intake;

namespace Keikocho.Core.Tests.Intake;

public sealed class NameFoldTests
{
    [Theory]
    [InlineData("José", "jose")]
    [InlineData("Jose\u0301", "jose")]
    [InlineData("ÅKE Sørensen", "ake sorensen")]
    [InlineData("Łucja Śluza", "lucja sluza")]
    [InlineData("Groß", "gross")]
    [InlineData("O'Neill", "oneill")]
    [InlineData("O’Neill", "oneill")]
    [InlineData("Lefèvre-Écluse", "lefevre ecluse")]
    [InlineData("  van  der   Berg ", "van der berg")]
    [InlineData("Nguyễn Thị", "nguyen thi")]
    [InlineData("山田 太郎", "山田 太郎")]
    [InlineData("サトー", "サトー")]
    [InlineData("D.O.B.", "d o b")]
    [InlineData("", "")]
    public void Marks_case_hyphens_and_apostrophes_do_not_part_a_name(string name, string folded) => Assert.Equal(folded, NameFold.Fold(name));

    [Theory]
    [InlineData("Brook, Ada", "Ada Brook")]
    [InlineData("ADA BROOK", "brook ada")]
    public void The_order_of_the_words_does_not_part_a_key(string one, string other) => Assert.Equal(NameFold.Key(one), NameFold.Key(other));

    [Fact]
    public void Folding_twice_is_folding_once() => Gen.String.Sample(text => NameFold.Fold(NameFold.Fold(text)) == NameFold.Fold(text));

    [Fact]
    public void Distance_is_the_edit_distance_up_to_the_most_asked_for()
        => Gen.Select(Gen.Char['a', 'c'].Array[0, 7], Gen.Char['a', 'c'].Array[0, 7]).Sample((one, other) =>
            NameFold.Distance(new(one), new(other), 3) == Math.Min(4, Slow(one, other)));

    // The definition, by recursion.
    private static int Slow(ReadOnlySpan<char> one, ReadOnlySpan<char> other)
        => one.Length == 0 ? other.Length : other.Length == 0 ? one.Length
            : one[0] == other[0] ? Slow(one[1..], other[1..])
            : 1 + Math.Min(Slow(one[1..], other[1..]), Math.Min(Slow(one[1..], other), Slow(one, other[1..])));
}
