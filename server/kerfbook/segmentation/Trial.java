package kerfbook.segmentation;

import java.util.Locale;
import java.util.Optional;
import kerfbook.quantity.Invalid;

/**
 * One division held against the bounds.
 *
 * @param roomFor pieces that a package has room for by size
 * @param layout  empty where a single piece is already too large
 * @param fails   first bound that is not kept
 */
record Trial(Division division, Layout.Cell cell, int roomFor, Optional<Layout> layout, Optional<Bound> fails) {
    private static final double SLACK = 1e-9;

    static Trial of(Job job, Capacity capacity, Division division) {
        Layout.Cell cell = Layout.cell(job.shape(), division);
        int roomFor = Capacity.cells(cell, job.bounds());
        if (job.bounds().largestPiece().isPresent() && !cell.box().fitsInto(job.bounds().largestPiece().get())) {
            return new Trial(division, cell, roomFor, Optional.empty(), Optional.of(Bound.PIECE_SIZE));
        }
        if (roomFor == 0) {
            return new Trial(division, cell, roomFor, Optional.empty(), Optional.of(Bound.PACKAGE_SIZE));
        }
        Layout layout = Layout.of(job.shape(), division, job.kerfMm());
        return new Trial(division, cell, roomFor, Optional.of(layout), Optional.ofNullable(against(job, capacity, layout)));
    }

    /** For a planner's own division: a piece that is too large or too heavy is still laid out. */
    static Trial byHand(Job job, Capacity capacity, Division division) {
        Trial trial = of(job, capacity, division);
        Layout layout = Layout.of(job.shape(), division, job.kerfMm());
        if (!(layout.smallestMm3() > 0)) {
            throw new Invalid("division", "leaves nothing of the smallest piece once slots of " + figure(job.kerfMm()) + " mm are cut. Choose fewer parts.");
        }
        return new Trial(division, trial.cell, trial.roomFor, Optional.of(layout), trial.fails);
    }

    /** Whether every piece goes into a package, whatever the hoist lifts. */
    boolean packable(Job job, Capacity capacity) {
        return roomFor > 0 && capacity.takes(heaviestKg(job));
    }

    /** Nearer to fitting than another one that fails: at a later bound, or at the same one with a smaller piece. */
    boolean further(Trial other, Job job) {
        int order = fails.orElseThrow().compareTo(other.fails.orElseThrow());
        return order != 0 ? order > 0 : layout.isPresent() ? heaviestKg(job) < other.heaviestKg(job)
            : cell.box().longest() < other.cell.box().longest();
    }

    private static Bound against(Job job, Capacity capacity, Layout layout) {
        double heaviest = layout.largestMm3() * job.kgPerMm3();
        if (!(layout.smallestMm3() > 0)) {
            return Bound.KERF;
        } else if (layout.pieces() > job.bounds().mostPieces()) {
            return Bound.PIECE_COUNT;
        } else if (heaviest > job.bounds().hoistKg() * (1 + SLACK)) {
            return Bound.HOIST;
        }
        return capacity.takes(heaviest) ? null : capacity.binds();
    }

    double heaviestKg(Job job) {
        return layout.orElseThrow().largestMm3() * job.kgPerMm3();
    }

    /** Why this division will not do. */
    Reason reason(Job job, Capacity capacity) {
        Bound bound = fails.orElseThrow();
        Bounds bounds = job.bounds();
        String text = switch (bound) {
            case KERF -> String.format(Locale.ROOT, "slots of %s mm would leave nothing of the smallest piece", figure(job.kerfMm()));
            case PIECE_COUNT -> String.format(Locale.ROOT, "%d pieces are more than the %d that are wanted at most",
                layout.orElseThrow().pieces(), bounds.mostPieces());
            case PIECE_SIZE -> "a piece of " + sizes(cell.box()) + " is larger than may be handled, " + sizes(bounds.largestPiece().orElseThrow());
            case PACKAGE_SIZE -> "a piece of " + sizes(cell.box()) + " does not go into the package, inside "
                + sizes(new Box(bounds.container().innerLengthMm(), bounds.container().innerWidthMm(), bounds.container().innerHeightMm()))
                + (bounds.clearanceMm() > 0 ? ", with " + figure(bounds.clearanceMm()) + " mm clearance" : "");
            case HOIST -> heavy(job) + (capacity.binds() == Bound.HOIST && heaviestKg(job) <= bounds.hoistKg()
                ? " is more than the hoist lifts in its package, " : " is more than the hoist lifts, ")
                + figure(Math.min(bounds.hoistKg(), bounds.contentKg())) + " kg";
            case PAYLOAD -> heavy(job) + " is more than a package may carry, " + figure(bounds.container().payloadKg()) + " kg";
            case ACTIVITY -> heavy(job) + " brings a package over its activity limit, which allows " + figure(capacity.kg()) + " kg";
            case DOSE_RATE -> heavy(job) + " brings the package over its dose rate, which allows " + figure(capacity.kg()) + " kg";
        };
        return new Reason(division.words(), bound, text);
    }

    private String heavy(Job job) {
        return "a piece of " + figure(heaviestKg(job)) + " kg";
    }

    private static String sizes(Box box) {
        return figure(box.longest()) + " × " + figure(box.middle()) + " × " + figure(box.shortest()) + " mm";
    }

    private static String figure(double value) {
        return value >= 100 ? String.format(Locale.ROOT, "%.0f", value) : String.format(Locale.ROOT, "%.3g", value);
    }
}
