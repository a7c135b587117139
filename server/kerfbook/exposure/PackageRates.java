package kerfbook.exposure;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import kerfbook.campaign.Component;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;
import kerfbook.shielding.Axis;
import kerfbook.shielding.Inventory;
import kerfbook.shielding.Layer;
import kerfbook.shielding.Matter;
import kerfbook.shielding.PhotonData;
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
    private static final double ONE_METRE_MM = 1_000;
    private static final double TWO_METRES_MM = 2_000;
    private static final List<Layer> AIR = List.of(Layer.everywhere(Matter.solid("air")));
    private static final double MM3_PER_M3 = 1e9;

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
     * @param transportIndex largest mSv/h at 1 m times 100, rounded up to the next tenth; up to 0.05 counts as 0
     * @param label          that the rates ask for; not-to-be-sent above the exclusive-use limit at the surface
     * @param nonExclusive   whether the limits of non-exclusive use are kept
     * @param exclusive      whether those of exclusive use that can be told from the package alone are
     */
    public record Answer(String component, double share, LocalDate on, double filling, double massKg, List<At> points, double surfaceUsvPerH,
                         double oneMetreUsvPerH, double twoMetresUsvPerH, double transportIndex, String label, boolean nonExclusive, boolean exclusive,
                         boolean extrapolated, List<TransportCheck.Verdict> verdicts, List<String> notes) { }

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
        double tableDensity = 1000 * rates.units().data().material(component.material(), "material").densityGPerCm3();
        Matter content = new Matter(component.material(), part * component.densityKgPerM3() / tableDensity);
        PlacedSource loaded = loaded(component.code(), content, rates.units().data(), question.inside(), question.walls(),
            Geometry.inventory(component.inventory().orElseThrow(), share), component.inventory().get().referenceOn());
        List<At> points = around(rates.rates(), loaded, question.inside(), question.walls(), on);
        TransportCheck.Rates highest = highest(points, Optional.empty());
        TransportCheck check = TransportCheck.of(limits, highest);
        List<String> notes = new ArrayList<>(List.of(
            "The contents are spread evenly over the inside; a piece that lies against a wall gives more there.",
            "The surface is calculated " + Math.round(SURFACE_MM) + " mm off it (judgement). The limits are for measured rates of the finished package.",
            "Contamination, A2 and criticality limits are not looked at."));
        return new Answer(component.code(), share, on, part, metalM3 * component.densityKgPerM3(), points, highest.surface(), highest.oneMetre(),
            highest.twoMetres(), check.transportIndex(), check.label(), check.nonExclusive(), check.exclusive(), points.stream().anyMatch(At::extrapolated),
            check.verdicts(), notes);
    }

    /**
     * A package as a source: its content spread evenly over the inside, walls around it.
     *
     * @throws Invalid naming the wall whose material is not in the tables
     */
    public static PlacedSource loaded(String code, Matter content, PhotonData data, Inside inside, List<Wall> walls, Inventory inventory, LocalDate referenceOn) {
        List<Shell> shells = new ArrayList<>();
        for (int i = 0; i < walls.size(); i++) {
            data.material(walls.get(i).material(), "walls[" + i + "].material");
            shells.add(new Shell(walls.get(i).thicknessMm(), Matter.solid(walls.get(i).material())));
        }
        Source source = new Source(inside.shape(), new Position(0, 0, 0), Axis.Z, Optional.of(content), shells);
        return new PlacedSource(code, SourceState.STANDING, source, inventory, referenceOn, List.of());
    }

    /** Rates over the middles of its different faces at the surface, at 1 m and at 2 m. */
    public static List<At> around(PointRates rates, PlacedSource loaded, Inside inside, List<Wall> walls, LocalDate on) {
        List<At> points = new ArrayList<>();
        for (double distance : new double[] {SURFACE_MM, ONE_METRE_MM, TWO_METRES_MM}) {
            points.addAll(around(rates, loaded, inside, walls, on, distance));
        }
        return points;
    }

    /** The highest over its faces at the surface alone, µSv/h. */
    public static double surfaceUsvPerH(PointRates rates, PlacedSource loaded, Inside inside, List<Wall> walls, LocalDate on) {
        return highest(around(rates, loaded, inside, walls, on, SURFACE_MM), SURFACE_MM);
    }

    private static List<At> around(PointRates rates, PlacedSource loaded, Inside inside, List<Wall> walls, LocalDate on, double distance) {
        double wall = walls.stream().mapToDouble(Wall::thicknessMm).sum();
        List<At> points = new ArrayList<>();
        faces(inside, wall + distance).forEach((face, point) -> {
            RatePart rate = rates.part(loaded, AIR, point, on, 1);
            points.add(new At(face, distance, rate.usvPerH(), rate.extrapolated()));
        });
        return points;
    }

    /** The highest at each distance. */
    @SuppressWarnings("OptionalUsedAsFieldOrParameterType")
    public static TransportCheck.Rates highest(List<At> points, Optional<Double> unshieldedThreeMetres) {
        return new TransportCheck.Rates(highest(points, SURFACE_MM), highest(points, ONE_METRE_MM), highest(points, TWO_METRES_MM), unshieldedThreeMetres);
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

    private static String round(double value) {
        return String.format(java.util.Locale.ROOT, "%.4g", value);
    }
}
