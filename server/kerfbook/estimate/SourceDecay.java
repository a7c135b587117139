package kerfbook.estimate;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Map;
import kerfbook.campaign.Source;
import kerfbook.quantity.Invalid;
import kerfbook.shielding.Decay;
import kerfbook.shielding.Nuclide;

/** How a source's dose rate falls between two days. */
final class SourceDecay {
    private SourceDecay() { }

    /**
     * {@code f = Σ w_i 2^(−(t − r)/T_i) ÷ Σ w_i 2^(−(s − r)/T_i)} with w_i the nuclides' shares of the dose rate on day r, s the day of the
     * survey, t the day asked for, T_i the half-lives; 1 for a source without nuclides. Radioactive decay law; days before the survey
     * give factors above 1.
     *
     * @throws Invalid if the shares are so many half-lives away from the survey that nothing can be said about it
     */
    static double factor(Source source, LocalDate surveyedOn, LocalDate on, Map<String, Nuclide> nuclides) {
        if (source.nuclides().isEmpty()) {
            return 1;
        }
        double factor;
        try {
            factor = strength(source, on, nuclides) / strength(source, surveyedOn, nuclides);
        } catch (Invalid tooFarBack) {
            factor = Double.NaN;
        }
        if (!Double.isFinite(factor)) {
            throw new Invalid("shares_on", "is " + source.sharesOn().orElseThrow() + ", too many half-lives from the survey of " + surveyedOn
                + " to say how the source falls until " + on + ". Give shares for a day near the survey.");
        }
        return factor;
    }

    private static double strength(Source source, LocalDate on, Map<String, Nuclide> nuclides) {
        double days = ChronoUnit.DAYS.between(source.sharesOn().orElseThrow(), on);
        double strength = 0;
        for (Source.NuclideShare share : source.nuclides()) {
            strength += share.doseShare() * Decay.factor(nuclides.get(share.nuclide()).halfLifeDays(), days);
        }
        return strength;
    }
}
