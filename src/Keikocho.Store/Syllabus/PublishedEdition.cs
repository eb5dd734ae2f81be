using Keikocho.Core.Syllabus;

namespace Keikocho.Store.Syllabus;

/// <summary>A published edition in the book. Its document is opened once, when somebody first asks for it.</summary>
public sealed class PublishedEdition
{
    private readonly Lazy<Edition> edition;

    internal PublishedEdition(EditionRow row)
    {
        (Id, LadderId, Name, From) = (row.Id, row.LadderId, row.Name, row.From ?? DateOnly.MinValue);
        Changeover = row.Changeover;
        (PublishedAt, PublishedById) = (row.PublishedAt ?? DateTimeOffset.MinValue, row.PublishedById);
        edition = new Lazy<Edition>(() => EditionDocument.Read(row.Document));
    }

    /// <summary>Its id.</summary>
    public Guid Id { get; }
    /// <summary>The ladder.</summary>
    public Guid LadderId { get; }
    /// <summary>Its name on every sheet.</summary>
    public string Name { get; }
    /// <summary>First day on which it holds.</summary>
    public DateOnly From { get; }
    /// <summary>Until this day a child may still be tested by the edition before; null where this one holds for everybody at once.</summary>
    public DateOnly? Changeover { get; }
    /// <summary>When it was published.</summary>
    public DateTimeOffset PublishedAt { get; }
    /// <summary>The adult who published it.</summary>
    public Guid? PublishedById { get; }
    /// <summary>What it asks.</summary>
    public Edition Edition => edition.Value;
}

/// <summary>An age rule in the book.</summary>
public sealed class EnteredAgeRule
{
    private readonly Lazy<AgeRule> rule;

    internal EnteredAgeRule(AgeRuleRow row)
    {
        (Id, ById, MadeAt) = (row.Id, row.ById, row.MadeAt);
        rule = new Lazy<AgeRule>(() => EditionDocument.ReadRule(row.Document));
    }

    /// <summary>Its id.</summary>
    public Guid Id { get; }
    /// <summary>Who entered it.</summary>
    public Guid? ById { get; }
    /// <summary>When.</summary>
    public DateTimeOffset MadeAt { get; }
    /// <summary>The rule.</summary>
    public AgeRule Rule => rule.Value;
}
