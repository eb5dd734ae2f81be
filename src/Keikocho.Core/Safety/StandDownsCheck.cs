namespace Keikocho.Core.Safety;

/// <summary>Judges what stands by walking from day to day: each stand-down is put up on its first day and taken down by nobody but an adult.</summary>
public static class StandDownsCheck
{
    /// <summary>What is wrong with <paramref name="answer"/>, a sentence each; empty when it is right.</summary>
    public static IReadOnlyList<string> Objections(StandDownsSnapshot snapshot, StandDownsAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        ArgumentNullException.ThrowIfNull(answer);
        var up = new List<StandDown>();
        if (snapshot.StandDowns.Count > 0)
        {
            for (var day = snapshot.StandDowns.Min(s => s.From); day <= snapshot.On; day = day.AddDays(1))
            {
                up.AddRange(snapshot.StandDowns.Where(s => s.From == day));
                up.RemoveAll(s => s.LiftedOn == day && s.LiftedBy is not null && s.LiftedWhy is not null);
            }
        }

        var objections = new List<string>();
        void Expect(bool holds, string what)
        {
            if (!holds)
                objections.Add(what);
        }

        bool Has(params StandDownScope[] scopes) => up.Any(s => scopes.Contains(s.Scope));
        Expect(answer.Standing.Count == up.Count && up.All(answer.Standing.Contains), $"{up.Count} stand, not {answer.Standing.Count}.");
        Expect(answer.Standing.Zip(answer.Standing.Skip(1)).All(p => p.First.From <= p.Second.From), "What stands is listed oldest first.");
        var due = up.Where(s => s.ReviewOn is { } r && r.DayNumber <= snapshot.On.DayNumber).ToArray();
        Expect(answer.ForReview.Count == due.Length && due.All(answer.ForReview.Contains), $"{due.Length} are for review, not {answer.ForReview.Count}.");
        Expect(answer.MayFall != Has(StandDownScope.NoFalls, StandDownScope.NoContact, StandDownScope.OffTheMat), "Falls are forbidden by no falls, no contact and off the mat.");
        Expect(answer.MayHaveContact != Has(StandDownScope.NoContact, StandDownScope.OffTheMat), "Contact is forbidden by no contact and off the mat.");
        Expect(answer.MayBeOnTheMat != Has(StandDownScope.OffTheMat), "The mat is forbidden by off the mat.");
        Expect(answer.SparesTheNeck == Has(StandDownScope.SpareTheNeck), "The neck is spared under spare the neck.");
        var role = (answer.MayBeOnTheMat, answer.MayHaveContact, answer.MayFall) switch
        {
            (false, _, _) => "watches",
            (_, false, _) => "movement alone",
            (_, _, false) => "tori only",
            _ => "throws and is thrown",
        };
        Expect(answer.Role == role, $"The role is \"{role}\", not \"{answer.Role}\".");
        Expect(answer.Reasons.Count >= Math.Max(1, snapshot.StandDowns.Count), "Every stand-down has its sentence, lifted ones too.");
        return objections;
    }
}
