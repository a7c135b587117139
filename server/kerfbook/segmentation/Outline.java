package kerfbook.segmentation;

import java.util.List;

/**
 * A view of the component for a drawing, in mm, y upwards.
 *
 * @param view     what is seen
 * @param edges    lines of the component
 * @param cutLines lines of the cuts
 * @param repeats  how many such things there are, each with these lines: rods of a bundle, 1 for all else
 * @param allCuts  the cut lines of this view, repeated, are all cuts of the plan at their full length
 */
public record Outline(View view, List<Line> edges, List<Line> cutLines, int repeats, boolean allCuts) {

    /** From where it is seen. */
    public enum View {
        /** The wall of a ring, laid flat at its mean diameter. */
        WALL_LAID_FLAT("wall laid flat, at mean diameter"),
        FROM_ABOVE("from above"),
        FROM_THE_SIDE("from the side"),
        /** One of the tubes, rods or bolts. */
        ONE_OF_MANY("one of them, from the side");

        private final String words;

        View(String words) {
            this.words = words;
        }

        @Override
        public String toString() {
            return words;
        }
    }

    /** Straight from point to point. */
    public record Line(List<Point> points) {
        public Line {
            points = List.copyOf(points);
        }

        public double lengthMm() {
            double length = 0;
            for (int i = 1; i < points.size(); i++) {
                length += Math.hypot(points.get(i).xMm() - points.get(i - 1).xMm(), points.get(i).yMm() - points.get(i - 1).yMm());
            }
            return length;
        }
    }

    public record Point(double xMm, double yMm) { }

    public Outline {
        edges = List.copyOf(edges);
        cutLines = List.copyOf(cutLines);
    }
}
