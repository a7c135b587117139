package kerfbook.outlook;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What is shared in a trial: inputs, the factors that follow from them, and products and sums of these. Each is worked out once for a block of
 * trials, each stands after those it needs, and the same one asked for twice is one. Factors are relative: 1 is the forecast. {@value #ONE} stands
 * for a factor that is always 1.
 */
final class Program {
    static final int ONE = -1;

    /** An uncertain input. */
    record Input(String key, String name, Outlook.Kind kind, boolean assumption) { }

    private enum Op { PERT, LOG_NORMAL, PRODUCT, SUM }

    private static final class Node {
        private Op op;
        private int input;
        private Pert table;
        private double scale;
        private double shift;
        private int[] of;
        private double[] by;
    }

    final List<Input> inputs = new ArrayList<>();
    private final List<Node> nodes = new ArrayList<>();
    private final Map<String, Integer> inputAt = new HashMap<>();
    private final Map<List<Object>, Integer> known = new HashMap<>();

    int size() {
        return nodes.size();
    }

    int input(Input input) {
        return inputAt.computeIfAbsent(input.key(), none -> {
            inputs.add(input);
            return inputs.size() - 1;
        });
    }

    /** {@code 1 + width · (x − mean of x)}, x by the table at the input's percentile. */
    int pert(int input, Pert table, double width) {
        return width == 0 ? ONE : known.computeIfAbsent(List.of(Op.PERT, input, table, width), none -> {
            Node node = new Node();
            node.op = Op.PERT;
            node.input = input;
            node.table = table;
            node.scale = width;
            return add(node);
        });
    }

    /** {@code exp(m + s z)}, z normal. */
    int logNormal(int input, double m, double s) {
        return m == 0 && s == 0 ? ONE : known.computeIfAbsent(List.of(Op.LOG_NORMAL, input, m, s), none -> {
            Node node = new Node();
            node.op = Op.LOG_NORMAL;
            node.input = input;
            node.shift = m;
            node.scale = s;
            return add(node);
        });
    }

    int product(int a, int b) {
        if (a == ONE || b == ONE) {
            return a == ONE ? b : a;
        }
        return known.computeIfAbsent(List.of(Op.PRODUCT, Math.min(a, b), Math.max(a, b)), none -> {
            Node node = new Node();
            node.op = Op.PRODUCT;
            node.of = new int[] {Math.min(a, b), Math.max(a, b)};
            return add(node);
        });
    }

    /** {@code 1 + Σ by · (factor − 1)}. */
    int sum(List<Integer> factors, List<Double> by) {
        List<Integer> of = new ArrayList<>();
        List<Double> weights = new ArrayList<>();
        for (int i = 0; i < factors.size(); i++) {
            if (factors.get(i) != ONE && by.get(i) != 0) {
                int at = of.indexOf(factors.get(i));
                if (at < 0) {
                    of.add(factors.get(i));
                    weights.add(by.get(i));
                } else {
                    weights.set(at, weights.get(at) + by.get(i));
                }
            }
        }
        if (of.isEmpty() || of.size() == 1 && weights.get(0) == 1) {
            return of.isEmpty() ? ONE : of.get(0);
        }
        return known.computeIfAbsent(List.of(Op.SUM, of, weights), none -> {
            Node node = new Node();
            node.op = Op.SUM;
            node.of = of.stream().mapToInt(Integer::intValue).toArray();
            node.by = weights.stream().mapToDouble(Double::doubleValue).toArray();
            return add(node);
        });
    }

    private int add(Node node) {
        nodes.add(node);
        return nodes.size() - 1;
    }

    long[] keys(long seed) {
        return inputs.stream().mapToLong(input -> Draw.key(seed, Draw.text(input.key()))).toArray();
    }

    /** Fills the rows of the inputs only. */
    void draw(double[][] rows, long[] keys, long firstTrial, int n) {
        for (int i = 0; i < nodes.size(); i++) {
            Node node = nodes.get(i);
            if (node.op == Op.PERT) {
                Rows.pert(rows[i], n, keys[node.input], firstTrial, node.table.cells, node.scale, 1);
            } else if (node.op == Op.LOG_NORMAL) {
                Rows.logNormal(rows[i], n, keys[node.input], firstTrial, node.shift, node.scale);
            }
        }
    }

    /** Fills one row per factor. */
    void run(double[][] rows, long[] keys, long firstTrial, int n) {
        draw(rows, keys, firstTrial, n);
        for (int i = 0; i < nodes.size(); i++) {
            Node node = nodes.get(i);
            switch (node.op) {
                case PRODUCT -> Rows.product(rows[i], n, rows[node.of[0]], rows[node.of[1]]);
                case SUM -> {
                    Rows.fill(rows[i], n, 1);
                    for (int k = 0; k < node.of.length; k++) {
                        Rows.addMoved(rows[i], n, rows[node.of[k]], node.by[k]);
                    }
                }
                default -> { }
            }
        }
    }
}
