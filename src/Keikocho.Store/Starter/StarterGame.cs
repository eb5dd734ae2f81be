using Keikocho.Core.Evening;

namespace Keikocho.Store.Starter;

/// <summary>A game of the kit.</summary>
/// <param name="Game">What a card asks of it.</param>
/// <param name="Does">How it goes.</param>
/// <param name="Safety">What to take care of, and who has looked at it.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record StarterGame(CardGame Game, string Does, SafetyLine Safety, string Source);

/// <summary>Games as a TOML text: docs/formats/starter.md.</summary>
public static class GamesText
{
    private static readonly WordList<GameContact> Contacts = new(("none", GameContact.None), ("touch", GameContact.Touch), ("hold", GameContact.Hold));

    /// <summary>Reads the games; all of them or none.</summary>
    public static TextReading<IReadOnlyList<StarterGame>> Read(string text, string fileName) => WholeFile.Read<IReadOnlyList<StarterGame>>(text, fileName, Games);

    private static IReadOnlyList<StarterGame> Games(Fields file)
    {
        var games = new List<StarterGame>();
        foreach (var block in file.Blocks("game") ?? [])
        {
            var game = Game(block);
            if (games.Any(g => g.Game.Name == game.Game.Name)) block.Fault("name", $"{game.Game.Name} is there twice; take one out.");
            games.Add(game);
        }

        if (games.Count == 0) file.Fault("game", "There is no game; write one that begins with [[game]].");
        return games;
    }

    private static StarterGame Game(Fields block)
    {
        var (least, most) = (SyllabusReader.NeededNumber(block, "least-children", least: 1, most: 200), SyllabusReader.NeededNumber(block, "most-children", least: 1, most: 200));
        if (most < least) block.Fault("most-children", "This is fewer than the least; write a larger number.");
        var game = new CardGame(
            block.Needed("name"), least, most, SyllabusReader.NeededNumber(block, "square-metres-a-child", least: 1, most: 50),
            block.NeededWord("contact", Contacts), block.Truth("falls"), block.Needed("clears"));
        var read = new StarterGame(game, block.Needed("does"), Safety(block), block.Needed("source"));
        block.NothingElse();
        return read;
    }

    private static SafetyLine Safety(Fields block)
    {
        if (block.Block("safety") is not { } line)
        {
            if (!block.Has("safety")) block.Fault("safety", "This is missing; write { text = \"...\", status = \"not reviewed by a graded instructor\" }.");
            return new SafetyLine("", "");
        }

        var read = new SafetyLine(line.Needed("text"), line.Needed("status"));
        line.NothingElse();
        return read;
    }
}
