package kerfbook.logbook;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Draws one factor's observations as running sums and as a mean that forgets, begun anew whenever something else is expected. */
final class Drift {
    /** Two stretches are told apart when their means differ by so many standard deviations of that difference: judgement, wide since the place is picked. */
    private static final double CLEARLY = 3;
    private static final String[] COUNTED = {"no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"};

    private Drift() { }

    static DriftChart of(FactorKind kind, String of, List<Observation> observations, Held held, LearningSettings settings) {
        double sigma = settings.scatter(kind);
        Cusum cusum = new Cusum(settings.alarmAllowance(), settings.alarmDecision(), 0);
        Ewma ewma = new Ewma(settings.ewmaWeight(), settings.ewmaWidth());
        List<LocalDate> breaks = held.breaks(kind, of);
        List<DriftChart.Point> points = new ArrayList<>();
        int start = 0;
        Optional<Cusum.Point> sums = Optional.empty();
        double mean = 0;
        LocalDate last = null;
        for (Observation seen : observations) {
            double centre = held.on(kind, of, seen.on()).map(AcceptedFactor::logMean).orElse(0.0);
            LocalDate before = last;
            boolean anew = before == null || breaks.stream().anyMatch(day -> day.isAfter(before) && !day.isAfter(seen.on()));
            start = anew ? points.size() : start;
            Cusum.Point next = cusum.next(anew ? Optional.empty() : sums, (seen.logRatio() - centre) / sigma);
            mean = ewma.next(anew ? centre : mean, seen.logRatio());
            points.add(new DriftChart.Point(seen.on(), seen.about(), seen.actual(), seen.forecast(), seen.actual() / seen.forecast(), seen.logRatio(),
                centre, next.high(), next.low(), mean, anew && before != null, next.highAlarm(), next.lowAlarm(),
                Math.abs(mean - centre) > ewma.limit(sigma)));
            sums = Optional.of(next);
            last = seen.on();
        }
        String unit = kind == FactorKind.RATE ? "shift" : "task";
        int running = running(points);
        boolean alarm = !points.isEmpty() && (points.get(points.size() - 1).highAlarm() || points.get(points.size() - 1).lowAlarm());
        return new DriftChart(kind, of, unit, sigma, settings.alarmDecision(), ewma.limit(sigma), List.copyOf(points), running, alarm,
            alarm ? changed(points.subList(start, points.size()), sigma, settings.fewest()) : Optional.empty(), words(points, running, unit));
    }

    /**
     * The day that parts the points best: where {@code n_1·n_2/(n_1 + n_2)·(mean_2 − mean_1)²} is largest, the most likely place of one jump
     * between normal values of one spread. None where the two parts do not lie clearly apart.
     */
    private static Optional<LocalDate> changed(List<DriftChart.Point> points, double sigma, int fewest) {
        Optional<LocalDate> best = Optional.empty();
        double most = CLEARLY * CLEARLY * sigma * sigma;
        int all = points.size();
        double[] upTo = new double[all + 1];        // in their own order, so that nothing hangs on how they came
        for (int i = 0; i < all; i++) {
            upTo[i + 1] = upTo[i] + points.get(i).logRatio();
        }
        for (int i = fewest; i <= all - fewest; i++) {
            double apart = (upTo[all] - upTo[i]) / (all - i) - upTo[i] / i;
            double weight = apart * apart * i * (all - i) / all;
            if (weight > most) {
                most = weight;
                best = Optional.of(points.get(i).on());
            }
        }
        return best;
    }

    /** Points in a row, up to the last, on the same side of what was expected; counted from where the sums began. */
    private static int running(List<DriftChart.Point> points) {
        int running = 0;
        for (int i = points.size() - 1; i >= 0; i--) {
            double side = Math.signum(points.get(i).logRatio() - points.get(i).centre());
            if (side == 0 || running != 0 && side != Math.signum(running)) {
                break;
            }
            running += (int) side;
            if (points.get(i).restarted()) {
                break;
            }
        }
        return running;
    }

    private static String words(List<DriftChart.Point> points, int running, String unit) {
        if (points.isEmpty()) {
            return "Nothing to judge yet.";
        }
        DriftChart.Point last = points.get(points.size() - 1);
        int count = Math.abs(running);
        String side = running > 0 ? "above" : "below";
        String run = count == 0 ? "The last " + unit + " was as estimated."
            : count == 1 ? "The last " + unit + " was " + side + " the estimate." : sentence(counted(count)) + " " + unit + "s running " + side + " the estimate.";
        if (!last.highAlarm() && !last.lowAlarm()) {
            return run + " No alarm.";
        }
        LocalDate since = last.on();
        for (int i = points.size() - 1; i >= 0 && (last.highAlarm() ? points.get(i).highAlarm() : points.get(i).lowAlarm()); i--) {
            since = points.get(i).on();
        }
        return run + " Alarm since " + since + ": what lies " + (last.highAlarm() ? "above" : "below") + " has added up past its limit.";
    }

    static String counted(int count) {
        return count < COUNTED.length ? COUNTED[count] : Integer.toString(count);
    }

    private static String sentence(String words) {
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }
}
