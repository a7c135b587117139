package kerfbook.exposure;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import kerfbook.campaign.Area;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/** Rate in an area against the level of the water in the pool, everything else as it stands that day. */
public final class WaterLevels {
    private static final double STEP_MM = 0.5;

    /**
     * @param on     day; left out: the first of the campaign
     * @param fromMm lowest level, against the normal water surface
     * @param steps  number of levels, 2 to 101
     */
    public record Question(String area, Optional<LocalDate> on, double fromMm, double toMm, int steps) {
        public Question {
            Require.code(area, "area");
            on = Require.optional(on);
            on.ifPresent(day -> Require.day(day, "on"));
            Require.within(fromMm, -50_000, 20_000, "from_mm", "mm");
            Require.within(toMm, -50_000, 20_000, "to_mm", "mm");
            if (!(toMm > fromMm)) {
                throw new Invalid("to_mm", "must be above from_mm: " + toMm + " ≤ " + fromMm + " mm.");
            }
            Require.within(steps, 2, 101, "steps");
        }
    }

    /** @param usvPerH background included */
    public record At(double levelMm, double usvPerH, boolean extrapolated) { }

    /**
     * @param lowestLevelMm lowest level within the range that keeps the ceiling; absent without a ceiling, or if the highest level
     *                      does not keep it or the lowest does
     * @param ceilingKept   not-needed: at every level of the range; found: from the lowest level on; not-reached: not even at the highest
     */
    public record Answer(String area, LocalDate on, double levelNowMm, double backgroundUsvPerH, Optional<Double> ceilingUsvPerH,
                         Optional<Outcome> ceilingKept, Optional<Double> lowestLevelMm, List<At> levels, List<String> notes) { }

    private static final List<String> NOTES = List.of(
        "Only the water moves: pieces on the hook and activity in the water stay where they are. Below its own top a source stands out of the water.");

    private WaterLevels() { }

    public static Answer of(CampaignRates rates, Question question) {
        Area area = rates.area(question.area());
        rates.pool().requireLevel(question.fromMm(), "from_mm");
        rates.pool().requireLevel(question.toMm(), "to_mm");
        LocalDate on = question.on().orElse(rates.campaign().settings().start());
        Situation now = rates.situation(on);
        List<At> levels = new ArrayList<>();
        for (int i = 0; i < question.steps(); i++) {
            double level = question.fromMm() + i * (question.toMm() - question.fromMm()) / (question.steps() - 1);
            CalculatedRate rate = rates.at(area, now.around(rates.layers(on, level)));
            levels.add(new At(level, area.backgroundUsvPerH() + rate.usvPerH(), rate.extrapolated()));
        }
        Optional<Outcome> kept = area.ceilingUsvPerH().map(ceiling -> outcome(levels, ceiling));
        DoubleUnaryOperator down = level -> rates.withBackground(area, now.around(rates.layers(on, level)));
        Optional<Double> lowest = kept.filter(outcome -> outcome == Outcome.FOUND).map(found ->
            Bisection.least(down, area.ceilingUsvPerH().orElseThrow(), question.fromMm(), question.toMm(), STEP_MM));
        return new Answer(area.code(), on, rates.pool().waterLevelMm(), area.backgroundUsvPerH(), area.ceilingUsvPerH(), kept, lowest, levels,
            NOTES);
    }

    private static Outcome outcome(List<At> rising, double ceiling) {
        if (rising.get(0).usvPerH() <= ceiling) {
            return Outcome.NOT_NEEDED;
        }
        return rising.get(rising.size() - 1).usvPerH() <= ceiling ? Outcome.FOUND : Outcome.NOT_REACHED;
    }
}
