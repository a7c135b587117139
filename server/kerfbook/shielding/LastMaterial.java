package kerfbook.shielding;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;

/**
 * Whose build-up factors a line takes. On each ray, seen back from the detector, the first medium that is 0.5 mean free
 * paths thick or more in all, else the thickest; over the source the medium that stands behind most of what arrives
 * unscattered, by the nodes of the first cells.
 */
final class LastMaterial {
    /** Name where a ray meets no matter. */
    static final String NONE = "none";

    private static final double THICK_ENOUGH_MFP = 0.5;

    private LastMaterial() { }

    static List<String> ofPoint(Scene.Ray ray, Spectrum spectrum, List<String> mediumOfMatter) {
        List<String> media = List.copyOf(new TreeSet<>(mediumOfMatter));
        int[] numbers = mediumOfMatter.stream().mapToInt(media::indexOf).toArray();
        List<String> chosen = new ArrayList<>();
        for (Spectrum.Resolved line : spectrum.lines) {
            int medium = onRay(ray, line.perMm(), numbers, media.size());
            chosen.add(medium < media.size() ? media.get(medium) : NONE);
        }
        return chosen;
    }

    static List<String> of(Scene scene, SourcePoints points, Spectrum spectrum, List<String> mediumOfMatter) {
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
                    votes[i][onRay(ray, perMm, numbers, media.size())] += weight / (ray.distance * ray.distance) * Math.exp(least[i] - depth);
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
    private static int onRay(Scene.Ray ray, double[] perMm, int[] mediumOfMatter, int media) {
        int chosen = media;
        int thickest = media;
        double latest = -1;
        double most = 0;
        for (int medium = 0; medium < media; medium++) {
            double depth = 0;
            double last = -1;
            for (int m = 0; m < perMm.length; m++) {
                if (mediumOfMatter[m] == medium) {
                    depth += perMm[m] * ray.lengths[m];
                    last = Math.max(last, ray.lastMet(m));
                }
            }
            if (depth >= THICK_ENOUGH_MFP && last > latest) {
                chosen = medium;
                latest = last;
            }
            if (depth > most) {
                thickest = medium;
                most = depth;
            }
        }
        return chosen == media ? thickest : chosen;
    }
}
