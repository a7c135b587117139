package kerfbook.shielding;

/** One part of the box that is integrated over, with what it gives line by line and group by group. */
final class Cell {
    final int number;
    /** Corner, then width, along each coordinate. */
    final double[] box;
    final double[] total;
    final double[] unscattered;
    final double[] groupTotal;
    final double[] groupError;
    /** Along which coordinate the kernel is most uneven. */
    int splitAxis;
    /** Largest error among the groups against what they come to. */
    double urgency;

    Cell(int number, double[] box, int lines, int groups) {
        this.number = number;
        this.box = box;
        total = new double[lines];
        unscattered = new double[lines];
        groupTotal = new double[groups];
        groupError = new double[groups];
    }
}
