package kerfbook.choice;

import java.util.List;
import java.util.Optional;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;
import kerfbook.quantity.Words;

/**
 * What a person-sievert that is not taken is worth: {@code α(d)} in money per person-Sv, d the individual dose at which it is taken.
 *
 * <ul>
 * <li>value: the same for every d;
 * <li>bands: by d, the upper edge within the band;
 * <li>power: {@code α(d) = α for d < d0, α (d / d0)^a for d ≥ d0}, a ≥ 0 the aversion to unequal doses (model of ICRP 101, as read in the
 *     teaching series of uniprorad.com.br, item 56).
 * </ul>
 *
 * @param perPersonSv α of the kinds value and power
 * @param bands       of the kind bands, rising
 * @param d0Usv       of the kind power
 * @param exponent    a, of the kind power
 */
public record DoseValue(Kind kind, Optional<Double> perPersonSv, List<Band> bands, Optional<Double> d0Usv, Optional<Double> exponent) {
    static final double USV_PER_SV = 1e6;
    private static final double DEAREST = 1e12;

    /** How the value depends on the individual dose. */
    public enum Kind {
        VALUE, BANDS, POWER;

        @Override
        public String toString() {
            return Words.of(this);
        }
    }

    /** @param upToUsv upper edge, which still belongs to it; left out of the last band: it has none */
    public record Band(Optional<Double> upToUsv, double perPersonSv) {
        public Band {
            upToUsv = Require.optional(upToUsv);
            upToUsv.ifPresent(edge -> Require.positive(edge, 1e9, "up_to_usv", "µSv"));
            Require.within(perPersonSv, 0, DEAREST, "per_person_sv", "");
        }
    }

    public DoseValue {
        Require.present(kind, "kind");
        perPersonSv = Require.optional(perPersonSv);
        perPersonSv.ifPresent(value -> Require.within(value, 0, DEAREST, "per_person_sv", ""));
        bands = rising(Require.list(bands, "bands"));
        d0Usv = Require.optional(d0Usv);
        d0Usv.ifPresent(dose -> Require.positive(dose, 1e9, "d0_usv", "µSv"));
        exponent = Require.optional(exponent);
        exponent.ifPresent(given -> Require.within(given, 0, 10, "exponent", ""));
        belongs(perPersonSv.isPresent(), kind != Kind.BANDS, "per_person_sv", kind);
        belongs(!bands.isEmpty(), kind == Kind.BANDS, "bands", kind);
        belongs(d0Usv.isPresent(), kind == Kind.POWER, "d0_usv", kind);
        belongs(exponent.isPresent(), kind == Kind.POWER, "exponent", kind);
    }

    /** The same for every dose. */
    public static DoseValue of(double perPersonSv) {
        return new DoseValue(Kind.VALUE, Optional.of(perPersonSv), List.of(), Optional.empty(), Optional.empty());
    }

    /**
     * @param individualUsv what each who takes it takes
     * @throws Invalid if no band holds that dose
     */
    public double perPersonSv(double individualUsv) {
        return switch (kind) {
            case VALUE -> perPersonSv.orElseThrow();
            case BANDS -> inBand(bands, individualUsv);
            case POWER -> individualUsv < d0Usv.orElseThrow() ? perPersonSv.orElseThrow()
                : perPersonSv.orElseThrow() * Math.pow(individualUsv / d0Usv.get(), exponent.orElseThrow());
        };
    }

    static double inBand(List<Band> bands, double individualUsv) {
        for (Band band : bands) {
            if (band.upToUsv().isEmpty() || individualUsv <= band.upToUsv().get()) {
                return band.perPersonSv();
            }
        }
        throw new Invalid("bands", "end at " + bands.get(bands.size() - 1).upToUsv().orElseThrow() + " µSv; an option gives somebody " + individualUsv
            + " µSv. Add a band for it.");
    }

    static List<Band> rising(List<Band> bands) {
        for (int i = 0; i < bands.size(); i++) {
            boolean last = i == bands.size() - 1;
            if (!last && bands.get(i).upToUsv().isEmpty()) {
                throw new Invalid("bands[" + i + "].up_to_usv", "is missing. Only the last band may be open above.");
            }
            if (i > 0 && bands.get(i).upToUsv().isPresent() && bands.get(i).upToUsv().get() <= bands.get(i - 1).upToUsv().orElseThrow()) {
                throw new Invalid("bands[" + i + "].up_to_usv", "must be above the edge of the band before it.");
            }
        }
        return bands;
    }

    private static void belongs(boolean given, boolean wanted, String field, Kind kind) {
        if (given != wanted) {
            throw new Invalid(field, wanted ? "is missing. The kind \"" + kind + "\" needs it." : "does not go with the kind \"" + kind + "\". Leave it out.");
        }
    }
}
