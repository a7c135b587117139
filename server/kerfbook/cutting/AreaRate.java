package kerfbook.cutting;

import java.util.Optional;
import kerfbook.quantity.Likely;

/** Cut face made per minute: speed = 100 · rate ÷ thickness. Common practice for comparing techniques, no source. */
record AreaRate(Likely cm2PerMin) implements Speed {
    private static final double MM2_PER_CM2 = 100;

    @Override
    public Optional<String> whyNot(String material, double thicknessMm) {
        return Optional.empty();
    }

    @Override
    public Optional<Likely> mmPerMin(String material, double thicknessMm) {
        return Optional.of(cm2PerMin.times(MM2_PER_CM2 / thicknessMm));
    }

    @Override
    public Likely minutes(double lengthMm, double thicknessMm, String material, Likely kerfMm) {
        return cm2PerMin.dividing(lengthMm * thicknessMm / MM2_PER_CM2);
    }

    @Override
    public boolean extrapolated(String material, double thicknessMm) {
        return false;
    }
}
