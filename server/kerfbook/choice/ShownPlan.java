package kerfbook.choice;

import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import kerfbook.campaign.Cut;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Sum;
import kerfbook.segmentation.Aim;
import kerfbook.segmentation.Division;
import kerfbook.segmentation.KerfLoss;
import kerfbook.segmentation.Outline;
import kerfbook.segmentation.Packed;
import kerfbook.segmentation.PieceKind;
import kerfbook.segmentation.Plan;
import kerfbook.segmentation.PlannedCut;
import kerfbook.segmentation.Reason;

/**
 * A plan with everything that is looked at before it is taken.
 *
 * @param packages       empty where the pieces go into none
 * @param toolOnHours    of all its cuts; empty where the technique cannot make them
 * @param notApplicable  why it cannot
 * @param surfaceUsvPerH highest dose rate at the surface of one of its packages, where the package has a ceiling
 * @param cutRows        cuts as they would be kept
 */
public record ShownPlan(Aim aim, Division division, String words, double cutMetres, int cutCount, int pieceCount, Optional<Integer> packages,
                        double heaviestKg, double thickestMm, Optional<Likely> toolOnHours, Optional<String> notApplicable, List<PlannedCut> cuts,
                        List<PieceKind> pieces, KerfLoss kerf, Optional<Packed> packed, Optional<Double> surfaceUsvPerH, List<Reason> notCoarser,
                        List<Reason> exceeded, List<Outline> outlines, Conservation conservation, List<Cut> cutRows) {

    /** Mass and activity of the component against pieces and kerf. */
    public record Conservation(double componentKg, double piecesKg, double kerfKg, double differenceKg, List<OfNuclide> nuclides) { }

    /** Activity of one nuclide, Bq. */
    public record OfNuclide(String nuclide, double componentBq, double piecesBq, double kerfBq, double differenceBq) { }

    static Conservation conservation(double massKg, SortedMap<String, Double> becquerels, Plan plan) {
        Sum pieces = new Sum();
        plan.pieces().forEach(piece -> pieces.add(piece.count() * piece.massKg()));
        double kerf = plan.kerf().massKg();
        List<OfNuclide> nuclides = becquerels.keySet().stream().map(nuclide -> {
            Sum own = new Sum();
            plan.pieces().forEach(piece -> own.add(piece.count() * piece.becquerels().get(nuclide)));
            double whole = becquerels.get(nuclide);
            double lost = plan.kerf().becquerels().get(nuclide);
            return new OfNuclide(nuclide, whole, own.value(), lost, whole - own.value() - lost);
        }).toList();
        return new Conservation(massKg, pieces.value(), kerf, massKg - pieces.value() - kerf, nuclides);
    }
}
