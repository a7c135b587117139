package kerfbook.waste;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import kerfbook.campaign.Container;
import kerfbook.quantity.Require;

/**
 * Pieces of several components put into packages of one kind: first fit, largest first. A rule of thumb, not proven best unless
 * {@link #provenLeast}. That a piece goes in is checked by its three sizes; that pieces go in beside one another only by the sum of the
 * boxes round them against a stated share of the inner volume.
 *
 * @param packages      in the order in which they were opened
 * @param leftOut       pieces that go into no such package, with the reason
 * @param least         no packing within the mass, volume and A2 bounds does with fewer packages
 */
public record Packing(List<Filled> packages, Map<String, String> leftOut, int least) {

    /** One piece. */
    public record Piece(String code, double lengthMm, double widthMm, double heightMm, double massKg, SortedMap<String, Double> becquerels) {
        public Piece {
            Require.code(code, "code");
            Require.positive(lengthMm, 100_000, "length_mm", "mm");
            Require.positive(widthMm, 100_000, "width_mm", "mm");
            Require.positive(heightMm, 100_000, "height_mm", "mm");
            Require.positive(massKg, 1e7, "mass_kg", "kg");
            becquerels = CutSolids.checked(becquerels);
        }

        double boxM3() {
            return lengthMm * widthMm * heightMm / 1e9;
        }
    }

    /**
     * What a package must keep to.
     *
     * @param contentKg     heaviest content: payload, or less where the hoist sets it
     * @param fillable      share of the inner volume that boxes round pieces may take, above 0 to 1
     * @param numberOfA2    most A2 in one package with the table to count them by; empty where activity does not bind
     * @param surface       ceiling of the surface dose rate; empty where it does not bind
     */
    public record Limits(Container container, double contentKg, double fillable, Optional<A2Limit> numberOfA2, Optional<SurfaceLimit> surface) {
        public Limits {
            Require.present(container, "container");
            Require.positive(contentKg, container.payloadKg(), "content_kg", "kg");
            Require.positive(fillable, 1, "fillable", "");
            numberOfA2 = Require.optional(numberOfA2);
            surface = Require.optional(surface);
        }
    }

    /** At most this number of A2. */
    public record A2Limit(A2 table, double most) {
        public A2Limit {
            Require.present(table, "table");
            Require.positive(most, 1e12, "most_a2", "");
        }
    }

    /** At most this dose rate, found by a function of the content. */
    public record SurfaceLimit(double usvPerH, ToDoubleFunction<Content> rateUsvPerH) {
        public SurfaceLimit {
            Require.positive(usvPerH, 1e12, "surface_usv_per_h", "µSv/h");
            Require.present(rateUsvPerH, "rate");
        }
    }

    /**
     * One package.
     *
     * @param pieces     codes
     * @param byMass     content over heaviest content
     * @param byVolume   boxes round the pieces over fillable volume
     * @param byA2       A2 over the most; empty without that limit
     * @param byDoseRate surface rate over its ceiling; empty without that limit
     * @param binds      the fullest of these
     */
    public record Filled(List<String> pieces, Content content, double byMass, double byVolume, Optional<Double> byA2, Optional<Double> byDoseRate,
                         String binds) { }

    public Packing {
        packages = List.copyOf(packages);
        leftOut = Map.copyOf(leftOut);
    }

    /** Whether no packing can do with fewer packages. */
    public boolean provenLeast() {
        return packages.size() == least;
    }

    /** Largest by its greatest share of any bound; ties by code, so that the order of the list does not matter. */
    public static Packing firstFit(List<Piece> pieces, Limits limits) {
        Require.distinct(Require.list(pieces, "pieces").stream().map(Piece::code).toList(), "pieces");
        Require.present(limits, "limits");
        List<Piece> order = new ArrayList<>(pieces);
        order.sort(Comparator.<Piece>comparingDouble(piece -> Open.largest(piece, limits)).reversed().thenComparing(Piece::code));
        List<Open> open = new ArrayList<>();
        Map<String, String> leftOut = new TreeMap<>();
        Open all = new Open(limits);
        for (Piece piece : order) {
            Optional<String> why = Open.whyNever(piece, limits);
            if (why.isPresent()) {
                leftOut.put(piece.code(), why.get());
                continue;
            }
            all.add(piece);
            open.stream().filter(box -> box.takes(piece)).findFirst().orElseGet(() -> {
                Open box = new Open(limits);
                open.add(box);
                return box;
            }).add(piece);
        }
        return new Packing(open.stream().map(Open::filled).toList(), leftOut, all.least());
    }
}
