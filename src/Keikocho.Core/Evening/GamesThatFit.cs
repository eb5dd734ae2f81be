namespace Keikocho.Core.Evening;

/// <summary>Games that fit the numbers, the mat and those who play.</summary>
internal static class GamesThatFit
{
    /// <summary>Their names in the order of the list. Nobody with a stand-down plays a game with contact or falls, and nobody is left out of a game: such a game is not offered then.</summary>
    public static IReadOnlyList<string> Of(IReadOnlyList<CardGame> games, CardPlayers players) =>
        [.. games.Where(g => players.Children >= g.LeastChildren && players.Children <= g.MostChildren
            && (players.SquareMetres is not { } mat || players.Children * g.SquareMetresAChild <= mat)
            && (!players.AnybodyStoodDown || (g.Contact == GameContact.None && !g.Falls))).Select(g => g.Name)];
}
