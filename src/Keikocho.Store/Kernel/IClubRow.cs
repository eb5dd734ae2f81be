namespace Keikocho.Store.Kernel;

/// <summary>A row that belongs to one club. The club's number leads every key on both engines.</summary>
public interface IClubRow
{
    /// <summary>The club's number in this database, from 1. A SQLite file holds only one club.</summary>
    int Club { get; set; }
}

/// <summary>A club's row with an id of its own; its key is (club, id).</summary>
public interface IIdRow : IClubRow
{
    /// <summary>Version-7 GUID, made where the thing was made.</summary>
    Guid Id { get; set; }
}
