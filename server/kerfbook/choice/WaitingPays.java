package kerfbook.choice;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import kerfbook.campaign.Campaign;
import kerfbook.estimate.Basis;
import kerfbook.estimate.Estimate;

/**
 * Dose saved by waiting for decay against what waiting costs: {@code years · cost + α · S(years)}, S the collective dose of the whole campaign forecast for a
 * start so many years later.
 *
 * @param bestYears least sum; 0: waiting does not pay
 */
public record WaitingPays(double costPerYear, double alphaPerPersonSv, List<Year> years, int bestYears, String sentence, List<String> notes) {
    private static final List<String> NOTES = List.of(
        "Each point is a forecast of the whole plan with its start, holidays and days before which nothing starts moved; surveys and activities stay and decay.",
        "What else changes with time is not in it: people and knowledge leave, parts corrode, rules and prices change.",
        "The value of a person-sievert and the cost of a year are the asker's; a person decides.");

    /**
     * @param savedPersonUsv against the year before
     * @param worth          α times that
     * @param pays           worth is at least the cost of the year
     * @param total          cost of waiting and valued dose together
     */
    public record Year(int years, LocalDate start, double personUsv, double savedPersonUsv, double worth, boolean pays, double total) { }

    /** @throws kerfbook.quantity.Invalid if the plan cannot be moved that far */
    public static WaitingPays of(Campaign campaign, Basis basis, int most, double costPerYear, double alphaPerPersonSv) {
        List<Year> years = new ArrayList<>();
        int best = 0;
        double before = 0;
        for (int year = 0; year <= most; year++) {
            double usv = Estimate.of(year == 0 ? campaign : Waiting.apply(campaign, year), basis, "").totals().personUsv();
            double saved = year == 0 ? 0 : before - usv;
            double worth = saved / DoseValue.USV_PER_SV * alphaPerPersonSv;
            years.add(new Year(year, campaign.settings().start().plusYears(year), usv, saved, worth, year > 0 && worth >= costPerYear,
                year * costPerYear + usv / DoseValue.USV_PER_SV * alphaPerPersonSv));
            best = years.get(year).total() < years.get(best).total() ? year : best;
            before = usv;
        }
        return new WaitingPays(costPerYear, alphaPerPersonSv, List.copyOf(years), best, sentence(years, best, most), NOTES);
    }

    /** The same of a campaign whose work has begun: each point is still of all of it, and says so. */
    public WaitingPays begun(LocalDate asOf, double receivedUsv) {
        List<String> all = new ArrayList<>(notes);
        all.add(0, String.format(Locale.ROOT, "Every point is a forecast of the whole plan, as if nothing were done. Of it %.1f person-mSv are received as of %s: "
            + "waiting saves nothing of them any more, so that it saves less than stands here.", receivedUsv / 1000, asOf));
        return new WaitingPays(costPerYear, alphaPerPersonSv, years, bestYears, sentence + " That is of the whole plan, what is done included.", List.copyOf(all));
    }

    private static String sentence(List<Year> years, int best, int most) {
        if (best == 0) {
            return "Waiting does not pay: what decay saves is worth less than what waiting costs.";
        }
        return String.format(Locale.ROOT, "Waiting pays for %d %s%s: the dose falls from %.1f to %.1f person-mSv.", best, best == 1 ? "year" : "years",
            best == most ? ", the longest that was asked for" : " and no longer", years.get(0).personUsv() / 1000, years.get(best).personUsv() / 1000);
    }
}
