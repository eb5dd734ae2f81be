namespace Keikocho.Store.Promotion;

/// <summary>A decision about a child's least time for a rank, its reason opened.</summary>
/// <param name="Id">Its id.</param>
/// <param name="PersonId">The child.</param>
/// <param name="RankId">The rank whose least time is meant.</param>
/// <param name="Percent">The share; 0 ended an earlier decision.</param>
/// <param name="Why">The reason.</param>
/// <param name="On">The day of the decision.</param>
/// <param name="ById">The instructor.</param>
/// <param name="MadeAt">When it was entered.</param>
public sealed record HeldTimeOff(Guid Id, Guid PersonId, Guid RankId, int Percent, string Why, DateOnly On, Guid ById, DateTimeOffset MadeAt);
