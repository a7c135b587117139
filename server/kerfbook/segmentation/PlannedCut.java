package kerfbook.segmentation;

/**
 * A number of equal cuts.
 *
 * @param lengthMm    way of the tool
 * @param thicknessMm section it goes through; length · thickness is the face of the cut
 * @param metalShare  part of that face that is metal: 1, or less in a grid, where the tool also crosses holes
 */
public record PlannedCut(CutKind kind, int count, double lengthMm, double thicknessMm, double metalShare) {
    /** Way of the tool in all of them. */
    public double metres() {
        return count * lengthMm / 1000;
    }

    /** Metal face of all of them, mm². */
    public double metalFaceMm2() {
        return count * lengthMm * thicknessMm * metalShare;
    }
}
