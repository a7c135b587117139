package kerfbook.segmentation;

import java.util.Optional;
import kerfbook.campaign.Container;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * What pieces and loads must keep to.
 *
 * @param hoistKg         heaviest lift
 * @param hoistsPackages  the same hoist lifts the loaded package, so that content and empty package count together
 * @param largestPiece    largest piece that can be handled, if less than the package takes
 * @param clearanceMm     room that grab and unevenness ask for, added to every side of a piece
 * @param mostPieces      more pieces than this are not proposed
 * @param metresAllowance a plan with fewer packages or lighter lifts may have this many times the cut metres of the shortest one
 */
public record Bounds(Container container, double hoistKg, boolean hoistsPackages, Optional<Box> largestPiece, double clearanceMm,
                     int mostPieces, double metresAllowance, Optional<ActivityLimit> activityLimit, Optional<RateCeiling> rateCeiling) {
    public Bounds {
        Require.present(container, "container");
        Require.positive(hoistKg, 1e6, "hoist_kg", "kg");
        if (hoistsPackages && !(container.emptyKg() < hoistKg)) {
            throw new Invalid("hoist_kg", "lifts " + hoistKg + " kg, but the empty package alone weighs " + container.emptyKg()
                + " kg. Choose a lighter package or another hoist for packages.");
        }
        largestPiece = Require.optional(largestPiece);
        Require.within(clearanceMm, 0, 1_000, "clearance_mm", "mm");
        Require.within(mostPieces, 1, 100_000, "most_pieces");
        Require.within(metresAllowance, 1, 100, "metres_allowance", "");
        activityLimit = Require.optional(activityLimit);
        rateCeiling = Require.optional(rateCeiling);
    }

    /** Package, hoist and numbers of pieces only. */
    public static Bounds of(Container container, double hoistKg, int mostPieces, double metresAllowance) {
        return new Bounds(container, hoistKg, false, Optional.empty(), 0, mostPieces, metresAllowance, Optional.empty(), Optional.empty());
    }

    /** Heaviest content of a package by payload and, where it lifts packages, by hoist. */
    double contentKg() {
        return hoistsPackages ? Math.min(container.payloadKg(), hoistKg - container.emptyKg()) : container.payloadKg();
    }
}
