package kerfbook.cutting;

import java.util.Optional;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Require;

/** A head that travels at one speed in every thickness up to its limit, such as a nibbler. */
public record Travel(Likely mmPerMin) implements Speed {
    public Travel {
        Require.present(mmPerMin, "mm_per_min").requirePositive("mm_per_min").requireAtMost(1e6, "mm_per_min", "mm/min");
    }

    @Override
    public Optional<String> whyNot(String material, double thicknessMm) {
        return Optional.empty();
    }

    @Override
    public Optional<Likely> mmPerMin(String material, double thicknessMm) {
        return Optional.of(mmPerMin);
    }

    @Override
    public Likely minutes(double lengthMm, double thicknessMm, String material, Likely kerfMm) {
        return mmPerMin.dividing(lengthMm);
    }

    @Override
    public boolean extrapolated(String material, double thicknessMm) {
        return false;
    }
}
