package kerfbook.shielding;

import java.util.Arrays;
import java.util.List;

/**
 * Works the kernel {@code e^−τ B(τ) / r²} out at the nodes of one cell for all lines. Rays are measured once per node and serve
 * every line. Holds scratch for one thread.
 */
final class CellKernel {
    final CubatureRule rule;
    final Scene.Ray ray;
    /** Cells worked out so far. */
    int cells;

    private final SourcePoints points;
    private final Spectrum spectrum;
    private final double[][] curves;
    private final int n;
    private final int matters;
    private final double[] u;
    private final double[] point = new double[3];
    private final double[] cosines;
    private final double[] sines;
    private final double[] geometry;
    private final double[] lengths;
    private final double[] tau;
    private final double[] control;
    private final double[] power;
    private final double[] rest;

    CellKernel(Scene scene, SourcePoints points, Spectrum spectrum, List<BuildupCurve> curves) {
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
        power = new double[rule.count];
        rest = new double[rule.count];
    }

    /** Works a cell out; {@code scale} weighs the unevenness of each group. */
    Cell evaluate(double[] box, double[] scale) {
        measure(box);
        int lines = spectrum.lines.size();
        Cell cell = new Cell(cells++, box, lines, spectrum.groups);
        double[] unevenness = new double[n];
        int line = 0;
        for (int g = 0; g < spectrum.groups; g++) {
            Arrays.fill(control, 0);
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
        FastExp.prepare(tau, power, rest);
        double[] cubics = curves[line];
        double all = 0;
        double straight = 0;
        double weight = resolved.weight() * resolved.factor();
        for (int node = 0; node < tau.length; node++) {
            double mfp = tau[node];
            double unscatteredHere = geometry[node] * (mfp < FastExp.LARGEST ? rest[node] * FastExp.powerOfTwo(power[node]) : Math.exp(-mfp));
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
        Arrays.fill(tau, 0);
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

    /** Measures the ray from the middle of a cell. */
    void measureMiddle(Cell cell) {
        for (int i = 0; i < n; i++) {
            u[i] = cell.box[i] + cell.box[n + i] / 2;
        }
        points.place(u, point);
        ray.trace(point[0], point[1], point[2]);
    }
}
