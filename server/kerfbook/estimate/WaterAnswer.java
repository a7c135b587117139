package kerfbook.estimate;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Component;
import kerfbook.campaign.Cut;
import kerfbook.campaign.Pool;
import kerfbook.campaign.PoolWater;
import kerfbook.campaign.Settings;
import kerfbook.cutting.Technique;
import kerfbook.quantity.Incomplete;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Require;
import kerfbook.waste.ClearWater;
import kerfbook.waste.Fill;
import kerfbook.waste.Fines;
import kerfbook.waste.Stretch;

/**
 * How clear the water stays while one component is cut, and what another filter would save.
 *
 * @param shiftHours productive hours of a shift: as far as the curve goes
 * @param saved      only beside {@code other}
 */
public record WaterAnswer(String component, PoolWater.Waits waits, double shiftHours, double limitGramPerM3, Optional<Double> limitNtu, double startGramPerM3,
                          List<Size> sizes, List<CutWait> cuts, Course now, Optional<Course> other, Optional<Saved> saved) {
    private static final int POINTS = 12;
    private static final int MOST_POINTS = 400;
    private static final double G_PER_KG = 1000;

    /** @param timeConstantH left out where it neither settles nor is caught */
    public record Size(String name, double share, double settlingMmPerS, double filterEfficiency, Optional<Double> timeConstantH) { }

    /** Equal cuts; {@code waitingHours} after one of them in otherwise clear water. */
    public record CutWait(String cut, String technique, int count, double toolOnHoursEach, Likely releaseGramPerH, Likely waitingHours, boolean assumed) { }

    /** Concentration at an hour of the shift. */
    public record Point(double hour, double gramPerM3, boolean cutting) { }

    /**
     * All cuts with one filter.
     *
     * @param waitingHours over all cuts of the component
     * @param turnoverH    left out where the filter stands
     * @param caughtKg     by the filter, over all cuts and waits
     * @param elements     filter elements used up by that
     * @param points       first shift
     */
    public record Course(double filterM3PerH, double volumeM3, Optional<Double> turnoverH, Likely waitingHours, double peakGramPerM3, double caughtKg,
                         double settledKg, Optional<Likely> elements, List<Point> points) { }

    /**
     * What the other filter saves: over this component's cuts, and in the whole forecast where it counts waiting.
     *
     * @param taskHours left out, with dose and dates, where the plan cannot be forecast
     */
    public record Saved(double waitingHours, Optional<Double> taskHours, Optional<Double> personUsv, Optional<LocalDate> finish,
                        Optional<LocalDate> finishOther) { }

    /**
     * @param factor flow of another filter over the present one
     * @throws Incomplete if the plan does not say enough
     */
    public static WaterAnswer of(Campaign campaign, Basis basis, String code, Optional<Double> factor) {
        factor.ifPresent(times -> Require.within(times, 0.1, 100, "factor", ""));
        Component component = campaign.components().stream().filter(each -> each.code().equals(code)).findFirst()
            .orElseThrow(() -> new Invalid("component", "there is no component \"" + code + "\" in this campaign."));
        List<Cut> cuts = campaign.cuts().stream().filter(cut -> cut.component().equals(code)).toList();
        if (cuts.isEmpty()) {
            throw new Incomplete("cuts", "has none of " + code + ".");
        }
        WaterModel model = WaterModel.of(campaign).orElseThrow(() -> new Incomplete("settings.pool.water", "is missing. Describe the pool's water and its filter."));
        Map<String, Technique> techniques = new LinkedHashMap<>();
        campaign.techniques().forEach(technique -> techniques.put(technique.code(), technique));
        List<WaterModel.Row> rows = cuts.stream().map(cut -> model.row(cut, component, techniques.get(cut.technique()))).toList();
        double shift = campaign.settings().calendar().productiveHoursPerShift();
        Course now = course(model, rows, shift);
        Optional<Campaign> changed = factor.map(times -> withFilter(campaign, times));
        Optional<Course> other = changed.map(each -> course(WaterModel.of(each).orElseThrow(), rows, shift));
        PoolWater water = model.water();
        return new WaterAnswer(code, water.waits(), shift, water.limit(), water.limitNtu(), water.startGramPerM3(), sizes(model.clear()),
            rows.stream().map(row -> alone(model, row)).toList(), now, other, changed.map(each -> saved(now, other.orElseThrow(), campaign, each, basis)));
    }

    private static CutWait alone(WaterModel model, WaterModel.Row row) {
        Cut one = new Cut(row.cut().code(), row.cut().component(), row.cut().name(), row.cut().technique(), 1, row.cut().lengthMm(), row.cut().thicknessMm(),
            row.cut().metalShare());
        return new CutWait(row.cut().code(), row.technique().code(), row.cut().count(), row.hoursEach(), row.gPerH(),
            waits(model, List.of(new WaterModel.Row(one, row.technique(), row.hoursEach(), row.gPerH(), row.assumed()))), row.assumed());
    }

    private static Likely waits(WaterModel model, List<WaterModel.Row> rows) {
        double likely = model.hours(rows, Likely::likely);
        return new Likely(Math.min(likely, model.hours(rows, Likely::low)), likely, Math.max(likely, model.hours(rows, Likely::high)));
    }

    private static List<Size> sizes(ClearWater clear) {
        List<Size> sizes = new ArrayList<>();
        for (int i = 0; i < clear.fines().sizes().size(); i++) {
            Fines.Size size = clear.fines().sizes().get(i);
            OptionalDouble constant = clear.timeConstantsH().get(i);
            sizes.add(new Size(size.name(), size.share(), size.settlingMmPerS(), size.filterEfficiency(),
                constant.isPresent() ? Optional.of(constant.getAsDouble()) : Optional.empty()));
        }
        return sizes;
    }

    /** Every cut and wait with the likely release. */
    private static Course course(WaterModel model, List<WaterModel.Row> rows, double shiftHours) {
        ClearWater clear = model.clear();
        boolean each = model.water().waits() == PoolWater.Waits.AFTER_EACH_CUT;
        Curve curve = new Curve(clear, model.start(), shiftHours);
        for (WaterModel.Row row : rows) {
            for (int i = 0; i < row.cut().count() && !curve.done(); i++) {
                curve.run(row.hoursEach(), row.gPerH().likely(), true);
                if (each) {
                    curve.run(model.untilClear(curve.now), 0, false);
                }
            }
        }
        if (!curve.done()) {
            curve.run(model.untilClear(curve.now), 0, false);
        }
        double volume = clear.pool().volumeM3();
        double flow = clear.pool().filterM3PerH();
        WaterModel.Balance balance = model.balance(rows);
        return new Course(flow, volume, flow > 0 ? Optional.of(volume / flow) : Optional.empty(), waits(model, rows), balance.peakGramPerM3(),
            balance.caughtG() / G_PER_KG, balance.settledG() / G_PER_KG, model.water().elementKg().map(kg -> Fill.of(balance.caughtG() / G_PER_KG, kg).expected()),
            List.copyOf(curve.points));
    }

    /** The curve over one shift, cut off at its end. */
    private static final class Curve {
        private final ClearWater clear;
        private final double until;
        private final List<Point> points = new ArrayList<>();
        private List<Double> now;
        private double hour;

        Curve(ClearWater clear, List<Double> start, double until) {
            this.clear = clear;
            this.now = start;
            this.until = until;
        }

        boolean done() {
            return hour >= until || points.size() > MOST_POINTS - POINTS;
        }

        void run(double hours, double gPerH, boolean cutting) {
            double shown = Math.min(hours, until - hour);
            for (int i = 0; shown > 0 && i < POINTS; i++) {
                double after = shown * i / (POINTS - 1);
                points.add(new Point(hour + after, clear.after(now, after, gPerH).endGPerM3(), cutting));
            }
            Stretch stretch = clear.after(now, hours, gPerH);
            now = stretch.end();
            hour += hours;
        }
    }

    private static Campaign withFilter(Campaign campaign, double factor) {
        Settings old = campaign.settings();
        Pool pool = old.pool().orElseThrow();
        PoolWater water = pool.water().orElseThrow();
        return campaign.with(old.with(pool.with(water.withFilter(factor * water.filterM3PerH()))));
    }

    private static Saved saved(Course now, Course other, Campaign campaign, Campaign changed, Basis basis) {
        double hours = now.waitingHours().mean() - other.waitingHours().mean();
        try {
            Forecast first = Estimate.of(campaign, basis, "");
            Forecast second = Estimate.of(changed, basis, "");
            return new Saved(hours, Optional.of(first.totals().taskHours() - second.totals().taskHours()),
                Optional.of(first.totals().personUsv() - second.totals().personUsv()), Optional.of(first.finish()), Optional.of(second.finish()));
        } catch (Incomplete notYet) {
            return new Saved(hours, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
        }
    }
}
