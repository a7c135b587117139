package kerfbook.shielding;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;

/**
 * Whose build-up factors a line takes. On each ray, seen back from the detector: the media that are 0.5 mean free paths thick or more, up to
 * and with the first that is 3 or more; of these the one with the largest factor at the total of mean free paths. Where none is 0.5 thick, the
 * thickest. Over the source the medium that stands behind most of what arrives unscattered, by the nodes of the first cells.
 *
 * <p>After 3 mean free paths the last material has made its own spectrum and its factor at the total holds; before, a thin heavy layer behind
 * a deep light one has not, and its small factor would take away many times too much. The larger factor errs on the high side. The two
 * thicknesses are judgement: the interpolation formulas of the literature fall to the last material's factor as exp(−1.7 τ) of its
 * thickness τ (Kalos, from memory), 0.6 % at 3.
 */
final class LastMaterial {
    /** Name where a ray meets no matter. */
    static final String NONE = "none";

    private static final double THICK_ENOUGH_MFP = 0.5;
    private static final double SETTLED_MFP = 3;

    /** Build-up factor of a line in a medium at a depth in mean free paths. */
    interface Factor {
        double at(int line, String medium, double mfp);
    }

    private LastMaterial() { }

    static List<String> ofPoint(Scene.Ray ray, Spectrum spectrum, List<String> mediumOfMatter, Factor factor) {
        List<String> media = List.copyOf(new TreeSet<>(mediumOfMatter));
        int[] numbers = mediumOfMatter.stream().mapToInt(media::indexOf).toArray();
        List<String> chosen = new ArrayList<>();
        for (int i = 0; i < spectrum.lines.size(); i++) {
            int medium = onRay(ray, spectrum.lines.get(i).perMm(), numbers, media, i, factor);
            chosen.add(medium < media.size() ? media.get(medium) : NONE);
        }
        return chosen;
    }

    static List<String> of(Scene scene, SourcePoints points, Spectrum spectrum, List<String> mediumOfMatter, Factor factor) {
        List<String> media = List.copyOf(new TreeSet<>(mediumOfMatter));
        int[] numbers = mediumOfMatter.stream().mapToInt(media::indexOf).toArray();
        CubatureRule rule = CubatureRule.of(points.dimensions);
        int n = points.dimensions;
        int lines = spectrum.lines.size();
        double[] least = new double[lines];
        Arrays.fill(least, Double.POSITIVE_INFINITY);
        double[][] votes = new double[lines][media.size() + 1];
        Scene.Ray ray = scene.new Ray();
        double[] u = new double[n];
        double[] point = new double[3];
        for (double[] box : points.firstCells) {
            for (int node = 0; node < rule.count; node++) {
                for (int i = 0; i < n; i++) {
                    u[i] = box[i] + box[n + i] * 0.5 * (1 + rule.nodes[node * n + i]);
                }
                double weight = points.place(u, point);
                ray.trace(point[0], point[1], point[2]);
                for (int i = 0; i < lines; i++) {
                    double[] perMm = spectrum.lines.get(i).perMm();
                    double depth = Integrator.depth(perMm, ray.lengths);
                    if (depth < least[i]) {
                        // votes so far are counted from the old least depth
                        double shrink = Math.exp(depth - least[i]);
                        for (int k = 0; k < votes[i].length; k++) {
                            votes[i][k] *= shrink;
                        }
                        least[i] = depth;
                    }
                    votes[i][onRay(ray, perMm, numbers, media, i, factor)] += weight / (ray.distance * ray.distance) * Math.exp(least[i] - depth);
                }
            }
        }
        List<String> chosen = new ArrayList<>();
        for (double[] vote : votes) {
            int most = 0;
            for (int k = 1; k < vote.length; k++) {
                most = vote[k] > vote[most] ? k : most;
            }
            chosen.add(most < media.size() ? media.get(most) : NONE);
        }
        return chosen;
    }

    /** Number of the medium, or {@code media} where the ray meets no matter. */
    private static int onRay(Scene.Ray ray, double[] perMm, int[] mediumOfMatter, List<String> media, int line, Factor factor) {
        double[] depths = new double[media.size()];
        double[] lasts = new double[media.size()];
        Arrays.fill(lasts, -1);
        double total = 0;
        int thickest = media.size();
        for (int m = 0; m < perMm.length; m++) {
            double depth = perMm[m] * ray.lengths[m];
            total += depth;
            depths[mediumOfMatter[m]] += depth;
            lasts[mediumOfMatter[m]] = Math.max(lasts[mediumOfMatter[m]], ray.lastMet(m));
        }
        double settled = -1;
        for (int medium = 0; medium < depths.length; medium++) {
            if (depths[medium] > (thickest == media.size() ? 0 : depths[thickest])) {
                thickest = medium;
            }
            settled = depths[medium] >= SETTLED_MFP ? Math.max(settled, lasts[medium]) : settled;
        }
        int chosen = media.size();
        int candidates = 0;
        for (int medium = 0; medium < depths.length; medium++) {
            if (counts(depths[medium], lasts[medium], settled)) {
                chosen = medium;
                candidates++;
            }
        }
        if (candidates <= 1) {
            return chosen == media.size() ? thickest : chosen;
        }
        double largest = -1;
        for (int medium = 0; medium < depths.length; medium++) {
            if (counts(depths[medium], lasts[medium], settled)) {
                double own = factor.at(line, media.get(medium), total);
                if (own > largest) {
                    largest = own;
                    chosen = medium;
                }
            }
        }
        return chosen;
    }

    private static boolean counts(double depth, double last, double settled) {
        return depth >= THICK_ENOUGH_MFP && last >= settled;
    }
}
