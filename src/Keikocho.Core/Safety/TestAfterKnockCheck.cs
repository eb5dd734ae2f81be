namespace Keikocho.Core.Safety;

/// <summary>
/// Judges what is said of a test after a knock by walking from the day of the knock to the day of the test, and by the sum of the knock
/// asked about that very day.
/// </summary>
public static class TestAfterKnockCheck
{
    /// <summary>What is wrong, a sentence each; empty when it is right.</summary>
    /// <param name="question">What is known of the knock.</param>
    /// <param name="testOn">The test.</param>
    /// <param name="nextTestOn">The test after it.</param>
    /// <param name="answer">What is said.</param>
    public static IReadOnlyList<string> Objections(HeadKnockSnapshot question, DateOnly testOn, DateOnly? nextTestOn, WordsOnlyOrMoved? answer)
    {
        ArgumentNullException.ThrowIfNull(question);
        var objections = new List<string>();
        DateOnly[] asked = nextTestOn is { } next ? [testOn, next] : [testOn];
        var tests = HeadKnock.Reckon(question with { Tests = asked }).Tests.ToDictionary(t => t.On, t => t.WordsOnly);
        if (tests[testOn] != answer is not null) objections.Add("A test is words only exactly when the sum of the knock says so.");
        if (answer is null) return objections;
        var days = 0;
        for (var day = question.FurtherKnocks.Append(question.On).Max(); day < testOn; day = day.AddDays(1)) days++;
        if (answer.Day != days) objections.Add($"The test is on day {days}, not {answer.Day}.");
        if (answer.TestOn != testOn || answer.NextTestOn != nextTestOn) objections.Add("It names the test and the next one.");
        if (answer is { NextIsTooEarly: true } && !tests[nextTestOn!.Value]) objections.Add("The next test is not too early.");
        if (answer.Said.Contains("knock", StringComparison.OrdinalIgnoreCase)) objections.Add("The phrase for a list says no reason.");
        return objections;
    }
}
