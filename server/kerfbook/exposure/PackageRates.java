package kerfbook.exposure;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import kerfbook.campaign.Component;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Origin;
import kerfbook.quantity.Require;
import kerfbook.shielding.Axis;
import kerfbook.shielding.Layer;
import kerfbook.shielding.Matter;
import kerfbook.shielding.Position;
import kerfbook.shielding.Shape;
import kerfbook.shielding.Shell;
import kerfbook.shielding.Source;

/**
 * A loaded package at its surface, at 1 m and at 2 m against the transport limits. Its contents are spread evenly over the
 * inside; air around it.
 */
public final class PackageRates {
    /** Where "at the surface" is calculated: the middle of a contact reading; judgement. */
    static final double SURFACE_MM = 10;
    private static final double MM3_PER_M3 = 1e9;
    private static final double USV_PER_MSV = 1000;
    /** 0.3 that comes out as 0.30000000000000004 is 0.3. */
    private static final double ROUNDING = 1e-9;

    /**
     * Inside of the package: round with diameter and height, or square with length, width and height.
     */
    public record Inside(Optional<Double> diameterMm, Optional<Double> lengthMm, Optional<Double> widthMm, double heightMm) {
        public Inside {
            diameterMm = length(diameterMm, "diameter_mm");
            lengthMm = length(lengthMm, "length_mm");
            widthMm = length(widthMm, "width_mm");
            Require.positive(heightMm, 20_000, "height_mm", "mm");
            boolean round = diameterMm.isPresent() && lengthMm.isEmpty() && widthMm.isEmpty();
            boolean square = diameterMm.isEmpty() && lengthMm.isPresent() && widthMm.isPresent();
            if (!round && !square) {
                throw new Invalid("diameter_mm", "give it alone, or length_mm and width_mm: a package is round or square.");
            }
        }

        private static Optional<Double> length(Optional<Double> value, String field) {
            Optional<Double> given = Require.optional(value);
            given.ifPresent(mm -> Require.positive(mm, 20_000, field, "mm"));
            return given;
        }

        Shape shape() {
            return diameterMm.<Shape>map(diameter -> new Shape.Cylinder(diameter / 2, heightMm))
                .orElseGet(() -> new Shape.Box(lengthMm.orElseThrow(), widthMm.orElseThrow(), heightMm));
        }

        double volumeM3() {
            return heightMm * diameterMm.map(diameter -> Math.PI / 4 * diameter * diameter).orElseGet(() -> lengthMm.orElseThrow() * widthMm.orElseThrow())
                / MM3_PER_M3;
        }
    }

    /** One wall of the package all around, from the inside out. */
    public record Wall(String material, double thicknessMm) {
        public Wall {
            Require.code(material, "material");
            Require.positive(thicknessMm, 2_000, "thickness_mm", "mm");
        }
    }

    /**
     * @param share part of the component in this package; left out: one part of as many as it has packages
     * @param on    left out: the day it is packed, else the first of the campaign
     */
    public record Question(String component, Optional<Double> share, Optional<LocalDate> on, Inside inside, List<Wall> walls) {
        public Question {
            Require.code(component, "component");
            share = Require.optional(share);
            share.ifPresent(part -> Require.positive(part, 1, "share", ""));
            on = Require.optional(on);
            on.ifPresent(day -> Require.day(day, "on"));
            Require.present(inside, "inside");
            walls = Require.list(walls, "walls");
            if (walls.size() > 10) {
                throw new Invalid("walls", "are " + walls.size() + "; at most 10 are taken.");
            }
        }
    }

    /** @param face side, long-side, short-side or top */
    public record At(String face, double distanceMm, double usvPerH, boolean extrapolated) { }

    /**
     * A limit with what is held against it.
     *
     * @param value  in the limit's unit; absent where it cannot be told
     * @param kept   absent where it cannot be told
     */
    public record Verdict(String limit, String what, double largest, String unit, String condition, Optional<Double> value, Optional<Boolean> kept,
                          Origin origin) { }

    /**
     * @param transportIndex largest mSv/h at 1 m times 100, rounded up to the next tenth; up to 0.05 counts as 0
     * @param label          that the rates ask for; not-to-be-sent above the exclusive-use limit at the surface
     * @param nonExclusive   whether the limits of non-exclusive use are kept
     * @param exclusive      whether those of exclusive use that can be told from the package alone are
     */
    public record Answer(String component, double share, LocalDate on, double filling, double massKg, List<At> points, double surfaceUsvPerH,
                         double oneMetreUsvPerH, double twoMetresUsvPerH, double transportIndex, String label, boolean nonExclusive, boolean exclusive,
                         boolean extrapolated, List<Verdict> verdicts, List<String> notes) { }

    private PackageRates() { }

