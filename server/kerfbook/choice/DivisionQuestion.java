package kerfbook.choice;

import java.util.Optional;
import kerfbook.campaign.Handling;
import kerfbook.quantity.Require;
import kerfbook.segmentation.ActivityLimit;
import kerfbook.segmentation.Aim;
import kerfbook.segmentation.Division;

/**
 * How a component is to be divided. What is left out of the lifting gear comes from the campaign's settings.
 *
 * @param packageType     code of the package that the pieces go into
 * @param technique       code of the technique, which makes the kerf
 * @param mostPieces      more pieces are not proposed; left out: {@value #USUAL_PIECES}
 * @param metresAllowance a plan with fewer packages or lighter lifts may have this many times the fewest cut metres; left out: {@value #USUAL_ALLOWANCE}
 * @param activityLimit   most activity in one package; left out: none
 * @param division        a planner's own, shown beside the proposals
 * @param aim             which of the plans is taken
 */
public record DivisionQuestion(String packageType, String technique, Optional<Double> hoistKg, Optional<Boolean> hoistsPackages,
                               Optional<Handling.LargestPiece> largestPiece, Optional<Double> clearanceMm, Optional<Integer> mostPieces,
                               Optional<Double> metresAllowance, Optional<ActivityLimit> activityLimit, Optional<Division> division, Optional<Aim> aim) {
    static final int USUAL_PIECES = 500;
    static final double USUAL_ALLOWANCE = 1.5;

    public DivisionQuestion {
        Require.code(packageType, "package_type");
        Require.code(technique, "technique");
        hoistKg = Require.optional(hoistKg);
        hoistsPackages = Require.optional(hoistsPackages);
        largestPiece = Require.optional(largestPiece);
        clearanceMm = Require.optional(clearanceMm);
        mostPieces = Require.optional(mostPieces);
        metresAllowance = Require.optional(metresAllowance);
        activityLimit = Require.optional(activityLimit);
        division = Require.optional(division);
        aim = Require.optional(aim);
    }

    /** Bounds and technique only. */
    public static DivisionQuestion of(String packageType, String technique) {
        return new DivisionQuestion(packageType, technique, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
            Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
    }
}
