namespace Keikocho.Store.People;

/// <summary>Someone to ring about a child, as typed; blank where not known.</summary>
/// <param name="ContactId">Made when the form was shown, so that a form sent twice adds one contact; or the contact that is changed.</param>
/// <param name="PersonId">The child.</param>
/// <param name="Name">Name.</param>
/// <param name="Relation">Mother, father, carer ...</param>
/// <param name="Phone">Telephone number as it was given.</param>
/// <param name="Barred">True where this contact may not collect the child.</param>
public sealed record ContactDetails(Guid ContactId, Guid PersonId, string? Name, string? Relation, string? Phone, bool Barred);

/// <summary>A rank as it is entered for one person.</summary>
/// <param name="PersonId">Who wears it.</param>
/// <param name="RankId">The rank.</param>
/// <param name="On">The day it was given; null where only the rank is known.</param>
/// <param name="Source">How the club knows.</param>
/// <param name="Replaces">A wrong award that it takes the place of; null for none.</param>
public sealed record NewRank(Guid PersonId, Guid RankId, DateOnly? On, Promotion.AwardSource Source, Guid? Replaces = null);

/// <summary>What came of recording a rank.</summary>
public enum RankOutcome
{
    /// <summary>Recorded.</summary>
    Recorded,
    /// <summary>This rank of this day stands already; nothing was changed.</summary>
    AlreadyThere,
    /// <summary>There is no such person or rank, or the award to be replaced is not a standing one of this person on this ladder.</summary>
    Unknown,
}
