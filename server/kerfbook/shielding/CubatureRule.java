package kerfbook.shielding;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Nodes and weights over the cube [−1, 1]^n of volume taken as 1, a rule of high and one of lower degree on the same nodes;
 * their difference is the error estimate.
 * <ul>
 *   <li>n = 1: Gauss–Kronrod with 7 and 15 nodes (Piessens et al., QUADPACK, 1983, routine QK15).</li>
 *   <li>n = 2, 3: Genz and Malik, degree 7 and 5, 17 and 33 nodes (J. Comput. Appl. Math. 6 (1980) 295–302); the weights are
 *   checked in the tests against all monomials of their degree. Also their fourth differences along each axis, which say
 *   where to halve a cell.</li>
 * </ul>
 */
final class CubatureRule {
    private static final double[] KRONROD_NODES = {0.991455371120812639206854697526329, 0.949107912342758524526189684047851,
        0.864864423359769072789712788640926, 0.741531185599394439863864773280788, 0.586087235467691130294144691693013,
        0.405845151377397166906606412076961, 0.207784955007898467600689403773245, 0};
    private static final double[] KRONROD_WEIGHTS = {0.022935322010529224963732008058970, 0.063092092629978553290700663189204,
        0.104790010322250183839876322541518, 0.140653259715525918745189590510238, 0.169004726639267902826583426598550,
        0.190350578064785409913256402421014, 0.204432940075298892414161999234649, 0.209482141084727828012999174891714};
    private static final double[] GAUSS_WEIGHTS = {0, 0.129484966168869693270611432679082, 0, 0.279705391489276667901467771423780, 0,
        0.381830050505118944950369775488975, 0, 0.417959183673469387755102040816327};

    private static final CubatureRule[] BY_DIMENSION = {null, kronrod(), genzMalik(2), genzMalik(3)};

    /** Node by node, coordinate by coordinate. */
    final double[] nodes;
    /** The different values among the coordinates, and which of them each node has. */
    final double[] values;
    final int[] valueOf;
    final double[] high;
    /** High less low weights. */
    final double[] difference;
    /** Along each axis, the factors of the nodes in the fourth difference. */
    final double[][] fourth;
    final int count;

    private CubatureRule(int n, List<double[]> points, List<Double> highs, List<Double> lows, double[][] fourth) {
        count = points.size();
        nodes = new double[count * n];
        high = new double[count];
        difference = new double[count];
        for (int i = 0; i < count; i++) {
            System.arraycopy(points.get(i), 0, nodes, i * n, n);
            high[i] = highs.get(i);
            difference[i] = highs.get(i) - lows.get(i);
        }
        this.fourth = fourth;
        values = Arrays.stream(nodes).distinct().toArray();
        valueOf = Arrays.stream(nodes).mapToInt(node -> (int) Arrays.stream(values).takeWhile(value -> value != node).count()).toArray();
    }

    static CubatureRule of(int dimensions) {
        return BY_DIMENSION[dimensions];
    }

    private static CubatureRule kronrod() {
        List<double[]> points = new ArrayList<>();
        List<Double> highs = new ArrayList<>();
        List<Double> lows = new ArrayList<>();
        for (int i = 0; i < KRONROD_NODES.length; i++) {
            for (int sign = -1; sign <= (KRONROD_NODES[i] == 0 ? -1 : 1); sign += 2) {
                points.add(new double[] {sign * KRONROD_NODES[i]});
                highs.add(KRONROD_WEIGHTS[i] / 2);
                lows.add(GAUSS_WEIGHTS[i] / 2);
            }
        }
        return new CubatureRule(1, points, highs, lows, new double[1][points.size()]);
    }

    private static CubatureRule genzMalik(int n) {
        double l2 = Math.sqrt(9.0 / 70);
        double l4 = Math.sqrt(9.0 / 10);
        double l5 = Math.sqrt(9.0 / 19);
        List<double[]> points = new ArrayList<>();
        List<Double> highs = new ArrayList<>();
        List<Double> lows = new ArrayList<>();
        add(points, highs, lows, new double[n], (12824 - 9120 * n + 400 * n * n) / 19683.0, (729 - 950 * n + 50 * n * n) / 729.0);
        for (int i = 0; i < n; i++) {
            for (int sign = -1; sign <= 1; sign += 2) {
                add(points, highs, lows, on(n, i, sign * l2), 980 / 6561.0, 245 / 486.0);
            }
        }
        for (int i = 0; i < n; i++) {
            for (int sign = -1; sign <= 1; sign += 2) {
                add(points, highs, lows, on(n, i, sign * l4), (1820 - 400 * n) / 19683.0, (265 - 100 * n) / 1458.0);
            }
        }
        for (int i = 0; i < n; i++) {
            for (int j = i + 1; j < n; j++) {
                for (int signs = 0; signs < 4; signs++) {
                    double[] point = on(n, i, (signs & 1) == 0 ? l4 : -l4);
                    point[j] = (signs & 2) == 0 ? l4 : -l4;
                    add(points, highs, lows, point, 200 / 19683.0, 25 / 729.0);
                }
            }
        }
        for (int signs = 0; signs < 1 << n; signs++) {
            double[] point = new double[n];
            for (int i = 0; i < n; i++) {
                point[i] = (signs >> i & 1) == 0 ? l5 : -l5;
            }
            add(points, highs, lows, point, 6859 / 19683.0 / (1 << n), 0);
        }
        double[][] fourth = new double[n][points.size()];
        for (int i = 0; i < n; i++) {
            fourth[i][0] = -2 + 2.0 / 7;
            fourth[i][1 + 2 * i] = 1;
            fourth[i][2 + 2 * i] = 1;
            fourth[i][1 + 2 * n + 2 * i] = -1.0 / 7;
            fourth[i][2 + 2 * n + 2 * i] = -1.0 / 7;
        }
        return new CubatureRule(n, points, highs, lows, fourth);
    }

    private static double[] on(int n, int axis, double value) {
        double[] point = new double[n];
        point[axis] = value;
        return point;
    }

    private static void add(List<double[]> points, List<Double> highs, List<Double> lows, double[] point, double high, double low) {
        points.add(point);
        highs.add(high);
        lows.add(low);
    }
}