    public static Answer of(CampaignRates rates, List<TransportLimit> limits, Question question) {
        Component component = rates.component(question.component());
        double share = question.share().orElse(1.0 / component.packages());
        Double packedAt = rates.timeline().packedAtHour().get(component.code());
        LocalDate on = question.on().orElseGet(() -> packedAt == null ? rates.campaign().settings().start() : rates.packedOn(component.code()));
        double metalM3 = component.shape().volumeM3() * share;
        double part = metalM3 / question.inside().volumeM3();
        if (part > 1) {
            throw new Invalid("inside", "holds " + round(question.inside().volumeM3()) + " m³, but the part of " + component.code() + " has " + round(metalM3)
                + " m³ of metal. Take a larger package or a smaller share.");
        }
        PlacedSource loaded = loaded(rates, component, share, part, question);
        List<At> points = new ArrayList<>();
        double wall = question.walls().stream().mapToDouble(Wall::thicknessMm).sum();
        List<Layer> air = List.of(Layer.everywhere(Matter.solid("air")));
        for (double distance : new double[] {SURFACE_MM, 1_000, 2_000}) {
            faces(question.inside(), wall + distance).forEach((face, point) -> {
                RatePart rate = rates.rates().part(loaded, air, point, on, 1);
                points.add(new At(face, distance, rate.usvPerH(), rate.extrapolated()));
            });
        }
        double surface = highest(points, SURFACE_MM);
        double oneMetre = highest(points, 1_000);
        double twoMetres = highest(points, 2_000);
        double index = transportIndex(oneMetre);
        List<Verdict> verdicts = limits.stream().filter(limit -> limit.quantity() != TransportLimit.Quantity.LABEL)
            .map(limit -> verdict(limit, surface, index, twoMetres)).toList();
        List<String> notes = new ArrayList<>(List.of(
            "The contents are spread evenly over the inside; a piece that lies against a wall gives more there.",
            "The surface is calculated " + Math.round(SURFACE_MM) + " mm off it (judgement). The limits are for measured rates of the finished package.",
            "Contamination, A2 and criticality limits are not looked at."));
        return new Answer(component.code(), share, on, part, metalM3 * component.densityKgPerM3(), points, surface, oneMetre, twoMetres, index,
            label(limits, surface, index), kept(verdicts, "P01", "P02"), kept(verdicts, "P03", "P05"), points.stream().anyMatch(At::extrapolated), verdicts,
            notes);
    }

    private static PlacedSource loaded(CampaignRates rates, Component component, double share, double part, Question question) {
        double tableDensity = 1000 * rates.units().data().material(component.material(), "material").densityGPerCm3();
        List<Shell> shells = new ArrayList<>();
        for (int i = 0; i < question.walls().size(); i++) {
            Wall wall = question.walls().get(i);
            rates.units().data().material(wall.material(), "walls[" + i + "].material");
            shells.add(new Shell(wall.thicknessMm(), Matter.solid(wall.material())));
        }
        Source source = new Source(question.inside().shape(), new Position(0, 0, 0), Axis.Z,
            Optional.of(new Matter(component.material(), part * component.densityKgPerM3() / tableDensity)), shells);
        return new PlacedSource(component.code(), SourceState.STANDING, source, Geometry.inventory(component.inventory().orElseThrow(), share),
            component.inventory().get().referenceOn(), List.of());
    }

    private static java.util.Map<String, Position> faces(Inside inside, double off) {
        java.util.Map<String, Position> faces = new java.util.LinkedHashMap<>();
        if (inside.diameterMm().isPresent()) {
            faces.put("side", new Position(inside.diameterMm().get() / 2 + off, 0, 0));
        } else {
            faces.put("short-side", new Position(inside.lengthMm().orElseThrow() / 2 + off, 0, 0));
            faces.put("long-side", new Position(0, inside.widthMm().orElseThrow() / 2 + off, 0));
        }
        faces.put("top", new Position(0, 0, inside.heightMm() / 2 + off));
        return faces;
    }

    private static double highest(List<At> points, double distance) {
        return points.stream().filter(at -> at.distanceMm() == distance).mapToDouble(At::usvPerH).max().orElseThrow();
    }

    /** {@code TI = 100 · largest mSv/h at 1 m}, rounded up to the next tenth; up to 0.05 counts as 0. Source: 49 CFR 173.403, 172.403. */
    static double transportIndex(double oneMetreUsvPerH) {
        double exact = 100 * oneMetreUsvPerH / USV_PER_MSV;
        return exact <= 0.05 ? 0 : Math.ceil(10 * exact - ROUNDING) / 10;
    }

    /** The first label whose bounds on surface and index are kept; above them III-YELLOW under exclusive use, up to 10 mSv/h. */
    static String label(List<TransportLimit> limits, double surfaceUsvPerH, double index) {
        double[] indexUpTo = {0, 1, 10};
        List<TransportLimit> labels = limits.stream().filter(limit -> limit.quantity() == TransportLimit.Quantity.LABEL)
            .sorted(Comparator.comparingDouble(TransportLimit::largest)).toList();
        for (int i = 0; i < labels.size(); i++) {
            if (surfaceUsvPerH <= USV_PER_MSV * labels.get(i).largest() && index <= indexUpTo[i]) {
                return labels.get(i).what().replace("Label ", "");
            }
        }
        OptionalDouble exclusive = limits.stream().filter(limit -> limit.quantity() == TransportLimit.Quantity.SURFACE).mapToDouble(TransportLimit::largest).max();
        return surfaceUsvPerH <= USV_PER_MSV * exclusive.orElseThrow() ? "III-YELLOW, exclusive use" : "not to be sent";
    }

    private static Verdict verdict(TransportLimit limit, double surface, double index, double twoMetres) {
        OptionalDouble value = switch (limit.quantity()) {
            case SURFACE -> OptionalDouble.of(surface / USV_PER_MSV);
            case TRANSPORT_INDEX -> OptionalDouble.of(index);
            case TWO_METRES -> OptionalDouble.of(twoMetres / USV_PER_MSV);
            case VEHICLE, LABEL -> OptionalDouble.empty();
        };
        Optional<Double> known = value.isPresent() ? Optional.of(value.getAsDouble()) : Optional.empty();
        return new Verdict(limit.code(), limit.what(), limit.largest(), limit.unit(), limit.condition(), known,
            known.map(held -> held <= limit.largest()), limit.origin());
    }

    private static boolean kept(List<Verdict> verdicts, String... codes) {
        return verdicts.stream().filter(verdict -> List.of(codes).contains(verdict.limit())).allMatch(verdict -> verdict.kept().orElse(false));
    }

    private static String round(double value) {
        return String.format(java.util.Locale.ROOT, "%.4g", value);
    }
}
