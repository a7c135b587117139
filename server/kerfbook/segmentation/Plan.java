package kerfbook.segmentation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import kerfbook.campaign.Cut;
import kerfbook.quantity.Require;

/**
 * One way to divide a component. Mass of pieces plus kerf is the mass of the component, and so for every nuclide.
 *
 * @param packed     how the pieces lie in packages; empty only in a plan set by hand whose pieces go into none
 * @param notCoarser why each step towards fewer cuts will not do: what sets the size of the pieces. Empty where nothing forbids them
 * @param exceeded   bounds that a plan set by hand does not keep; empty for a proposed plan
 * @param outlines   what it looks like, with the cut lines
 */
public record Plan(Aim aim, Division division, List<PlannedCut> cuts, List<PieceKind> pieces, KerfLoss kerf, Optional<Packed> packed,
                   List<Reason> notCoarser, List<Reason> exceeded, List<Outline> outlines) {
    public Plan {
        cuts = List.copyOf(cuts);
        pieces = List.copyOf(pieces);
        notCoarser = List.copyOf(notCoarser);
        exceeded = List.copyOf(exceeded);
        outlines = List.copyOf(outlines);
    }

    /** Way of the tool in all cuts. */
    public double cutMetres() {
        return cuts.stream().mapToDouble(PlannedCut::metres).sum();
    }

    public int cutCount() {
        return cuts.stream().mapToInt(PlannedCut::count).sum();
    }

    public int pieceCount() {
        return pieces.stream().mapToInt(PieceKind::count).sum();
    }

    /** Mass of the heaviest single piece. */
    public double heaviestKg() {
        return pieces.stream().mapToDouble(PieceKind::massKg).max().orElseThrow();
    }

    /** Thickest section, which the technique must reach; 0 without cuts. */
    public double thickestMm() {
        return cuts.stream().mapToDouble(PlannedCut::thicknessMm).max().orElse(0);
    }

    /**
     * The cuts as a campaign keeps them, to be changed there by hand. Codes are the component's with a running number.
     *
     * @param name of the component, as the names of its cuts begin
     */
    public List<Cut> cutRows(String component, String name, String technique) {
        Require.code(component, "component");
        List<Cut> rows = new ArrayList<>();
        for (PlannedCut cut : cuts) {
            rows.add(new Cut(component + "-" + (rows.size() + 1), component, name + ", " + cut.kind().words(), technique, cut.count(),
                cut.lengthMm(), cut.thicknessMm(), cut.metalShare() < 1 ? Optional.of(cut.metalShare()) : Optional.empty()));
        }
        return rows;
    }
}
