package kerfbook.cutting;

import java.util.Optional;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Require;

/**
 * A row of overlapping holes, drilled one after the other. Holes: {@code n = L ÷ (s·d)}, rounded up, with d the bore and s the pitch as a
 * share of it; time: {@code n · h ÷ feed}. Shares of 0.8 to 0.9: planner's rule, judgement.
 *
 * @param feedMmPerMin feed of the bit into one hole
 * @param boreMm       diameter of a hole
 * @param pitchShare   distance of two holes over the bore, 0.3 to 0.99 so that they overlap
 */
public record StitchDrilling(Likely feedMmPerMin, double boreMm, Likely pitchShare) implements Speed {
    public StitchDrilling {
        Require.present(feedMmPerMin, "feed_mm_per_min").requirePositive("feed_mm_per_min").requireAtMost(1e5, "feed_mm_per_min", "mm/min");
        Require.within(boreMm, 1, 1_000, "bore_mm", "mm");
        Require.within(Require.present(pitchShare, "pitch_share").requireAtMost(0.99, "pitch_share", "").low(), 0.3, 0.99, "pitch_share.low", "");
    }

    /** Whole holes for one cut; the fewest belong to the widest pitch. */
    public Likely holes(double lengthMm) {
        return new Likely(Math.ceil(lengthMm / (pitchShare.high() * boreMm)), Math.ceil(lengthMm / (pitchShare.likely() * boreMm)),
            Math.ceil(lengthMm / (pitchShare.low() * boreMm)));
    }

    /**
     * Area taken out of the plate for one cut, mm²: n circles less the lens that each shares with the next,
     * {@code n·πr² − (n−1)·(2r²·acos(p/2r) − (p/2)·√(4r² − p²))}, p the pitch. Cores are in it.
     */
    public Likely removedMm2(double lengthMm) {
        Likely holes = holes(lengthMm);
        double few = removed(holes.low(), pitchShare.high());
        double likely = removed(holes.likely(), pitchShare.likely());
        double many = removed(holes.high(), pitchShare.low());
        return new Likely(Math.min(few, Math.min(likely, many)), likely, Math.max(few, Math.max(likely, many)));
    }

    private double removed(double holes, double share) {
        double r = boreMm / 2;
        double pitch = share * boreMm;
        double lens = 2 * r * r * Math.acos(pitch / boreMm) - pitch / 2 * Math.sqrt(boreMm * boreMm - pitch * pitch);
        return holes * Math.PI * r * r - (holes - 1) * lens;
    }

    @Override
    public Optional<String> whyNot(String material, double thicknessMm) {
        return Optional.empty();
    }

    @Override
    public Optional<Likely> mmPerMin(String material, double thicknessMm) {
        return Optional.empty();
    }

    @Override
    public Likely minutes(double lengthMm, double thicknessMm, String material, Likely kerfMm) {
        return holes(lengthMm).times(feedMmPerMin.dividing(thicknessMm));
    }

    @Override
    public boolean extrapolated(String material, double thicknessMm) {
        return false;
    }
}
