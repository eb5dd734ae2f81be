namespace Keikocho.Core.Club;

/// <summary>Judges the list by walking back from the last lesson of each child.</summary>
public static class SlippingAwayCheck
{
    /// <summary>What is wrong with <paramref name="answer"/>, a sentence each; empty when it is right.</summary>
    public static IReadOnlyList<string> Objections(SlippingQuestion question, SlippingAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(answer);
        var objections = new List<string>();
        foreach (var child in question.Children)
        {
            var back = child.Lessons.Reverse().Where(l => l.Was != LessonWas.Excused).TakeWhile(l => l.Was == LessonWas.Missed).ToArray();
            var due = back.Length >= (child.InFirstCourse ? question.Rule.InFirstCourse : question.Rule.After);
            var line = answer.Ring.SingleOrDefault(r => r.Child == child.Child);
            if (due != line is not null) objections.Add($"{child.Child} is {(due ? "" : "not ")}to be rung.");
            if (line is null || !due) continue;
            if (line.Missed != back.Length || line.Since != back[^1].On) objections.Add($"{child.Child} missed {back.Length} running.");
            DateOnly? last = child.Lessons.Any(l => l.Was == LessonWas.There) ? child.Lessons.Where(l => l.Was == LessonWas.There).Max(l => l.On) : null;
            if (line.LastThere != last || line.InFirstCourse != child.InFirstCourse) objections.Add($"{child.Child} was last there on another day.");
        }

        for (var i = 1; i < answer.Ring.Count; i++)
        {
            var (a, b) = (answer.Ring[i - 1], answer.Ring[i]);
            if ((!a.InFirstCourse && b.InFirstCourse) || (a.InFirstCourse == b.InFirstCourse && (a.LastThere ?? DateOnly.MinValue) > (b.LastThere ?? DateOnly.MinValue)))
                objections.Add("The first course is first, then the longest silence.");
        }

        return objections;
    }
}
