using Keikocho.Core.Syllabus;
using Keikocho.Store.Syllabus;
using Keikocho.Testing;

namespace Keikocho.Store.Tests.Syllabus;

public sealed class EditionDocumentTests
{
    /// <summary>
    /// The file was written by the first version that published an edition, and is never written again: a change of the records that
    /// cannot read it any more would shut clubs out of their own syllabus.
    /// </summary>
    [Fact]
    public void A_document_of_the_first_version_is_still_read()
    {
        var written = File.ReadAllText(Repository.PathOf("tests/Keikocho.Store.Tests/Syllabus/edition-of-the-first-version.json"));
        Assert.Equivalent(SmallLadder.Edition, EditionDocument.Read(written), strict: true);
    }

    [Fact]
    public void An_age_rule_of_the_first_version_is_still_read()
    {
        const string written = """
            {"name":"No neck grips","belowAge":11,"ageBy":"calendarYear","items":["o-goshi"],"techniques":["Koshi-guruma"],"kinds":["strangle"],"source":"Body, page 9","sourceOn":"2025-09-01"}
            """;
        var rule = new AgeRule("No neck grips", 11, AgeBasis.CalendarYear, ["o-goshi"], ["Koshi-guruma"], [ItemKind.Strangle], "Body, page 9", new DateOnly(2025, 9, 1));
        Assert.Equivalent(rule, EditionDocument.ReadRule(written), strict: true);
    }

    [Fact]
    public void What_is_written_is_read_back()
    {
        var document = EditionDocument.Write(SmallLadder.Edition);
        Assert.Equal(document, EditionDocument.Write(EditionDocument.Read(document)));
    }

    [Fact]
    public void Every_shape_of_a_requirement_stands_in_the_document()
    {
        var shapes = SmallLadder.Edition.Ranks.SelectMany(r => r.Requirements).Select(r => r.Ask.GetType()).Distinct().Count();
        Assert.Equal(6, shapes);
    }
}
