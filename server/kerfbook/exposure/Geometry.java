package kerfbook.exposure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import kerfbook.campaign.Area;
import kerfbook.campaign.Component;
import kerfbook.campaign.Inventory;
import kerfbook.campaign.Pool;
import kerfbook.campaign.Posture;
import kerfbook.campaign.Source;
import kerfbook.campaign.Spot;
import kerfbook.shielding.Axis;
import kerfbook.shielding.Matter;
import kerfbook.shielding.PhotonData;
import kerfbook.shielding.Position;
import kerfbook.shielding.Shape;

/**
 * Turns what is to be taken apart into shapes that a dose rate can be calculated for. Filling = metal volume ÷ volume of the
 * shape × density ÷ density of the table's material.
 */
public final class Geometry {
    /** Pitch of a bundle over the diameter of its tubes, in a triangular pattern; judgement. */
    static final double USUAL_PITCH = 1.25;
    /** Part of a heap of cut pieces that is metal; judgement. */
    static final double USUAL_FILLING = 0.3;

    private static final double MM = 1000;
    private static final double MM3_PER_M3 = 1e9;
    private static final double G_PER_CM3 = 1000;

    private final PhotonData data;

    public Geometry(PhotonData data) {
        this.data = data;
    }

    /** A component where it was built in: its middle over its place, its top under the normal surface. */
    public PlacedSource inPlace(Component component) {
        List<String> notes = new ArrayList<>();
        Form form = form(component.shape(), component.posture(), notes);
        Spot spot = component.place().orElseThrow();
        Position centre = new Position(MM * spot.rightM(), MM * spot.acrossM().orElse(0.0), -component.topDepthMm() - form.height / 2);
        return placed(component, SourceState.IN_PLACE, form, centre, component.shape().volumeM3(), 1, notes);
    }

    /**
     * Its pieces as one heap: an upright cylinder, as high as wide, of the metal's volume over the filling.
     *
     * @param share part of the component that lies there, above 0 to 1
     */
    public PlacedSource inBasket(Component component, Pool.Basket basket, double share) {
        double filling = basket.filling().orElse(USUAL_FILLING);
        double metalMm3 = component.shape().volumeM3() * MM3_PER_M3 * share;
        double diameter = Math.cbrt(4 * metalMm3 / filling / Math.PI);
        List<String> notes = List.of("Pieces in the basket are one heap, an upright cylinder of " + Math.round(diameter) + " mm, "
            + Math.round(100 * filling) + " % of it metal" + (basket.filling().isEmpty() ? " (assumed)." : "."));
        Form form = new Form(new Shape.Cylinder(diameter / 2, diameter), Axis.Z, diameter);
        Position centre = new Position(MM * basket.rightM(), MM * basket.acrossM().orElse(0.0), -basket.topDepthMm() - diameter / 2);
        return placed(component, SourceState.IN_BASKET, form, centre, metalMm3 / MM3_PER_M3, share, notes);
    }

    /**
     * One piece as a square plate of the component's own wall, lying level, its top this far under a water level: of all pieces of
     * that metal the one that shields itself least towards people above. All pieces alike.
     */
    public PlacedSource onHook(Component component, Spot hook, double levelMm, double coverMm) {
        double metalM3 = component.shape().volumeM3() / component.pieces();
        double outlineMm3 = metalM3 * MM3_PER_M3 / (1 - component.shape().openFraction().orElse(0.0));
        double thickness = Math.min(wallMm(component.shape()), Math.cbrt(outlineMm3));
        double side = Math.sqrt(outlineMm3 / thickness);
        List<String> notes = List.of("A piece on the hook is a level plate of " + Math.round(side) + " × " + Math.round(side) + " × " + Math.round(thickness)
            + " mm: all pieces alike, each as thick as the component's wall.");
        Position centre = new Position(MM * hook.rightM(), MM * hook.acrossM().orElse(0.0), levelMm - coverMm - thickness / 2);
        return placed(component, SourceState.ON_HOOK, new Form(new Shape.Box(side, side, thickness), Axis.Z, thickness), centre, metalM3,
            1.0 / component.pieces(), notes);
    }

    /** The thinnest section of a component's metal. */
    private static double wallMm(kerfbook.campaign.Shape shape) {
        return switch (shape.kind()) {
            case RING, CYLINDER_SHELL, TUBE_BUNDLE -> (shape.outerDiameterMm().orElseThrow() - shape.innerDiameterMm().orElseThrow()) / 2;
            case PLATE, GRID, ROUND_PLATE, ROUND_GRID -> shape.thicknessMm().orElseThrow();
            case ROD_BUNDLE, BOLTS -> shape.outerDiameterMm().orElseThrow();
            case BLOCK -> Math.min(shape.heightMm().orElseThrow(), Math.min(shape.lengthMm().orElseThrow(), shape.widthMm().orElseThrow()));
        };
    }

    /** A source that is no component. */
    public PlacedSource standing(Source source) {
        Source.Body body = source.body().orElseThrow();
        List<String> notes = new ArrayList<>();
        Form form = form(body.shape(), body.posture(), notes);
        return new PlacedSource(source.code(), SourceState.STANDING,
            source(form, Surroundings.position(body.middle()), body.material(), body.shape().volumeM3(), body.densityKgPerM3()),
            inventory(body.inventory(), 1), body.inventory().referenceOn(), notes);
    }

