package kerfbook.waste;

import java.util.List;

/**
 * Some hours with one release. What was there and what came is what is there, caught and settled: {@code V C₀ + S t = V C + caught + settled}.
 *
 * @param start   g/m³ by size
 * @param end     g/m³ by size
 * @param caughtG by the filter
 * @param settledG on the floor
 */
public record Stretch(double hours, double releaseGPerH, List<Double> start, List<Double> end, double caughtG, double settledG) {
    public Stretch {
        start = List.copyOf(start);
        end = List.copyOf(end);
    }

    public double startGPerM3() {
        return start.stream().mapToDouble(Double::doubleValue).sum();
    }

    public double endGPerM3() {
        return end.stream().mapToDouble(Double::doubleValue).sum();
    }
}
