using System.CommandLine;
using System.Globalization;
using Keikocho.Store.Engines;

namespace Keikocho.App.Commands;

/// <summary>
/// The part of a verb that says which club: FILE, or --database with --club. With a database, FILE is left out, so that a second name
/// moves to its place.
/// </summary>
internal sealed class ClubPlace
{
    private readonly Argument<string?> first;
    private readonly Argument<string?>? second;
    private readonly bool fileComesSecond;
    private readonly Option<string?> database = DatabaseOption();
    private readonly Option<int?> club = ClubOption();

    /// <summary>FILE alone.</summary>
    public ClubPlace(Command verb, string file)
    {
        first = Name("FILE", file);
        Add(verb);
    }

    /// <summary>FILE and another name, before or after it.</summary>
    public ClubPlace(Command verb, string file, string other, string aboutOther, bool fileComesSecond = false)
    {
        this.fileComesSecond = fileComesSecond;
        first = fileComesSecond ? Name(other, aboutOther) : Name("FILE", file);
        second = fileComesSecond ? Name("FILE", file) : Name(other, aboutOther);
        Add(verb);
    }

    /// <summary>The option that names a database.</summary>
    public static Option<string?> DatabaseOption() => new("--database")
    {
        HelpName = "TEXT",
        Description = $"A PostgreSQL database instead of a file: {EngineChoice.Example}. Better leave a password out and set PGPASSWORD",
    };

    /// <summary>The option that says which club of a database.</summary>
    public static Option<int?> ClubOption() => WholeNumberOption.Of("--club", "N", "With --database: the number of the club in it, 1 without this");

    /// <summary>Which file or which database, and the other name; opens nothing.</summary>
    /// <exception cref="WrongUsageException">One is missing or one is too many.</exception>
    public (string? File, PostgresEngine? Database, string? Other) Read(ParseResult parsed)
    {
        var (one, two) = (parsed.GetValue(first), second is null ? null : parsed.GetValue(second));
        var text = parsed.GetValue(database);
        var number = parsed.GetValue(club);
        var seeHelp = CommandLine.SeeHelp(parsed);
        if (text is null)
        {
            if (number is not null)
                throw new WrongUsageException($"--club belongs to --database; a file holds one club. {seeHelp}");
            if (one is null)
                throw new WrongUsageException($"{first.Name} is missing. {seeHelp}");
            if (second is not null && two is null)
                throw new WrongUsageException($"{second.Name} is missing. {seeHelp}");
            return fileComesSecond ? (two, null, one) : (one, null, two);
        }

        if (second is null ? one is not null : two is not null)
            throw new WrongUsageException($"Give either FILE or --database, not both. {seeHelp}");
        if (second is not null && one is null)
            throw new WrongUsageException($"{(fileComesSecond ? first : second).Name} is missing. {seeHelp}");
        return (null, EngineChoice.Database(text, number ?? 1), one);
    }

    /// <summary>A club that is there already.</summary>
    public async Task<(Engine Engine, string? Other)> OpenAsync(ParseResult parsed, CancellationToken stopping)
    {
        var (file, postgres, other) = Read(parsed);
        Engine engine = postgres is null ? EngineChoice.File(file!) : postgres;
        await EngineChoice.DemandReachableAsync(engine, stopping);
        return (engine, other);
    }

    private static Argument<string?> Name(string name, string description) =>
        new(name) { Arity = ArgumentArity.ZeroOrOne, Description = description };

    private void Add(Command verb)
    {
        verb.Arguments.Add(first);
        if (second is not null)
            verb.Arguments.Add(second);
        verb.Options.Add(database);
        verb.Options.Add(club);
    }
}

/// <summary>An option whose value is a whole number, with a sentence of our own for what is none.</summary>
internal static class WholeNumberOption
{
    public static Option<int?> Of(string name, string helpName, string description) => new(name)
    {
        HelpName = helpName,
        Description = description,
        CustomParser = given =>
        {
            if (given.Tokens.Count == 1 && int.TryParse(given.Tokens[0].Value, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number))
                return number;
            given.AddError($"{name} takes one whole number.");
            return null;
        },
    };
}
