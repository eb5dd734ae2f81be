namespace Keikocho.Store.Book;

/// <summary>A person with the personal values opened; lives in memory only.</summary>
/// <param name="Id">The person.</param>
/// <param name="Given">First name; "(erased)" once erased.</param>
/// <param name="Family">Family name or its initial.</param>
/// <param name="Called">What is called on the mat, where it is not the first name.</param>
/// <param name="Born">Birth date, where known.</param>
/// <param name="SeenAdult">An adult of the club said that this person is one.</param>
/// <param name="IsErased">The personal values are gone.</param>
public sealed record BookPerson(Guid Id, string Given, string? Family, string? Called, DateOnly? Born, bool SeenAdult, bool IsErased)
{
    /// <summary>The name that is called on the mat.</summary>
    public string CallName => Called ?? Given;

    /// <summary>First name and family name, as the club writes them.</summary>
    public string FullName => Family is null ? Given : $"{Given} {Family}";
}
