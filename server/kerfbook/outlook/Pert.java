package kerfbook.outlook;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import kerfbook.quantity.Likely;

/**
 * The beta distribution on 0 to 1 that a figure given as low, likely, high is drawn from, as a table of its inverse.
 *
 * <pre>
 *   x ~ Beta(a, 6 − a),   a = 1 + 4 (likely − low)/(high − low),   mean a/6,   variance a (6 − a)/252
 * </pre>
 * so that {@code low + (high − low) x} has the three-point mean of the forecast. The variance is that of the beta distribution, not the
 * {@code ((high − low)/6)²} of network planning, which is 20 to 29 % smaller (checks V32, V33).
 *
 * <p>The table has {@value #CELLS} equally likely cells; in each the draw runs straight along the line that has the cell's own mean and variance.
 * Mean and variance over all cells are those of the beta distribution to 1e-9; a quantile between the middles of the first and last cell
 * is within 0.002, and no draw leaves 0 to 1.
 */
final class Pert {
    static final int CELLS = 256;
    private static final int GRID = 4096;
    private static final double[] LOGIT = new double[GRID];
    private static final double[] WEIGHT = new double[GRID];
    private static final double[] PLACE = new double[GRID];
    private static final Map<Double, Pert> KNOWN = new ConcurrentHashMap<>();
    private static final int MOST_KNOWN = 4096;

    static {
        for (int i = 0; i < GRID; i++) {
            double t = Math.PI * (i + 0.5) / GRID;
            PLACE[i] = (1 - Math.cos(t)) / 2;
            LOGIT[i] = Math.log(PLACE[i] / (1 - PLACE[i]));
            WEIGHT[i] = Math.pow(1 - PLACE[i], 4) * Math.sin(t);
        }
    }

    /** For each cell its begin less the mean of the distribution, then its length; the draw is begin + part · length. */
    final double[] cells = new double[2 * CELLS];
    final double mean;

    private Pert(double a) {
        mean = a / 6;
        double[] mass = new double[GRID];
        double sum = 0;
        for (int i = 0; i < GRID; i++) {
            mass[i] = WEIGHT[i] * Math.exp((a - 1) * LOGIT[i]);
            sum += mass[i];
        }
        double[] means = new double[CELLS];
        double[] squares = new double[CELLS];
        int cell = 0;
        double room = 1.0 / CELLS;
        for (int i = 0; i < GRID; i++) {
            double left = mass[i] / sum;
            while (left > room && cell < CELLS - 1) {
                means[cell] += room * PLACE[i];
                squares[cell] += room * PLACE[i] * PLACE[i];
                left -= room;
                cell++;
                room = 1.0 / CELLS;
            }
            means[cell] += left * PLACE[i];
            squares[cell] += left * PLACE[i] * PLACE[i];
            room -= left;
        }
        lay(a, means, squares);
    }

    /** Lines through the cells, then all moved and stretched a last touch so that mean and variance are exact. */
    private void lay(double a, double[] means, double[] squares) {
        double[] begin = new double[CELLS];
        double[] length = new double[CELLS];
        double first = 0;
        double second = 0;
        for (int i = 0; i < CELLS; i++) {
            double m = means[i] * CELLS;
            double half = Math.sqrt(3 * Math.max(0, squares[i] * CELLS - m * m));
            begin[i] = m - half;
            length[i] = 2 * half;
            first += m / CELLS;
            second += (m * m + half * half / 3) / CELLS;
        }
        double stretch = Math.sqrt(a * (6 - a) / 252 / (second - first * first));
        for (int i = 0; i < CELLS; i++) {
            double low = (begin[i] - first) * stretch;
            double high = low + length[i] * stretch;
            cells[2 * i] = Math.max(-mean, low);
            cells[2 * i + 1] = Math.min(1 - mean, high) - cells[2 * i];
        }
    }

    /** Of a figure with {@code low < high}. */
    static Pert of(Likely figure) {
        double a = 1 + 4 * (figure.likely() - figure.low()) / (figure.high() - figure.low());
        double rounded = Math.rint(a * 0x1.0p24) / 0x1.0p24;
        Pert known = KNOWN.get(rounded);
        if (known == null) {
            known = new Pert(rounded);
            if (KNOWN.size() < MOST_KNOWN) {
                KNOWN.put(rounded, known);
            }
        }
        return known;
    }

    /** By how much of its mean a figure moves for the whole width of 0 to 1; 0 for one that is known or is 0. */
    static double width(Likely figure) {
        return figure.low() == figure.high() ? 0 : (figure.high() - figure.low()) / figure.mean();
    }

    /** The draw less the mean. */
    double off(long bits) {
        int cell = (int) (bits >>> 56);
        return cells[2 * cell] + ((bits << 8) >>> 11) * Draw.UNIT * cells[2 * cell + 1];
    }
}
