package kerfbook.shielding;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;

/**
 * Integrates the kernel {@code e^−τ B(τ) / r²} over a source for all lines at once: the cell with the largest error is
 * halved until the error of every group is within the tolerance. Rays are measured once per point and serve every line.
 */
final class Integrator {
    /** Source points after which the work is stopped. */
    static final int MOST_POINTS = 2_000_000;

    /** The estimate of error is driven below this share of the tolerance. */
    private static final double PRUDENCE = 0.7;

    private static final class Cell {
        double[] box;
        double[] total;
        double[] unscattered;
        double[] groupTotal;
        double[] groupError;
        double urgency;
        int splitAxis;
        int number;
    }

    private final Scene scene;
    private final SourcePoints points;
    private final Spectrum spectrum;
    private final double[][] curves;
    private final CubatureRule rule;
    private final int n;
    private final int matters;
    private final Scene.Ray ray;
    private final double[] u;
    private final double[] point = new double[3];
    private final double[] cosines;
    private final double[] sines;
    private final double[] geometry;
    private final double[] lengths;
    private final double[] tau;
    private final double[] control;
    private final double[] scale;
    private int cells;

    /** What came out, line by line, and the error of each group. */
    final double[] total;
    final double[] unscattered;
    final double[] groupError;
    final double[] meanFreePaths;
    final double[] deepShare;
    boolean reached;

    Integrator(Scene scene, SourcePoints points, Spectrum spectrum, List<BuildupCurve> curves) {
        this.scene = scene;
        this.points = points;
        this.spectrum = spectrum;
        this.curves = curves.stream().map(curve -> curve.cubics).toArray(double[][]::new);
        rule = CubatureRule.of(points.dimensions);
        n = points.dimensions;
        matters = scene.matters.size();
        ray = scene.new Ray();
        u = new double[n];
        cosines = new double[rule.values.length];
        sines = new double[rule.values.length];
        geometry = new double[rule.count];
        lengths = new double[rule.count * matters];
        tau = new double[rule.count];
        control = new double[rule.count];
        scale = new double[spectrum.groups];
        int lines = spectrum.lines.size();
        total = new double[lines];
        unscattered = new double[lines];
        meanFreePaths = new double[lines];
        deepShare = new double[lines];
        groupError = new double[spectrum.groups];
    }

