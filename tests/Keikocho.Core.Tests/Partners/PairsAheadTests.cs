using System.Text.Json;
using Keikocho.Core.Kernel;
using Keikocho.Core.Partners;
using Keikocho.Testing;

namespace Keikocho.Core.Tests.Partners;

public sealed class PairsAheadTests
{
    private const string Vectors = "tests/Keikocho.Core.Tests/Fixtures/partners/repair-vectors.json";

    private static readonly JsonSerializerOptions Plain = new(JsonSerializerDefaults.Web);

    private sealed record Vector(string Says, MayWork Table, int[][] Standing, int[] Here, int Adults, int[][]? Groups);

    [Fact]
    public void The_tablets_rule_gives_what_the_shared_vectors_say()
    {
        var made = Made().ToArray();
        var lines = made.Select(v => JsonSerializer.Serialize(v, Plain));
        Golden.Check(Vectors, $"[\n{string.Join(",\n", lines)}\n]\n");
        var kept = JsonSerializer.Deserialize<Vector[]>(File.ReadAllText(Path.Combine(Command.Repository.Root, Vectors)), Plain)!;
        foreach (var vector in kept)
            Assert.Equal(vector.Groups is null ? null : Text(vector.Groups), FirstLegalRepair.Mend(vector.Table, vector.Standing, vector.Here, vector.Adults) is { } groups ? Text(groups) : null);
    }

    // Written by hand, so that the rule is held by something other than itself.
    [Theory]
    [InlineData("everybody fits, one comes", "11111 11111 11111 11111 11111", "01 23", "01234", 0, "1-0-4 2-3")]
    [InlineData("with an adult nobody changes", "11111 11111 11111 11111 11111", "01 23", "01234", 1, "0-1 2-3 4")]
    [InlineData("one leaves, the loose one joins the first pair", "111111 111111 111111 111111 111111 111111", "01 23 45", "01234", 0, "1-0-4 2-3")]
    [InlineData("the loose one fits the second pair only", "010000 100000 000110 001010 001100 000000", "01 23 45", "01234", 0, "0-1 3-2-4")]
    [InlineData("the three takes the newcomer in", "111111 111111 111111 111111 111111 111111", "012 34", "012345", 0, "0-1 2-5 3-4")]
    [InlineData("nobody fits the newcomer", "01000 10000 00010 00100 00000", "01 23", "01234", 0, null)]
    public void The_tablets_rule_is_the_first_legal_way_in_register_order(string says, string may, string standing, string here, int adults, string? wanted)
    {
        var rows = may.Split(' ');
        var full = rows.Select(r => new string('1', r.Length)).ToArray();
        int[] Digits(string text) => [.. text.Select(c => c - '0')];
        var found = FirstLegalRepair.Mend(new MayWork(rows, full[0], full), [.. standing.Split(' ').Select(Digits)], Digits(here), adults);
        Assert.True(wanted == (found is null ? null : Text(found)), $"{says}: {(found is null ? "none" : Text(found))}");
    }

