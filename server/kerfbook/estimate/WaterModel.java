package kerfbook.estimate;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Component;
import kerfbook.campaign.Cut;
import kerfbook.campaign.Pool;
import kerfbook.campaign.PoolWater;
import kerfbook.cutting.CuttingTime;
import kerfbook.cutting.Removed;
import kerfbook.cutting.Technique;
import kerfbook.quantity.Incomplete;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Likely;
import kerfbook.waste.ClearWater;
import kerfbook.waste.Fines;
import kerfbook.waste.Settling;
import kerfbook.waste.Stretch;

/**
 * A campaign's pool water: what each cut releases and how long people wait for it to clear. Tool-on hours and abrasive enter as means, kerf as
 * likely; low, likely and high waits belong to low, likely and high release. Cuts of a task follow one another without the time between them,
 * so that the water is rather too cloudy than too clear.
 */
final class WaterModel {
    private static final double G_PER_KG = 1000;
    /** Cuts in a row after which one wait is as good as the next. */
    private static final int MOST_ALIKE = 1_000;
    private static final double ALIKE = 1e-9;

    private final PoolWater water;
    private final ClearWater clear;
    private final List<Double> start;
    private final Map<List<Double>, Double> known = new HashMap<>();

    /** Equal cuts with what one of them releases, g/h while the tool is on. */
    record Row(Cut cut, Technique technique, double hoursEach, Likely gPerH, boolean assumed) { }

    /** What can be said, or why nothing can. */
    record Wait(Optional<Likely> hours, String because) { }

    private WaterModel(PoolWater water, ClearWater clear) {
        this.water = water;
        this.clear = clear;
        this.start = water.sizes().stream().map(size -> size.share() * water.startGramPerM3()).toList();
    }

    /** Empty if the campaign does not describe its water. */
    static Optional<WaterModel> of(Campaign campaign) {
        return campaign.settings().pool().filter(pool -> pool.water().isPresent()).map(pool -> of(pool, pool.water().orElseThrow()));
    }

    private static WaterModel of(Pool pool, PoolWater water) {
        List<Fines.Size> sizes = new ArrayList<>();
        for (int i = 0; i < water.sizes().size(); i++) {
            PoolWater.FinesSize size = water.sizes().get(i);
            try {
                double speed = size.settlingMmPerS().orElseGet(() -> Settling.speedMmPerS(size.diameterUm().orElseThrow(), size.densityKgPerM3().orElseThrow()));
                sizes.add(new Fines.Size(size.name(), size.share(), speed, size.filterEfficiency()));
            } catch (Invalid invalid) {
                throw invalid.under("settings.pool.water.sizes[" + i + "]");
            }
        }
        return new WaterModel(water, new ClearWater(new kerfbook.waste.Pool(water.volumeM3().orElseGet(pool::waterM3), pool.lengthM() * pool.widthM(),
            water.filterM3PerH()), new Fines(sizes)));
    }

    PoolWater water() {
        return water;
    }

    ClearWater clear() {
        return clear;
    }

    /** Concentration by size before cutting. */
    List<Double> start() {
        return start;
    }

    /**
     * What the cuts release: {@code S = (kerf · suspended part + abrasive · slow part) / tool-on hours}.
     *
     * @throws Incomplete if a technique's release is not given
     */
    Row row(Cut cut, Component component, Technique technique) {
        Likely hours = CuttingTime.hours(cut.count(), cut.lengthMm(), cut.thicknessMm(), component.material(), technique);
        double kerfG = G_PER_KG * Removed.kerfKg(technique, cut.count(), cut.lengthMm(), cut.thicknessMm(), component.densityKgPerM3()).likely() * cut.metal();
        Optional<PoolWater.Release> release = water.release(technique.code());
        if (release.isEmpty() && kerfG > 0) {
            throw new Incomplete("settings.pool.water.releases", "has none for the technique \"" + technique.code()
                + "\": say what part of its kerf stays in the water");
        }
        Likely grams = release.map(each -> each.suspended().times(kerfG)).orElse(Likely.exactly(0));
        Optional<Likely> abrasive = Removed.abrasiveKg(technique, hours);
        if (abrasive.isPresent()) {
            Likely slow = release.flatMap(PoolWater.Release::slowAbrasive).orElseThrow(() -> new Incomplete("settings.pool.water.releases",
                "does not say what part of the abrasive of \"" + technique.code() + "\" stays in the water"));
            grams = grams.plus(slow.times(G_PER_KG * abrasive.get().mean()));
        }
        double all = hours.mean();
        boolean assumed = release.map(each -> each.origin().status().assumption()).orElse(false) || water.origin().status().assumption();
        return new Row(cut, technique, all / cut.count(), all > 0 ? grams.times(1 / all) : Likely.exactly(0), assumed);
    }