    void run(double tolerance) {
        java.util.Arrays.fill(scale, 1);
        double[] sum = new double[spectrum.groups];
        double[] error = new double[spectrum.groups];
        List<Cell> first = new ArrayList<>();
        for (double[] box : points.firstCells) {
            first.add(evaluate(box));
        }
        first.forEach(cell -> addTo(sum, error, cell, 1));
        for (int g = 0; g < sum.length; g++) {
            scale[g] = 1 / Math.max(sum[g], spectrum.floor);
        }
        PriorityQueue<Cell> queue = new PriorityQueue<>(
            Comparator.comparingDouble((Cell cell) -> -cell.urgency).thenComparingInt(cell -> cell.number));
        for (Cell cell : first) {
            halve(cell, sum, error, queue);
        }
        while (!within(PRUDENCE * tolerance, sum, error) && (cells + 2) * rule.count <= MOST_POINTS) {
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
            halves[half] = evaluate(box);
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

    private Cell evaluate(double[] box) {
        measure(box);
        int lines = total.length;
        Cell cell = new Cell();
        cell.number = cells++;
        cell.box = box;
        cell.total = new double[lines];
        cell.unscattered = new double[lines];
        cell.groupTotal = new double[spectrum.groups];
        cell.groupError = new double[spectrum.groups];
        double[] unevenness = new double[n];
        int line = 0;
        for (int g = 0; g < spectrum.groups; g++) {
            java.util.Arrays.fill(control, 0);
            for (; line < lines && spectrum.lines.get(line).group() == g; line++) {
                add(cell, line);
                cell.groupTotal[g] += spectrum.lines.get(line).weight() * cell.total[line];
            }
            cell.groupError[g] = Math.abs(product(rule.difference));
            for (int axis = 0; axis < n; axis++) {
                unevenness[axis] += Math.abs(product(rule.fourth[axis])) * scale[g];
            }
        }
        for (int axis = 1; axis < n; axis++) {
            if (unevenness[axis] > unevenness[cell.splitAxis]) {
                cell.splitAxis = axis;
            }
        }
        return cell;
    }

    /** Rays from every node of a cell: weight over distance squared, and lengths matter by matter. */
    private void measure(double[] box) {
        double volume = 1;
        for (int i = 0; i < n; i++) {
            volume *= box[n + i];
        }
        int angle = points.angleAxis;
        for (int v = 0; angle >= 0 && v < cosines.length; v++) {
            double at = box[angle] + box[n + angle] * 0.5 * (1 + rule.values[v]);
            cosines[v] = points.cosine(at);
            sines[v] = points.sine(at);
        }
        for (int node = 0; node < rule.count; node++) {
            for (int i = 0; i < n; i++) {
                u[i] = box[i] + box[n + i] * 0.5 * (1 + rule.nodes[node * n + i]);
            }
            int value = angle < 0 ? 0 : rule.valueOf[node * n + angle];
            double weight = points.place(u, cosines[value], sines[value], point);
            ray.trace(point[0], point[1], point[2]);
            geometry[node] = volume * weight / (ray.distance * ray.distance);
            for (int m = 0; m < matters; m++) {
                lengths[m * rule.count + node] = ray.lengths[m];
            }
        }
    }

    /** The innermost loop: all nodes of a cell for one line. */
    private void add(Cell cell, int line) {
        Spectrum.Resolved resolved = spectrum.lines.get(line);
        opticalDepths(resolved.perMm());
        double[] cubics = curves[line];
        double all = 0;
        double straight = 0;
        double weight = resolved.weight() * resolved.factor();
        for (int node = 0; node < tau.length; node++) {
            double mfp = tau[node];
            double unscatteredHere = geometry[node] * Math.exp(-mfp);
            long bits = Double.doubleToRawLongBits(mfp);
            int at = (int) (bits >>> BuildupCurve.SHIFT) - BuildupCurve.FIRST_CELL;
            double buildup = 1;
            if (at >= 0) {
                double s = (bits & BuildupCurve.REST) * BuildupCurve.REST_TO_ONE;
                s = at < BuildupCurve.CELLS ? s : 0;
                at = 4 * Math.min(at, BuildupCurve.CELLS);
                buildup = cubics[at] + s * (cubics[at + 1] + s * (cubics[at + 2] + s * cubics[at + 3]));
            }
            double here = unscatteredHere * buildup;
            all += rule.high[node] * here;
            straight += rule.high[node] * unscatteredHere;
            control[node] += weight * here;
        }
        cell.total[line] = resolved.factor() * all;
        cell.unscattered[line] = resolved.factor() * straight;
    }

    private void opticalDepths(double[] perMm) {
        java.util.Arrays.fill(tau, 0);
        for (int m = 0; m < matters; m++) {
            double mu = perMm[m];
            int from = m * tau.length;
            for (int node = 0; node < tau.length; node++) {
                tau[node] += mu * lengths[from + node];
            }
        }
    }

    private double product(double[] factors) {
        double sum = 0;
        for (int node = 0; node < factors.length; node++) {
            sum += factors[node] * control[node];
        }
        return sum;
    }

    /** Adds the cells up in the order they were made, and takes the depth of each from its middle. */
    private void collect(PriorityQueue<Cell> queue, double tolerance) {
        List<Cell> all = new ArrayList<>(queue);
        all.sort(Comparator.comparingInt(cell -> cell.number));
        double[] sum = new double[spectrum.groups];
        for (Cell cell : all) {
            addTo(sum, groupError, cell, 1);
            for (int i = 0; i < n; i++) {
                u[i] = cell.box[i] + cell.box[n + i] / 2;
            }
            points.place(u, point);
            ray.trace(point[0], point[1], point[2]);
            for (int line = 0; line < total.length; line++) {
                double depth = depth(spectrum.lines.get(line).perMm(), ray.lengths);
                total[line] += cell.total[line];
                unscattered[line] += cell.unscattered[line];
                meanFreePaths[line] += depth * cell.total[line];
                deepShare[line] += depth > GpFit.DEEPEST_MFP ? cell.total[line] : 0;
            }
        }
        for (int line = 0; line < total.length; line++) {
            // nothing at all arrives: so deep that e^−τ is 0
            meanFreePaths[line] = total[line] > 0 ? meanFreePaths[line] / total[line] : depth(spectrum.lines.get(line).perMm(), ray.lengths);
            deepShare[line] = total[line] > 0 ? deepShare[line] / total[line] : 1;
        }
        reached = within(tolerance, sum, groupError);
    }

    int pointsUsed() {
        return cells * rule.count;
    }

    static double depth(double[] perMm, double[] lengths) {
        double depth = 0;
        for (int m = 0; m < lengths.length; m++) {
            depth += perMm[m] * lengths[m];
        }
        return depth;
    }
}
