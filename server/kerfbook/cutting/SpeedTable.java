package kerfbook.cutting;

import java.util.List;
import java.util.Optional;
import kerfbook.quantity.Likely;

/** Readings of speed in rising thickness; straight between two of them, no answer outside. */
record SpeedTable(List<SpeedPoint> readings) implements Speed {

    @Override
    public Optional<String> whyNot(String material, double thicknessMm) {
        double first = readings.get(0).thicknessMm();
        double last = readings.get(readings.size() - 1).thicknessMm();
        return thicknessMm >= first && thicknessMm <= last ? Optional.empty()
            : Optional.of("its speed table runs from " + first + " to " + last + " mm and is never extended");
    }

    @Override
    public Optional<Likely> mmPerMin(String material, double thicknessMm) {
        int above = 1;
        while (above < readings.size() - 1 && readings.get(above).thicknessMm() < thicknessMm) {
            above++;
        }
        SpeedPoint left = readings.get(above - 1);
        SpeedPoint right = readings.get(above);
        double part = (thicknessMm - left.thicknessMm()) / (right.thicknessMm() - left.thicknessMm());
        return Optional.of(new Likely(
            between(left.mmPerMin().low(), right.mmPerMin().low(), part),
            between(left.mmPerMin().likely(), right.mmPerMin().likely(), part),
            between(left.mmPerMin().high(), right.mmPerMin().high(), part)));
    }

    @Override
    public Likely minutes(double lengthMm, double thicknessMm, String material, Likely kerfMm) {
        return mmPerMin(material, thicknessMm).orElseThrow().dividing(lengthMm);
    }

    @Override
    public boolean extrapolated(String material, double thicknessMm) {
        return false;
    }

    private static double between(double left, double right, double part) {
        return left + part * (right - left);
    }
}
