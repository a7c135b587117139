package kerfbook.waste;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import kerfbook.quantity.Require;
import kerfbook.quantity.Words;

/**
 * A loaded package held against the limits of transport and handling. A planning answer: the package is measured before it leaves.
 *
 * @param lines     each limit with the figure found
 * @param index     transport index; empty where the rate at 1 m is not known
 * @param label     empty where surface or index is not known
 * @param handling  empty where the surface is not known
 */
@SuppressWarnings("OptionalUsedAsFieldOrParameterType")
public record PackageCheck(List<Line> lines, Optional<Double> index, Optional<Label> label, Optional<Handling> handling) {

    /** What a limit says of a figure. */
    public enum Verdict {
        KEPT, EXCEEDED, NOT_KNOWN;

        @Override
        public String toString() {
            return Words.of(this);
        }
    }

    /** Category of the label. */
    public enum Label {
        I_WHITE, II_YELLOW, III_YELLOW, III_YELLOW_EXCLUSIVE, NONE_ALLOWED;

        @Override
        public String toString() {
            return Words.of(this);
        }
    }

    /** How the package may be handled. */
    public enum Handling {
        CONTACT, REMOTE;

        @Override
        public String toString() {
            return Words.of(this);
        }
    }

    /** One limit. */
    public record Line(String what, Optional<Double> found, double limit, String unit, Verdict verdict) { }

    public PackageCheck {
        lines = List.copyOf(lines);
    }

    /**
     * Source of the limits: 10 CFR 71.47, 49 CFR 172.403, 173.427 and 173.441, as reproduced; harmonised with the IAEA regulations.
     *
     * @param exclusiveUse the sender has the vehicle to himself: other limits hold
     */
    public static PackageCheck of(PackageRates rates, PackageLimits limits, boolean exclusiveUse) {
        Require.present(rates, "rates");
        Require.present(limits, "limits");
        Optional<Double> index = rates.oneMetre().map(TransportIndex::of);
        List<Line> lines = new ArrayList<>();
        if (exclusiveUse) {
            lines.add(line("surface, exclusive use", rates.surface(), limits.surfaceExclusive(), "µSv/h"));
            lines.add(line("2 m, exclusive use", rates.twoMetres(), limits.twoMetresExclusive(), "µSv/h"));
        } else {
            lines.add(line("surface", rates.surface(), limits.surface(), "µSv/h"));
            lines.add(line("transport index", index, limits.index(), ""));
        }
        lines.add(line("3 m from the content without shielding", rates.unshieldedThreeMetres(), limits.unshieldedThreeMetres(), "µSv/h"));
        return new PackageCheck(lines, index, rates.surface().flatMap(surface -> index.map(ti -> label(surface, ti, limits))),
            rates.surface().map(surface -> surface < limits.remoteSurface() ? Handling.CONTACT : Handling.REMOTE));
    }

    /** Surface and index each ask for a category; the higher one is put on. */
    private static Label label(double surface, double index, PackageLimits limits) {
        if (surface > limits.surfaceExclusive()) {
            return Label.NONE_ALLOWED;
        } else if (surface > limits.surface() || index > limits.index()) {
            return Label.III_YELLOW_EXCLUSIVE;
        } else if (surface > limits.yellowSurface() || index > 1) {
            return Label.III_YELLOW;
        }
        return surface > limits.whiteSurface() || index > 0 ? Label.II_YELLOW : Label.I_WHITE;
    }

    private static Line line(String what, Optional<Double> found, double limit, String unit) {
        return new Line(what, found, limit, unit, found.map(value -> value <= limit ? Verdict.KEPT : Verdict.EXCEEDED).orElse(Verdict.NOT_KNOWN));
    }
}
