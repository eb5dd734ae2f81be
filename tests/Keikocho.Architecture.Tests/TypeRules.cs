using System.Reflection;
using Keikocho.Architecture.Tests.Rules;
using Keikocho.Testing;
using Xunit;

namespace Keikocho.Architecture.Tests;

public class TypeRules
{
    private static readonly Type[] Shown = typeof(Offenders).GetNestedTypes();

    private static readonly Type[] Core = Assembly.Load("Keikocho.Core").GetTypes();

    private static readonly Type[] Product =
        [.. new[] { "Keikocho.Core", "Keikocho.Store", "Keikocho.Paper", "keikocho" }.SelectMany(name => Assembly.Load(name).GetTypes())];

    [Fact]
    public void No_type_has_a_name_that_says_nothing() => Assert.Empty(Types.WithEmptyNames(Product));

    [Fact]
    public void Names_that_say_nothing_are_named() =>
        AssertNamed(["BeltHelper", "DateUtils", "HallManager", "PersonInfo", "RegisterService"], Types.WithEmptyNames(Shown));

    [Fact]
    public void The_sums_keep_no_state() => Assert.Empty(Types.WithMutableStatics(Core));

    [Fact]
    public void State_that_can_change_is_named() =>
        AssertNamed(
            [
                "State.Counter can be changed", "State.Figures holds what can be changed", "State.Kept holds what can be changed",
                "State.Today can be set", "State.last can be changed",
            ],
            Types.WithMutableStatics(Shown));

    [Fact]
    public void The_sums_are_functions_and_values() => Assert.Empty(Types.NeitherFunctionsNorValues(Core));

    [Fact]
    public void A_class_that_is_neither_function_nor_value_is_named() =>
        AssertNamed(["Changing", "HallManager", "Mutable", "OpenPage", "PagePart", "SaidPage"], Types.NeitherFunctionsNorValues(Shown));

    [Fact]
    [Statement(59)]
    public void There_is_no_money_in_the_product() => Assert.Empty(Types.WithMoneyWords(Product));

    [Fact]
    public void A_word_of_money_is_named() =>
        AssertNamed(
            [
                "Club.LessonsOf(membershipDues)", "Given..ctor(FeeInPence)", "Given.Deconstruct(FeeInPence)", "Given.FeeInPence",
                "Given.get_FeeInPence", "Given.set_FeeInPence",
            ],
            Types.WithMoneyWords(Shown));

    [Fact]
    public void Every_page_says_who_sees_it() => Assert.Empty(Types.PagesSeenByNobodyKnowsWhom(Product, SeenByRule.AttributeName));

    [Fact]
    public void A_page_that_does_not_say_who_sees_it_is_named()
    {
        AssertNamed(["OpenPage"], Types.PagesSeenByNobodyKnowsWhom(Shown, typeof(Offenders.SeenByAttribute).FullName!));
        AssertNamed(["OpenPage", "SaidPage"], Types.PagesSeenByNobodyKnowsWhom(Shown, "Keikocho.Nowhere.SeenByAttribute"));
    }

    [Fact]
    public void An_endpoint_that_does_not_say_who_sees_it_is_named() =>
        Assert.Equal(
            ["GET /open"],
            SeenByRule.EndpointsWithout(
                [("GET /open", [new object()]), ("GET /said", [new object(), new Offenders.SeenByAttribute()])],
                typeof(Offenders.SeenByAttribute).FullName!));

    private static void AssertNamed(IEnumerable<string> expected, IEnumerable<string> offenders) =>
        Assert.Equal(expected, offenders.Select(offender => offender.Replace($"{typeof(Offenders).FullName}+", "", StringComparison.Ordinal)));
}
