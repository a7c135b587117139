package kerfbook.exposure;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import kerfbook.campaign.Area;
import kerfbook.campaign.Component;
import kerfbook.campaign.Pool;
import kerfbook.campaign.Spot;
import kerfbook.quantity.Incomplete;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * The least water that has to stay over a piece while it is lifted so that an area keeps its ceiling: a hold point. Everything
 * else stands as planned when the lift begins; the component's other pieces wait in the basket.
 */
public final class LeastCover {
    private static final double STEP_MM = 0.5;
    private static final int CURVE = 25;

    /**
     * @param on             day; left out: that of the planned lift, else the first of the campaign
     * @param ceilingUsvPerH left out: that of the area
     */
    public record Question(String component, String area, Optional<LocalDate> on, Optional<Double> ceilingUsvPerH) {
        public Question {
            Require.code(component, "component");
            Require.code(area, "area");
            on = Require.optional(on);
            on.ifPresent(day -> Require.day(day, "on"));
            ceilingUsvPerH = Require.optional(ceilingUsvPerH);
            ceilingUsvPerH.ifPresent(ceiling -> Require.positive(ceiling, 1e9, "ceiling_usv_per_h", "µSv/h"));
        }
    }

    /** @param usvPerH all that stands and the piece, background included */
    public record At(double coverMm, double usvPerH) { }

    /**
     * @param othersUsvPerH    without the piece, background included
     * @param outcome          not-needed: even just under the surface the ceiling is kept; not-reached: no depth of the pool is enough
     * @param leastCoverMm     rounded up to a whole mm; absent if not reached
     * @param usvPerH          rate with that cover
     * @param plannedCoverMm   of the task that lifts it, if one does
     * @param plannedUsvPerH   rate with that
     */
    public record Answer(String component, String area, LocalDate on, double ceilingUsvPerH, double backgroundUsvPerH, double othersUsvPerH,
                         Outcome outcome, Optional<Double> leastCoverMm, Optional<Double> usvPerH, Optional<Double> plannedCoverMm,
                         Optional<Double> plannedUsvPerH, boolean extrapolated, List<At> covers, List<String> notes) { }

    private LeastCover() { }

    public static Answer of(CampaignRates rates, Question question) {
        Component component = rates.component(question.component());
        Area area = rates.area(question.area());
        Pool pool = rates.pool();
        Spot hook = pool.hook().orElseThrow(() -> new Incomplete("settings.pool.hook", "is missing: nothing says where pieces are lifted."));
        double ceiling = question.ceilingUsvPerH().or(area::ceilingUsvPerH).orElseThrow(() -> new Invalid("ceiling_usv_per_h",
            "is missing: " + area.code() + " has no ceiling of its own."));
        Optional<Timeline.Lift> planned = rates.timeline().lifts().stream().filter(lift -> lift.component().equals(component.code())).findFirst();
        LocalDate on = question.on().or(() -> planned.map(lift -> rates.dayOf(lift.fromHour()))).orElse(rates.campaign().settings().start());
        Situation others = others(rates, component, on, question.on().isEmpty() ? planned : Optional.empty());
        double without = rates.withBackground(area, others);
        DoubleUnaryOperator rate = cover -> without + piece(rates, area, others, rates.geometry().onHook(component, hook, pool.waterLevelMm(), cover)).usvPerH();
        PlacedSource atSurface = rates.geometry().onHook(component, hook, pool.waterLevelMm(), 0);
        double height = -2 * (atSurface.geometry().centre().zMm() - pool.waterLevelMm());
        double deepest = Math.max(1, 1000 * pool.depthM() + pool.waterLevelMm() - height);
        Outcome outcome = rate.applyAsDouble(0) <= ceiling ? Outcome.NOT_NEEDED : rate.applyAsDouble(deepest) > ceiling ? Outcome.NOT_REACHED : Outcome.FOUND;
        Optional<Double> least = switch (outcome) {
            case FOUND -> Optional.of(Math.ceil(Bisection.least(rate, ceiling, 0, deepest, STEP_MM)));
            case NOT_NEEDED -> Optional.of(0.0);
            case NOT_REACHED -> Optional.empty();
        };
        double shown = Math.min(deepest, Math.max(1500, 1.6 * least.orElse(deepest)));
        List<At> covers = new ArrayList<>();
        for (int i = 0; i < CURVE; i++) {
            double cover = i * shown / (CURVE - 1);
            covers.add(new At(cover, rate.applyAsDouble(cover)));
        }
        RatePart there = piece(rates, area, others, rates.geometry().onHook(component, hook, pool.waterLevelMm(), least.orElse(deepest)));
        List<String> notes = new ArrayList<>(atSurface.notes());
        notes.add("A calculated cover is for planning: at the hold point the measured rate decides.");
        return new Answer(component.code(), area.code(), on, ceiling, area.backgroundUsvPerH(), without, outcome, least, least.map(rate::applyAsDouble),
            planned.map(Timeline.Lift::coverMm), planned.map(lift -> rate.applyAsDouble(lift.coverMm())), there.extrapolated(), covers, notes);
    }

    private static Situation others(CampaignRates rates, Component component, LocalDate on, Optional<Timeline.Lift> planned) {
        if (planned.isPresent()) {
            return rates.situation(on, planned.get().fromHour())
                .without(source -> source.code().equals(component.code()) && source.state() == SourceState.ON_HOOK);
        }
        Situation others = rates.situation(on).without(source -> source.code().equals(component.code()));
        if (component.pieces() == 1) {
            return others;
        }
        Pool.Basket basket = rates.pool().basket().orElseThrow(() -> new Incomplete("settings.pool.basket",
            "is missing: nothing says where the other pieces wait."));
        return others.with(rates.geometry().inBasket(component, basket, 1 - 1.0 / component.pieces()));
    }

    private static RatePart piece(CampaignRates rates, Area area, Situation others, PlacedSource piece) {
        return rates.rates().part(piece, others.layers(), rates.point(area.code()), others.on(), rates.factors(area).getOrDefault(piece.code(), 1.0));
    }
}
