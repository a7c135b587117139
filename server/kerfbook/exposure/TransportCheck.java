package kerfbook.exposure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import kerfbook.quantity.Origin;
import kerfbook.quantity.Require;
import kerfbook.quantity.Words;

/**
 * Dose rates round a loaded package held against the limits of transport. A planning answer: the package is measured before it leaves.
 *
 * @param transportIndex largest mSv/h at 1 m times 100, rounded up to the next tenth; up to 0.05 counts as 0
 * @param label          that the rates ask for; "not to be sent" above the exclusive-use limit at the surface
 * @param nonExclusive   whether the limits of non-exclusive use are kept
 * @param exclusive      whether those of exclusive use that can be told from the package alone are
 * @param handling       how it may be handled
 * @param binds          the limit whose figure takes the largest part of it: of non-exclusive use if that is kept, else of exclusive use
 */
public record TransportCheck(double transportIndex, String label, boolean nonExclusive, boolean exclusive, Handling handling, Binding binds,
                             List<Verdict> verdicts) {
    private static final double USV_PER_MSV = 1000;
    /** 0.3 that comes out as 0.30000000000000004 is 0.3. */
    private static final double ROUNDING = 1e-9;
    private static final List<String> NON_EXCLUSIVE = List.of("P01", "P02");
    private static final List<String> EXCLUSIVE = List.of("P03", "P05");

    /**
     * Highest rates round the package, µSv/h.
     *
     * @param unshieldedThreeMetres 3 m from the content without its walls; empty is not known, which is not 0
     */
    @SuppressWarnings("OptionalUsedAsFieldOrParameterType")
    public record Rates(double surface, double oneMetre, double twoMetres, Optional<Double> unshieldedThreeMetres) {
        public Rates {
            Require.within(surface, 0, 1e15, "surface", "µSv/h");
            Require.within(oneMetre, 0, 1e15, "one_metre", "µSv/h");
            Require.within(twoMetres, 0, 1e15, "two_metres", "µSv/h");
            unshieldedThreeMetres = Require.optional(unshieldedThreeMetres);
            unshieldedThreeMetres.ifPresent(rate -> Require.within(rate, 0, 1e15, "unshielded_three_metres", "µSv/h"));
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

    /** @param share figure over limit; above 1 it is not kept */
    public record Binding(String limit, String what, double share) { }

    /**
     * A limit with what is held against it.
     *
     * @param value  in the limit's unit; absent where it cannot be told
     * @param kept   absent where it cannot be told
     */
    public record Verdict(String limit, String what, double largest, String unit, String condition, Optional<Double> value, Optional<Boolean> kept,
                          Origin origin) { }

    /** @param limits the table of transport limits */
    public static TransportCheck of(List<TransportLimit> limits, Rates rates) {
        double index = index(rates.oneMetre());
        List<Verdict> verdicts = new ArrayList<>();
        limits.stream().filter(limit -> limit.quantity() != TransportLimit.Quantity.LABEL).forEach(limit -> verdicts.add(verdict(limit, rates, index)));
        boolean nonExclusive = kept(verdicts, NON_EXCLUSIVE);
        boolean byHand = verdicts.stream().filter(verdict -> verdict.limit().equals("P18")).allMatch(verdict -> verdict.kept().orElse(false));
        return new TransportCheck(index, label(limits, rates.surface(), index), nonExclusive, kept(verdicts, EXCLUSIVE),
            byHand ? Handling.CONTACT : Handling.REMOTE, binding(verdicts, nonExclusive ? NON_EXCLUSIVE : EXCLUSIVE), List.copyOf(verdicts));
    }

    /** {@code TI = 100 · largest mSv/h at 1 m}, rounded up to the next tenth; up to 0.05 counts as 0. Source: 49 CFR 173.403, 172.403. */
    static double index(double oneMetreUsvPerH) {
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

    private static Verdict verdict(TransportLimit limit, Rates rates, double index) {
        Optional<Double> value = switch (limit.quantity()) {
            case SURFACE, HANDLING -> Optional.of(rates.surface() / USV_PER_MSV);
            case TRANSPORT_INDEX -> Optional.of(index);
            case TWO_METRES -> Optional.of(rates.twoMetres() / USV_PER_MSV);
            case UNSHIELDED_THREE_METRES -> rates.unshieldedThreeMetres().map(rate -> rate / USV_PER_MSV);
            case VEHICLE, LABEL -> Optional.empty();
        };
        boolean below = limit.quantity() == TransportLimit.Quantity.HANDLING;
        return new Verdict(limit.code(), limit.what(), limit.largest(), limit.unit(), limit.condition(), value,
            value.map(held -> below ? held < limit.largest() : held <= limit.largest()), limit.origin());
    }

    private static boolean kept(List<Verdict> verdicts, List<String> codes) {
        return verdicts.stream().filter(verdict -> codes.contains(verdict.limit())).allMatch(verdict -> verdict.kept().orElse(false));
    }

    private static Binding binding(List<Verdict> verdicts, List<String> codes) {
        return verdicts.stream().filter(verdict -> codes.contains(verdict.limit()))
            .map(verdict -> new Binding(verdict.limit(), verdict.what(), verdict.value().orElseThrow() / verdict.largest()))
            .max(Comparator.comparingDouble(Binding::share)).orElseThrow();
    }
}