    /** Hours until the water is clear, over the cuts of one task. */
    Wait waitFor(Component component, List<Cut> cuts, Map<String, Technique> techniques) {
        try {
            List<Row> rows = cuts.stream().map(cut -> row(cut, component, techniques.get(cut.technique()))).toList();
            double likely = hours(rows, Likely::likely);
            return new Wait(Optional.of(new Likely(Math.min(likely, hours(rows, Likely::low)), likely, Math.max(likely, hours(rows, Likely::high)))), "");
        } catch (Invalid invalid) {
            Invalid.Fault fault = invalid.faults().get(0);
            return new Wait(Optional.empty(), fault.field() + " " + fault.detail().replaceAll("[.]$", ""));
        }
    }

    /** @throws Incomplete if the water never clears */
    double hours(List<Row> rows, ToDoubleFunction<Likely> level) {
        List<Double> key = new ArrayList<>();
        rows.forEach(row -> key.addAll(List.of((double) row.cut().count(), row.hoursEach(), level.applyAsDouble(row.gPerH()))));
        Double before = known.get(key);
        if (before == null) {
            before = balance(rows, level).waitingHours();
            known.put(key, before);
        }
        return before;
    }

    /** What all cuts and waits come to. @param waitingHours 0 where nothing is cut */
    record Balance(double waitingHours, double peakGramPerM3, double caughtG, double settledG) { }

    /** With the likely release. */
    Balance balance(List<Row> rows) {
        return balance(rows, Likely::likely);
    }

    private Balance balance(List<Row> rows, ToDoubleFunction<Likely> level) {
        Course course = new Course();
        for (Row row : rows) {
            double release = level.applyAsDouble(row.gPerH());
            if (water.waits() == PoolWater.Waits.AFTER_EACH_CUT) {
                course.each(row, release);
            } else {
                course.run(row.hoursEach() * row.cut().count(), release);
            }
        }
        if (water.waits() == PoolWater.Waits.AFTER_LAST_CUT && !rows.isEmpty()) {
            course.clear();
        }
        return new Balance(course.waited, course.peak, course.caught, course.settled);
    }

    /** Cuts and waits in a row. */
    private final class Course {
        private List<Double> now = start;
        private double waited;
        private double peak = water.startGramPerM3();
        private double caught;
        private double settled;

        /** Cut, wait, cut, wait; once two waits leave the same water, the rest are like them. */
        void each(Row row, double release) {
            for (int i = 0; i < row.cut().count(); i++) {
                List<Double> before = now;
                Course next = new Course();
                next.now = now;
                next.run(row.hoursEach(), release);
                next.clear();
                boolean alike = i > 0 && alike(before, next.now) || i == MOST_ALIKE;
                int times = alike ? row.cut().count() - i : 1;
                now = next.now;
                peak = Math.max(peak, next.peak);
                waited += times * next.waited;
                caught += times * next.caught;
                settled += times * next.settled;
                if (alike) {
                    return;
                }
            }
        }

        void run(double hours, double release) {
            Stretch stretch = clear.after(now, hours, release);
            now = stretch.end();
            peak = Math.max(peak, stretch.endGPerM3());
            caught += stretch.caughtG();
            settled += stretch.settledG();
        }

        void clear() {
            double wait = untilClear(now);
            waited += wait;
            run(wait, 0);
        }
    }

    double untilClear(List<Double> gPerM3) {
        OptionalDouble hours = clear.hoursUntil(water.limit(), gPerM3);
        if (hours.isEmpty()) {
            throw new Incomplete("settings.pool.water", "never clears to " + water.limit() + " g/m³: some fines neither settle nor are caught");
        }
        return hours.getAsDouble();
    }

    private static boolean alike(List<Double> one, List<Double> other) {
        for (int i = 0; i < one.size(); i++) {
            if (Math.abs(one.get(i) - other.get(i)) > ALIKE * Math.max(one.get(i), other.get(i))) {
                return false;
            }
        }
        return true;
    }
}
