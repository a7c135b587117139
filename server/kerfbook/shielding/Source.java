package kerfbook.shielding;

import java.util.List;
import java.util.Optional;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * An activated or contaminated part as a source of photons.
 *
 * @param shape  its form and size
 * @param centre where its middle is
 * @param axis   along which its long axis lies; without meaning for a point, a box and a sphere
 * @param body   what the form is filled with and absorbs its own photons; empty where the activity is spread through
 *               whatever the layers say is there. Only volumes have a body
 * @param shells wrappings from the inside out, possibly none
 */
public record Source(Shape shape, Position centre, Axis axis, Optional<Matter> body, List<Shell> shells) {
    public Source {
        Require.present(shape, "shape");
        Require.present(centre, "centre");
        Require.present(axis, "axis");
        body = Require.optional(body);
        if (body.isPresent() && !(shape instanceof Shape.HollowCylinder || shape instanceof Shape.Cylinder || shape instanceof Shape.Box
                || shape instanceof Shape.Sphere)) {
            throw new Invalid("body", "cannot fill a point, line, disc or skin. Leave it out, or choose a shape with a volume.");
        }
        shells = Require.list(shells, "shells");
    }

    /** Without shells. */
    public Source(Shape shape, Position centre, Axis axis, Matter body) {
        this(shape, centre, axis, Optional.of(body), List.of());
    }

    /** Without a body or shells. */
    public Source(Shape shape, Position centre) {
        this(shape, centre, Axis.Z, Optional.empty(), List.of());
    }
}
