package kerfbook.waste;

import java.util.List;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;
import kerfbook.quantity.Sum;

/** What clouds the water, by size. The shares make 1. */
public record Fines(List<Size> sizes) {
    private static final double WHOLE = 1e-9;

    /**
     * One size.
     *
     * @param name             such as "10 µm garnet"
     * @param share            of the mass released
     * @param settlingMmPerS   v_s, see {@link Settling}; 0 if it does not settle
     * @param filterEfficiency E, part that the filter catches in one pass
     */
    public record Size(String name, double share, double settlingMmPerS, double filterEfficiency) {
        public Size {
            Require.name(name, "name");
            Require.positive(share, 1, "share", "");
            Require.within(settlingMmPerS, 0, 1e4, "settling_mm_per_s", "mm/s");
            Require.within(filterEfficiency, 0, 1, "filter_efficiency", "");
        }
    }

    public Fines {
        sizes = Require.atLeastOne(sizes, "sizes");
        Sum sum = new Sum();
        sizes.forEach(size -> sum.add(size.share()));
        if (!(Math.abs(sum.value() - 1) <= WHOLE)) {
            throw new Invalid("sizes", "must have shares that make 1, not " + sum.value() + ".");
        }
    }

    /** All of one size. */
    public static Fines of(String name, double settlingMmPerS, double filterEfficiency) {
        return new Fines(List.of(new Size(name, 1, settlingMmPerS, filterEfficiency)));
    }
}
