using System.Globalization;
using Keikocho.Core.Kernel;

namespace Keikocho.Core.Attendance;

/// <summary>Where the common rate comes from.</summary>
/// <param name="Prior">The prior.</param>
/// <param name="Rule">The rule of the fit.</param>
public sealed record CommonRate(BetaPrior Prior, PriorRule Rule) : Reason
{
    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            var worth = $"attended {Number(Prior.A)} and missed {Number(Prior.B)}";
            return Prior.Source switch
            {
                PriorSource.TooFewChildren => $"Common rate: {worth}, as proposed; only {Words.Count(Prior.Children, "child", "children")} of the {Rule.LeastChildren} needed {(Prior.Children == 1 ? "has" : "have")} {Words.Count(Rule.LeastLessons, "lesson")} or more in 12 months.",
                PriorSource.AllOrNothing => $"Common rate: {worth}, as proposed; the {Prior.Children} children with enough lessons all came always, or never.",
                PriorSource.NoMoreThanChance => $"Common rate: {worth}, from {Prior.Children} children of this club who differ by no more than chance; held at {Words.Count(Rule.MostStrength, "lesson")}.",
                PriorSource.MoreThanAnyBeta => $"Common rate: {worth}, from {Prior.Children} children of this club who differ very much; held at {Words.Count(PriorRule.LeastStrength, "lesson")}.",
                _ => $"Common rate: {worth}, fitted to {Prior.Children} children of this club with {Words.Count(Rule.LeastLessons, "lesson")} or more in 12 months.",
            };
        }
    }

    private static string Number(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);
}
