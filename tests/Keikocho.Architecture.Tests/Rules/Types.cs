using System.Collections;
using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;

namespace Keikocho.Architecture.Tests.Rules;

/// <summary>Rules on types and their names. Each gives all offenders, one sentence each, in order.</summary>
internal static partial class Types
{
    private const BindingFlags All =
        BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.Instance | BindingFlags.DeclaredOnly;

    // What is no trade's word and says nothing.
    private static readonly string[] EmptyWords = ["Manager", "Helper", "Helpers", "Service", "Services", "Info", "Util", "Utils", "Utility", "Utilities"];

    private static readonly HashSet<string> MoneyWords = new(StringComparer.OrdinalIgnoreCase)
    {
        "Price", "Prices", "Fee", "Fees", "Invoice", "Invoices", "Payment", "Payments", "Paid", "Unpaid", "Dues", "Amount", "Amounts", "Money",
        "Currency", "Billing", "Subscription", "Subscriptions",
    };

    /// <summary>Types whose name ends with a word that says nothing.</summary>
    public static IReadOnlyList<string> WithEmptyNames(IEnumerable<Type> types) =>
        Sorted(types.Where(IsWritten).Where(type => EmptyWords.Contains(WordsOf(BareName(type)).LastOrDefault())).Select(NameOf));

    /// <summary>Static state that can change: fields that are not read-only, properties with a setter, public arrays and lists.</summary>
    public static IReadOnlyList<string> WithMutableStatics(IEnumerable<Type> types) =>
        Sorted(types.Where(IsWritten).SelectMany(type =>
        {
            var fields = type.GetFields(All).Where(f => f.IsStatic && !f.IsLiteral && !IsGenerated(f)).ToList();
            return fields.Where(f => !f.IsInitOnly).Select(f => $"{NameOf(type)}.{f.Name} can be changed")
                .Concat(fields.Where(f => f.IsInitOnly && !f.IsPrivate && IsMutable(f.FieldType)).Select(f => $"{NameOf(type)}.{f.Name} holds what can be changed"))
                .Concat(type.GetProperties(All).Where(p => p.SetMethod is { IsStatic: true }).Select(p => $"{NameOf(type)}.{p.Name} can be set"))
                .Concat(type.GetProperties(All).Where(p => p.GetMethod is { IsStatic: true, IsPrivate: false } && IsMutable(p.PropertyType) && IsStored(p))
                    .Select(p => $"{NameOf(type)}.{p.Name} holds what can be changed"));
        }));

    /// <summary>Public types that are neither a function's home (static), nor a value (record, read-only struct, enum), nor a contract, nor an exception.</summary>
    public static IReadOnlyList<string> NeitherFunctionsNorValues(IEnumerable<Type> types) =>
        Sorted(types.Where(type => IsWritten(type) && type.IsVisible && !IsFunctionsOrValue(type)).Select(NameOf));

    /// <summary>Identifiers with a word of money in them.</summary>
    public static IReadOnlyList<string> WithMoneyWords(IEnumerable<Type> types) =>
        Sorted(types.Where(IsWritten).SelectMany(type =>
            new[] { (Where: NameOf(type), Name: BareName(type)) }
                .Concat(type.GetMembers(All).Where(m => m is not Type && !IsGenerated(m)).Select(m => (Where: $"{NameOf(type)}.{m.Name}", m.Name)))
                .Concat(type.GetMembers(All).OfType<MethodBase>().Where(m => !IsGenerated(m))
                    .SelectMany(m => m.GetParameters().Select(p => (Where: $"{NameOf(type)}.{m.Name}({p.Name})", Name: p.Name ?? string.Empty))))
                .Where(identifier => WordsOf(identifier.Name).Any(MoneyWords.Contains))
                .Select(identifier => identifier.Where)));

    /// <summary>Pages (components with an address) that do not say who sees them.</summary>
    /// <param name="types">The types to look at.</param>
    /// <param name="attributeName">The full name of the attribute that says it.</param>
    public static IReadOnlyList<string> PagesSeenByNobodyKnowsWhom(IEnumerable<Type> types, string attributeName) =>
        Sorted(types
            .Where(type => type.CustomAttributes.Any(a => a.AttributeType.FullName == "Microsoft.AspNetCore.Components.RouteAttribute"))
            .Where(type => type.CustomAttributes.All(a => a.AttributeType.FullName != attributeName))
            .Select(NameOf));

    /// <summary>"FeesDue_2" -> Fees, Due; "DvdPDFName" -> Dvd, PDF, Name.</summary>
    internal static IEnumerable<string> WordsOf(string identifier) => Word().Matches(identifier).Select(match => match.Value);

    private static bool IsFunctionsOrValue(Type type) =>
        type.IsInterface || type.IsEnum || typeof(Delegate).IsAssignableFrom(type) || typeof(Exception).IsAssignableFrom(type)
        || typeof(Attribute).IsAssignableFrom(type)
        || (type.IsAbstract && type.IsSealed)
        || (type.IsValueType && type.IsDefined(typeof(IsReadOnlyAttribute), inherit: false))
        || type.GetMethod("<Clone>$", All) is not null;

    // Arrays, and collections that are not read-only, frozen or immutable.
    private static bool IsMutable(Type type) =>
        type.IsArray
        || (typeof(IEnumerable).IsAssignableFrom(type) && type.Namespace is "System.Collections.Generic" or "System.Collections" or "System.Collections.Concurrent"
            && !type.Name.Contains("ReadOnly", StringComparison.Ordinal) && !type.Name.StartsWith("IEnumerable", StringComparison.Ordinal));

    // A property that makes a new value at every call shares nothing.
    private static bool IsStored(PropertyInfo property) =>
        property.DeclaringType!.GetField($"<{property.Name}>k__BackingField", All) is not null;

    private static bool IsWritten(Type type) =>
        !type.Name.Contains('<', StringComparison.Ordinal) && !type.IsDefined(typeof(CompilerGeneratedAttribute), inherit: false)
        && !type.IsDefined(typeof(System.CodeDom.Compiler.GeneratedCodeAttribute), inherit: false)
        && (type.DeclaringType is null || IsWritten(type.DeclaringType));

    private static bool IsGenerated(MemberInfo member) => member.Name.Contains('<', StringComparison.Ordinal);

    private static string BareName(Type type) => type.Name.Split('`')[0];

    private static string NameOf(Type type) => type.FullName ?? type.Name;

    private static IReadOnlyList<string> Sorted(IEnumerable<string> offenders) => [.. offenders.Distinct().Order(StringComparer.Ordinal)];

    [GeneratedRegex("[A-Z]+(?![a-z])|[A-Z]?[a-z]+|[0-9]+")]
    private static partial Regex Word();
}
