using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Testing;

namespace Keikocho.Core.Tests.Evening;

public sealed class CallNamesTests
{
    [Fact]
    public void A_name_that_only_one_child_has_stands_alone() =>
        Assert.Equal(["Ada", "Ben"], Names(("Ada", "Moss", "white"), ("Ben", "Moss", "white")));

    [Fact, Statement(12)]
    public void Two_children_of_one_first_name_show_a_second_part_in_every_list() =>
        Assert.Equal(["Ada M.", "Ada T."], Names(("Ada", "Moss", "white"), ("Ada", "Tarn", "white")));

    [Fact]
    public void As_much_of_the_family_name_is_shown_as_tells_them_apart() =>
        Assert.Equal(["Ada Mos.", "Ada Mor."], Names(("Ada", "Moss", "white"), ("Ada", "Morrow", "white")));

    [Fact]
    public void A_family_name_that_begins_the_other_stands_in_full() =>
        Assert.Equal(["Ada Lee", "Ada Lees."], Names(("Ada", "Lee", "white"), ("Ada", "Leeson", "white")));

    [Fact]
    public void Without_family_names_the_belt_tells_them_apart() =>
        Assert.Equal(["Ada (white)", "Ada (yellow)"], Names(("Ada", null, "white"), ("Ada", null, "yellow")));

    [Fact]
    public void With_nothing_else_they_are_numbered_in_register_order() =>
        Assert.Equal(["Ada (1)", "ada (2)"], Names(("Ada", null, "white"), ("ada", null, "white")));

    [Fact]
    public void A_letter_with_its_accent_is_one_letter() =>
        Assert.Equal(["Ada E\u0301.", "Ada T."], Names(("Ada", "E\u0301tienne", "white"), ("Ada", "Tarn", "white")));

    [Theory, Statement(12)]
    [InlineData("white", "white", true)]
    [InlineData("white", "yellow", false)]
    public void A_mark_asks_once_more_only_where_name_and_belt_match(string one, string other, bool asks) =>
        Assert.All(Show(("Ada", "Moss", one), ("Ada", "Tarn", other)), name => Assert.Equal(asks, name.BeltsMatchToo));

    [Fact]
    public void The_same_child_twice_is_a_misuse()
    {
        var child = new NamedChild(new PersonId(new Guid(1, 0, 0, new byte[8])), "Ada", null, null);
        Assert.Throws<ArgumentException>(() => CallNames.Show([child, child]));
    }

    [Fact]
    public void No_two_shown_names_are_ever_alike()
    {
        string?[] families = [null, "M", "Moss", "Moss", "Mo"];
        string?[] belts = [null, "white"];
        var register = families.SelectMany(f => belts.Select(b => ("Ada", f, b))).ToArray();
        var names = Names(register);
        Assert.Equal(names.Length, names.Distinct(StringComparer.Ordinal).Count());
    }

    private static string[] Names(params (string Name, string? Family, string? Belt)[] register) => [.. Show(register).Select(s => s.Name)];

    private static IReadOnlyList<ShownName> Show(params (string Name, string? Family, string? Belt)[] register) =>
        CallNames.Show([.. register.Select((c, i) => new NamedChild(new PersonId(new Guid(i + 1, 0, 0, new byte[8])), c.Name, c.Family, c.Belt))]);
}
