package kerfbook.shielding;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
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

    static List<String> ofPoint(Scene scene, Scene.Ray ray, Spectrum spectrum, List<String> mediumOfMatter) {
        List<String> chosen = new ArrayList<>();
        for (Spectrum.Resolved line : spectrum.lines) {
            chosen.add(onRay(ray, line.perMm(), mediumOfMatter));
        }
        return chosen;
    }

    static List<String> of(Scene scene, SourcePoints points, Spectrum spectrum, List<String> mediumOfMatter) {
        CubatureRule rule = CubatureRule.of(points.dimensions);
        int n = points.dimensions;
        int lines = spectrum.lines.size();
        double[] least = new double[lines];
        java.util.Arrays.fill(least, Double.POSITIVE_INFINITY);
        List<Map<String, Double>> votes = new ArrayList<>();
        for (int i = 0; i < lines; i++) {
            votes.add(new TreeMap<>());
        }
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
                        votes.get(i).replaceAll((medium, vote) -> vote * shrink);
                        least[i] = depth;
                    }
                    double vote = weight / (ray.distance * ray.distance) * Math.exp(least[i] - depth);
                    votes.get(i).merge(onRay(ray, perMm, mediumOfMatter), vote, Double::sum);
                }
            }
        }
        return votes.stream().map(vote -> Collections.max(vote.entrySet(), Map.Entry.comparingByValue()).getKey()).toList();
    }

    private static String onRay(Scene.Ray ray, double[] perMm, List<String> mediumOfMatter) {
        String chosen = NONE;
        String thickest = NONE;
        double latest = -1;
        double most = 0;
        for (String medium : new TreeSet<>(mediumOfMatter)) {
            double depth = 0;
            double last = -1;
            for (int m = 0; m < perMm.length; m++) {
                if (mediumOfMatter.get(m).equals(medium)) {
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
        return chosen.equals(NONE) ? thickest : chosen;
    }
}