    [Fact]
    public void The_tablets_repair_breaks_no_gate_and_changes_at_most_two()
    {
        for (var seed = 1UL; seed <= 150; seed++)
        {
            var question = AnyMat.Question(seed, 4 + (int)(seed % 9));
            var ahead = PairsAhead.Make(new AheadQuestion(question with { Children = [.. question.Children.SkipLast(1)] }, [.. question.Children.TakeLast(1)], []));
            var place = ahead.Register.Select((m, i) => (m.Child, i)).ToDictionary(p => p.Child, p => p.i);
            var table = ahead.Tables[0].Table;
            int[][] standing = [.. ahead.Groups.Select(g => g.Members.Select(m => place[m.Child]).ToArray())];
            foreach (var answer in ahead.Ahead)
            {
                var here = Enumerable.Range(0, place.Count).ToHashSet();
                foreach (var late in question.Children.TakeLast(1).Where(c => place.ContainsKey(c.Child)))
                {
                    if (answer.Event != AheadEvent.Comes)
                        here.Remove(place[late.Child]);
                }

                if (answer.Event == AheadEvent.Leaves)
                    here.Remove(place[answer.Child!.Value]);
                var found = FirstLegalRepair.Mend(table, standing, [.. here], question.Adults.Count);
                if (found is null)
                    continue;
                Assert.Equal(here.Order(), found.SelectMany(g => g).Order());
                Assert.All(found, g => Assert.True(g.Count == 1 ? question.Adults.Count > 0 : g.Count == 2 ? table.May[g[0]][g[1]] == '1' : table.Middle[g[1]] == '1' && table.May[g[0]][g[1]] == '1' && table.May[g[1]][g[2]] == '1' && table.Share[g[0]][g[2]] == '1'));
                Assert.True(found.Count(g => g.Count != 2) <= 1);
                string Key(IEnumerable<int> g) => string.Join('-', g);
                var now = found.Select(Key).ToHashSet();
                Assert.True(standing.Count(g => g.Any(here.Contains) && !now.Contains(Key(g))) <= 2, $"seed {seed}");

                // Where the tablet finds a way, the laptop has one with at most two changes too.
                Assert.True(answer.Groups.Count > 0 || here.Count == 0, $"seed {seed} {answer.Event} {answer.Name}");
            }
        }
    }

    [Fact]
    public void What_a_tablet_holds_has_names_and_no_size_no_cost_and_no_order_but_the_registers()
    {
        var question = Mats.Seven with { Children = [.. Mats.Seven.Children.Select(c => c with { Kilograms = c.Kilograms + 0.37m })] };
        var ahead = PairsAhead.Make(new AheadQuestion(question, [Mats.Child('H', 25.37m, 8)], ["Anna"]));
        Assert.Equal("ABCDEFGH", string.Concat(ahead.Register.Select(m => m.Name)));
        Assert.Equal(9, ahead.Ahead.Count);
        Assert.Equal("A-H B-C D-E F-G", string.Join(' ', ahead.Ahead[7].Groups.Select(g => string.Join('-', g.Members.Select(m => m.Name)))));
        Assert.Equal(["throwing", "turn-ins"], ahead.Tables.Select(t => t.Activity));
        var json = SumJson.Write(ahead);
        Assert.DoesNotContain(".37", json, StringComparison.Ordinal);
        Assert.DoesNotContain("kilo", json, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("worst", json, StringComparison.OrdinalIgnoreCase);
        Assert.Equal("01000001", ahead.Tables[0].Table.May[0]);
    }

    private static string Text(IEnumerable<IReadOnlyList<int>> groups) => string.Join(' ', groups.Select(g => string.Join('-', g)));

    private static IEnumerable<Vector> Made()
    {
        for (var seed = 1UL; seed <= 60; seed++)
        {
            var n = 3 + (int)(seed % 10);
            var question = AnyMat.Question(seed, n);
            var late = question.Children.Skip(n - 1).ToArray();
            var ahead = PairsAhead.Make(new AheadQuestion(question with { Children = [.. question.Children.Take(n - 1)] }, late, []));
            var place = ahead.Register.Select((m, i) => (m.Child, i)).ToDictionary(p => p.Child, p => p.i);
            int[][] standing = [.. ahead.Groups.Select(g => g.Members.Select(m => place[m.Child]).ToArray())];
            int[] all = [.. Enumerable.Range(0, place.Count)];
            int[] before = [.. all.Where(i => !late.Any(l => l.Child == ahead.Register[i].Child))];
            int[][] heres = [all, before, [.. before.Skip(1)], [.. before.SkipLast(1)]];
            string[] says = ["one comes", "nothing happens", "the first leaves", "the last leaves"];
            for (var h = 0; h < heres.Length; h++)
            {
                if (heres[h].Length == 0)
                    continue;
                var adults = question.Adults.Count;
                var groups = FirstLegalRepair.Mend(ahead.Tables[0].Table, standing, heres[h], adults);
                yield return new Vector($"evening {seed}, {says[h]}", ahead.Tables[0].Table, standing, heres[h], adults, groups is null ? null : [.. groups.Select(g => g.ToArray())]);
            }
        }
    }
}
