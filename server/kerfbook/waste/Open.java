package kerfbook.waste;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/** A package being filled. */
final class Open {
    private static final double SLACK = 1e-9;

    private final Packing.Limits limits;
    private final List<Packing.Piece> pieces = new ArrayList<>();
    private double kg;
    private double boxM3;
    private double a2;

    Open(Packing.Limits limits) {
        this.limits = limits;
    }

    /** Greatest share of a bound that one piece takes, dose rate left out. */
    static double largest(Packing.Piece piece, Packing.Limits limits) {
        Open alone = new Open(limits);
        alone.add(piece);
        return Math.max(alone.byMass(), Math.max(alone.byVolume(), alone.byA2().orElse(0.0)));
    }

    /** Why a piece goes into no such package even alone. */
    static Optional<String> whyNever(Packing.Piece piece, Packing.Limits limits) {
        double[] size = sorted(piece.lengthMm(), piece.widthMm(), piece.heightMm());
        double[] room = sorted(limits.container().innerLengthMm(), limits.container().innerWidthMm(), limits.container().innerHeightMm());
        for (int i = 0; i < 3; i++) {
            if (size[i] > room[i] * (1 + SLACK)) {
                return Optional.of(String.format(Locale.ROOT, "%.0f × %.0f × %.0f mm does not go into %.0f × %.0f × %.0f mm", size[2], size[1], size[0],
                    room[2], room[1], room[0]));
            }
        }
        Open alone = new Open(limits);
        alone.add(piece);
        if (alone.byMass() > 1 + SLACK) {
            return Optional.of(String.format(Locale.ROOT, "%.1f kg is more than the %.1f kg a package may hold", piece.massKg(), limits.contentKg()));
        } else if (alone.byVolume() > 1 + SLACK) {
            return Optional.of(String.format(Locale.ROOT, "the box round it takes %.2f times the volume that may be filled", alone.byVolume()));
        } else if (alone.byA2().orElse(0.0) > 1 + SLACK) {
            return Optional.of(String.format(Locale.ROOT, "it holds %.3g times the A2 a package may hold", alone.byA2().get()));
        } else if (alone.byDoseRate().orElse(0.0) > 1) {
            return Optional.of(String.format(Locale.ROOT, "alone it makes %.3g times the surface dose rate that is allowed", alone.byDoseRate().get()));
        }
        return Optional.empty();
    }

    /** The dose rate is asked for only where everything else would keep. */
    boolean takes(Packing.Piece piece) {
        if (byMass(kg + piece.massKg()) > 1 + SLACK || byVolume(boxM3 + piece.boxM3()) > 1 + SLACK || byA2(a2 + a2(piece)).orElse(0.0) > 1 + SLACK) {
            return false;
        }
        if (limits.surface().isEmpty()) {
            return true;
        }
        Open with = new Open(limits);
        pieces.forEach(with::add);
        with.add(piece);
        return with.byDoseRate().orElse(0.0) <= 1;
    }

    void add(Packing.Piece piece) {
        pieces.add(piece);
        kg += piece.massKg();
        boxM3 += piece.boxM3();
        a2 += a2(piece);
    }

    private double a2(Packing.Piece piece) {
        return limits.numberOfA2().map(limit -> limit.table().sum(piece.becquerels())).orElse(0.0);
    }

    /** Whole numbers of packages that mass, volume and A2 of everything ask for, the largest of them. */
    int least() {
        double share = Math.max(byMass(), Math.max(byVolume(), byA2().orElse(0.0)));
        return (int) Math.ceil(share - SLACK);
    }

    Packing.Filled filled() {
        Optional<Double> dose = byDoseRate();
        double most = Math.max(Math.max(byMass(), byVolume()), Math.max(byA2().orElse(0.0), dose.orElse(0.0)));
        String binds = most == byMass() ? "mass" : most == byVolume() ? "volume" : byA2().isPresent() && most == byA2().get() ? "A2" : "dose rate";
        return new Packing.Filled(pieces.stream().map(Packing.Piece::code).toList(), content(), byMass(), byVolume(), byA2(), dose, binds);
    }

    private double byMass() {
        return byMass(kg);
    }

    private double byMass(double content) {
        return content / limits.contentKg();
    }

    private double byVolume() {
        return byVolume(boxM3);
    }

    private double byVolume(double boxes) {
        return boxes / (limits.container().innerVolumeM3() * limits.fillable());
    }

    private Optional<Double> byA2() {
        return byA2(a2);
    }

    private Optional<Double> byA2(double number) {
        return limits.numberOfA2().map(limit -> number / limit.most());
    }

    private Optional<Double> byDoseRate() {
        return limits.surface().map(limit -> {
            double rate = limit.rateUsvPerH().applyAsDouble(content());
            if (!(rate >= 0 && rate < Double.POSITIVE_INFINITY)) {
                throw new IllegalStateException("no dose rate for a content of " + kg + " kg: " + rate);
            }
            return rate / limit.usvPerH();
        });
    }

    private Content content() {
        SortedMap<String, Double> becquerels = new TreeMap<>();
        pieces.forEach(piece -> piece.becquerels().forEach((nuclide, bq) -> becquerels.merge(nuclide, bq, Double::sum)));
        return new Content(kg, becquerels);
    }

    private static double[] sorted(double... sizes) {
        Arrays.sort(sizes);
        return sizes;
    }
}
