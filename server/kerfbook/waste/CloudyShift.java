package kerfbook.waste;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Require;

/**
 * Cuts one after another, each followed by the wait until the water is clear enough for the next look.
 *
 * @param cuts       stretches with the tool on, in order
 * @param waits      the wait after each, h
 * @param caughtG    by the filter, cuts and waits
 * @param settledG   on the floor
 * @param end        concentration by size after the last wait
 * @param curve      concentration over the hours, for a picture
 */
public record CloudyShift(List<Stretch> cuts, List<Double> waits, double caughtG, double settledG, List<Double> end, List<Point> curve) {
    private static final int POINTS_A_STRETCH = 24;

    /** Tool on for some hours with a release of fines. */
    public record Cutting(double hours, double releaseGPerH) {
        public Cutting {
            Require.within(hours, 0, 1e4, "hours", "h");
            Require.within(releaseGPerH, 0, 1e9, "release_g_per_h", "g/h");
        }
    }

    /** Where the curve is at an hour. */
    public record Point(double hour, double gPerM3, boolean cutting) { }

    public CloudyShift {
        cuts = List.copyOf(cuts);
        waits = List.copyOf(waits);
        end = List.copyOf(end);
        curve = List.copyOf(curve);
    }

    /**
     * @param startGPerM3 by size; {@link ClearWater#clean} for clear water
     * @param limitGPerM3 working limit at which the next cut may begin
     * @throws Invalid if the water never clears
     */
    public static CloudyShift of(ClearWater water, List<Double> startGPerM3, List<Cutting> cuttings, double limitGPerM3) {
        List<Stretch> cuts = new ArrayList<>();
        List<Double> waits = new ArrayList<>();
        List<Point> curve = new ArrayList<>();
        List<Double> now = startGPerM3;
        double hour = 0;
        double caught = 0;
        double settled = 0;
        for (Cutting cutting : Require.atLeastOne(cuttings, "cuttings")) {
            Stretch cut = water.after(now, cutting.hours(), cutting.releaseGPerH());
            points(curve, water, cut, hour, true);
            OptionalDouble wait = water.hoursUntil(limitGPerM3, cut.end());
            if (wait.isEmpty()) {
                throw new Invalid("limit_g_per_m3", "is never reached: some fines neither settle nor are caught. Give the filter flow and efficiency.");
            }
            Stretch pause = water.after(cut.end(), wait.getAsDouble(), 0);
            points(curve, water, pause, hour + cut.hours(), false);
            cuts.add(cut);
            waits.add(wait.getAsDouble());
            caught += cut.caughtG() + pause.caughtG();
            settled += cut.settledG() + pause.settledG();
            now = pause.end();
            hour += cut.hours() + pause.hours();
        }
        return new CloudyShift(cuts, waits, caught, settled, now, curve);
    }

    /**
     * Waiting in all, low to high, for an uncertain release: more fines never clear sooner, so the low release gives the low wait.
     *
     * @param releaseGPerH of every cut, see {@link Release}
     */
    public static Likely waitingHours(ClearWater water, List<Double> cutHours, Likely releaseGPerH, double limitGPerM3) {
        Require.present(releaseGPerH, "release_g_per_h");
        return new Likely(waits(water, cutHours, releaseGPerH.low(), limitGPerM3), waits(water, cutHours, releaseGPerH.likely(), limitGPerM3),
            waits(water, cutHours, releaseGPerH.high(), limitGPerM3));
    }

    private static double waits(ClearWater water, List<Double> cutHours, double releaseGPerH, double limitGPerM3) {
        List<Cutting> cuttings = Require.atLeastOne(cutHours, "cut_hours").stream().map(hours -> new Cutting(hours, releaseGPerH)).toList();
        return of(water, water.clean(), cuttings, limitGPerM3).waitingHours();
    }

    private static void points(List<Point> curve, ClearWater water, Stretch stretch, double from, boolean cutting) {
        for (int i = 0; i <= POINTS_A_STRETCH; i++) {
            double hours = stretch.hours() * i / POINTS_A_STRETCH;
            curve.add(new Point(from + hours, water.total(stretch.start(), hours, stretch.releaseGPerH()), cutting));
        }
    }

    /** All waits together, h. */
    public double waitingHours() {
        return waits.stream().mapToDouble(Double::doubleValue).sum();
    }

    /** Cuts and waits, h. */
    public double hours() {
        return cuts.stream().mapToDouble(Stretch::hours).sum() + waitingHours();
    }

    /** Highest concentration, at the end of a cut or at the start. */
    public double peakGPerM3() {
        return cuts.stream().mapToDouble(cut -> Math.max(cut.startGPerM3(), cut.endGPerM3())).max().orElseThrow();
    }
}
