package kerfbook.shielding;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;

/**
 * Integrates the kernel over a source for all lines at once: the cell with the largest error is halved until the error of every
 * group is within the tolerance.
 */
final class Integrator {
    /** Source points after which the work is stopped. */
    static final int MOST_POINTS = 2_000_000;

    /** The estimate of error is driven below this share of the tolerance. */
    private static final double PRUDENCE = 0.7;

    private final SourcePoints points;
    private final Spectrum spectrum;
    private final CellKernel kernel;
    private final int n;
    private final double[] scale;

    /** What came out, line by line, and the error of each group. */
    final double[] total;
    final double[] unscattered;
    final double[] groupError;
    final double[] meanFreePaths;
    final double[] deepShare;
    boolean reached;

    Integrator(Scene scene, SourcePoints points, Spectrum spectrum, List<BuildupCurve> curves) {
        this.points = points;
        this.spectrum = spectrum;
        kernel = new CellKernel(scene, points, spectrum, curves);
        n = points.dimensions;
        scale = new double[spectrum.groups];
        int lines = spectrum.lines.size();
        total = new double[lines];
        unscattered = new double[lines];
        meanFreePaths = new double[lines];
        deepShare = new double[lines];
        groupError = new double[spectrum.groups];
    }

    void run(double tolerance) {
        Arrays.fill(scale, 1);
        double[] sum = new double[spectrum.groups];
        double[] error = new double[spectrum.groups];
        List<Cell> first = new ArrayList<>();
        for (double[] box : points.firstCells) {
            first.add(kernel.evaluate(box, scale));
        }
        first.forEach(cell -> addTo(sum, error, cell, 1));
        for (int g = 0; g < sum.length; g++) {
            scale[g] = 1 / Math.max(Math.max(sum[g], spectrum.floor), Double.MIN_NORMAL);
        }
        PriorityQueue<Cell> queue = new PriorityQueue<>(
            Comparator.comparingDouble((Cell cell) -> -cell.urgency).thenComparingInt(cell -> cell.number));
        for (Cell cell : first) {
            halve(cell, sum, error, queue);
        }
        while (!within(PRUDENCE * tolerance, sum, error) && (kernel.cells + 2) * kernel.rule.count <= MOST_POINTS) {
            halve(queue.poll(), sum, error, queue);
        }
        collect(queue, tolerance);
    }

    /**
     * Puts two halves in the place of a cell. What the halves changed of its value counts as error too (as Berntsen, Espelid and
     * Genz do in their algorithm 698, 1991, from memory), so that a rule that deceived itself is found out.
     */
    private void halve(Cell whole, double[] sum, double[] error, PriorityQueue<Cell> queue) {
        addTo(sum, error, whole, -1);
        Cell[] halves = new Cell[2];
        for (int half = 0; half < 2; half++) {
            double[] box = whole.box.clone();
            box[n + whole.splitAxis] /= 2;
            box[whole.splitAxis] += half * box[n + whole.splitAxis];
            halves[half] = kernel.evaluate(box, scale);
        }
        for (int g = 0; g < scale.length; g++) {
            double change = Math.abs(whole.groupTotal[g] - halves[0].groupTotal[g] - halves[1].groupTotal[g]) / 4;
            double own = halves[0].groupError[g] + halves[1].groupError[g];
            for (Cell half : halves) {
                half.groupError[g] = half.groupError[g] * (own > 0 ? 1 + 2 * change / own : 1) + change;
            }
        }
        for (Cell half : halves) {
            addTo(sum, error, half, 1);
            queue.add(urgent(half));
        }
    }

    private boolean within(double tolerance, double[] sum, double[] error) {
        for (int g = 0; g < sum.length; g++) {
            if (!(error[g] <= Math.max(tolerance * sum[g], spectrum.floor))) {
                return false;
            }
        }
        return true;
    }

    private static void addTo(double[] sum, double[] error, Cell cell, int sign) {
        for (int g = 0; g < sum.length; g++) {
            sum[g] += sign * cell.groupTotal[g];
            error[g] += sign * cell.groupError[g];
        }
    }

    private Cell urgent(Cell cell) {
        for (int g = 0; g < scale.length; g++) {
            cell.urgency = Math.max(cell.urgency, cell.groupError[g] * scale[g]);
        }
        return cell;
    }

    /** Adds the cells up in the order they were made, and takes the depth of each from its middle. */
    private void collect(PriorityQueue<Cell> queue, double tolerance) {
        List<Cell> all = new ArrayList<>(queue);
        all.sort(Comparator.comparingInt(cell -> cell.number));
        double[] sum = new double[spectrum.groups];
        for (Cell cell : all) {
            addTo(sum, groupError, cell, 1);
            kernel.measureMiddle(cell);
            for (int line = 0; line < total.length; line++) {
                double depth = depth(spectrum.lines.get(line).perMm(), kernel.ray.lengths);
                total[line] += cell.total[line];
                unscattered[line] += cell.unscattered[line];
                meanFreePaths[line] += depth * cell.total[line];
                deepShare[line] += depth > GpFit.DEEPEST_MFP ? cell.total[line] : 0;
            }
        }
        for (int line = 0; line < total.length; line++) {
            // nothing at all arrives: so deep that e^−τ is 0
            meanFreePaths[line] = total[line] > 0 ? meanFreePaths[line] / total[line] : depth(spectrum.lines.get(line).perMm(), kernel.ray.lengths);
            deepShare[line] = total[line] > 0 ? deepShare[line] / total[line] : 1;
        }
        reached = within(tolerance, sum, groupError);
    }

    int pointsUsed() {
        return kernel.cells * kernel.rule.count;
    }

    static double depth(double[] perMm, double[] lengths) {
        double depth = 0;
        for (int m = 0; m < lengths.length; m++) {
            depth += perMm[m] * lengths[m];
        }
        return depth;
    }
}