    /** A shape about a point, as a source. */
    public kerfbook.shielding.Source of(kerfbook.campaign.Shape shape, Optional<Posture> posture, String material, double densityKgPerM3,
                                        Area.Place middle, List<String> notes) {
        return source(form(shape, posture, notes), Surroundings.position(middle), material, shape.volumeM3(), densityKgPerM3);
    }

    private PlacedSource placed(Component component, SourceState state, Form form, Position centre, double metalM3, double share, List<String> notes) {
        Inventory inventory = component.inventory().orElseThrow();
        return new PlacedSource(component.code(), state, source(form, centre, component.material(), metalM3, component.densityKgPerM3()),
            inventory(inventory, share), inventory.referenceOn(), notes);
    }

    private kerfbook.shielding.Source source(Form form, Position centre, String material, double metalM3, double densityKgPerM3) {
        double tableDensity = data.material(material, "material").densityGPerCm3() * G_PER_CM3;
        double filling = metalM3 * MM3_PER_M3 / volumeMm3(form.shape) * densityKgPerM3 / tableDensity;
        return new kerfbook.shielding.Source(form.shape, centre, form.axis, new Matter(material, filling));
    }

    static kerfbook.shielding.Inventory inventory(Inventory inventory, double share) {
        TreeMap<String, Double> becquerels = new TreeMap<>();
        inventory.activities().forEach(activity -> becquerels.put(activity.nuclide(), activity.becquerel() * share));
        return new kerfbook.shielding.Inventory(becquerels);
    }

    /** A shape with the direction of its axis and its height over the floor. */
    private record Form(Shape shape, Axis axis, double height) { }

    private static Form form(kerfbook.campaign.Shape shape, Optional<Posture> posture, List<String> notes) {
        double diameter = shape.outerDiameterMm().orElse(0.0);
        double length = shape.lengthMm().orElse(0.0);
        double width = shape.widthMm().orElse(0.0);
        double thickness = shape.thicknessMm().orElse(0.0);
        boolean upright = posture.orElse(switch (shape.kind()) {
            case PLATE, GRID, ROUND_PLATE, ROUND_GRID -> Posture.FLAT;
            default -> Posture.UPRIGHT;
        }) == Posture.UPRIGHT;
        return switch (shape.kind()) {
            case RING, CYLINDER_SHELL -> along(upright, new Shape.HollowCylinder(shape.innerDiameterMm().orElseThrow() / 2, diameter / 2,
                shape.heightMm().orElseThrow()), diameter, shape.heightMm().orElseThrow());
            case PLATE, GRID -> upright ? new Form(new Shape.Box(length, thickness, width), Axis.Z, width)
                : new Form(new Shape.Box(length, width, thickness), Axis.Z, thickness);
            case ROUND_PLATE, ROUND_GRID -> upright ? new Form(new Shape.Cylinder(diameter / 2, thickness), Axis.Y, diameter)
                : new Form(new Shape.Cylinder(diameter / 2, thickness), Axis.Z, thickness);
            case TUBE_BUNDLE, ROD_BUNDLE, BOLTS -> {
                double outline = outline(shape, notes);
                yield along(upright, new Shape.Cylinder(outline / 2, length), outline, length);
            }
            case BLOCK -> upright ? new Form(new Shape.Box(length, width, shape.heightMm().orElseThrow()), Axis.Z, shape.heightMm().orElseThrow())
                : new Form(new Shape.Box(length, shape.heightMm().orElseThrow(), width), Axis.Z, width);
        };
    }

    private static Form along(boolean upright, Shape shape, double diameter, double length) {
        return upright ? new Form(shape, Axis.Z, length) : new Form(shape, Axis.X, diameter);
    }

    /** Circle around a bundle: as given, else that of n triangular cells of pitch p, {@code D = p √(2√3 n / π)}. */
    private static double outline(kerfbook.campaign.Shape shape, List<String> notes) {
        notes.add("A bundle is its outline filled evenly with metal; water between its tubes or rods is not counted.");
        if (shape.outlineDiameterMm().isPresent()) {
            return shape.outlineDiameterMm().get();
        }
        double pitch = USUAL_PITCH * shape.outerDiameterMm().orElseThrow();
        double outline = pitch * Math.sqrt(2 * Math.sqrt(3) * shape.count().orElseThrow() / Math.PI);
        notes.add("No outline is given: a triangular pitch of " + USUAL_PITCH + " diameters is assumed, which makes " + Math.round(outline) + " mm.");
        return outline;
    }

    private static double volumeMm3(Shape shape) {
        if (shape instanceof Shape.HollowCylinder ring) {
            return Math.PI * (ring.outerRadiusMm() * ring.outerRadiusMm() - ring.innerRadiusMm() * ring.innerRadiusMm()) * ring.lengthMm();
        } else if (shape instanceof Shape.Cylinder cylinder) {
            return Math.PI * cylinder.radiusMm() * cylinder.radiusMm() * cylinder.lengthMm();
        } else if (shape instanceof Shape.Box box) {
            return box.xMm() * box.yMm() * box.zMm();
        } else if (shape instanceof Shape.Sphere sphere) {
            return 4.0 / 3 * Math.PI * Math.pow(sphere.radiusMm(), 3);
        }
        throw new IllegalStateException("no volume: " + shape);
    }
}
