package kerfbook.protection;

import java.util.Map;
import kerfbook.quantity.Origin;
import kerfbook.quantity.Require;
import kerfbook.quantity.Words;

/**
 * A figure above which a job gets a formal radiological review before work. It is held against conditions before job controls.
 *
 * @param code      short name
 * @param kind      what it looks at
 * @param threshold largest figure without review, in the unit of {@code kind}
 * @param origin    where the figure comes from
 */
public record ReviewTrigger(String code, Kind kind, double threshold, Origin origin) {
    /** What a trigger looks at, and its unit. */
    public enum Kind {
        INDIVIDUAL_SHARE_OF_LEVEL("individual dose", "% of the administrative level"),
        INDIVIDUAL_DOSE("individual dose", "µSv"),
        COLLECTIVE_DOSE("collective dose", "person-µSv"),
        DOSE_RATE("dose rate", "µSv/h"),
        AIRBORNE("airborne activity", "times the derived air concentration"),
        CONTAMINATION("removable contamination", "times the table value"),
        POTENTIAL_RELEASES("ways of release to the environment", "");

        private final String plain;
        private final String unit;

        Kind(String plain, String unit) {
            this.plain = plain;
            this.unit = unit;
        }

        public String unit() {
            return unit;
        }

        @Override
        public String toString() {
            return Words.of(this);
        }
    }

    /** What came of it: a figure that is not known never counts as kept. */
    public enum Answer {
        KEPT, NOT_KNOWN, REVIEW;

        @Override
        public String toString() {
            return Words.of(this);
        }
    }

    /** The answer with its figures in words. */
    public record Finding(ReviewTrigger trigger, Answer answer, String text) { }

    public ReviewTrigger {
        Require.code(code, "code");
        Require.present(kind, "kind");
        Require.within(threshold, 0, 1e12, "threshold", kind.unit);
        Require.present(origin, "origin");
    }

    /** For {@link Kind#INDIVIDUAL_SHARE_OF_LEVEL}: {@code 100 · dose / level}, in per cent. */
    public static double shareOfLevel(double individualUsv, double levelUsv) {
        Require.within(individualUsv, 0, DatedDose.LARGEST_USV, "individual_usv", "µSv");
        return 100 * individualUsv / Require.positive(levelUsv, DatedDose.LARGEST_USV, "level_usv", "µSv");
    }

    /** @param conditions the job's figures before controls, in the unit of their kind; a kind that is not there is not known */
    public Finding check(Map<Kind, Double> conditions) {
        Double figure = conditions.get(kind);
        if (figure == null) {
            return new Finding(this, Answer.NOT_KNOWN, Plain.capital(kind.plain) + " is not given, so this trigger cannot be checked.");
        }
        Require.within(figure, 0, 1e15, kind.toString(), kind.unit);
        boolean over = figure > threshold;
        String text = Plain.capital(kind.plain) + " " + (Plain.beside(figure, threshold) + " " + kind.unit.replaceAll("^%.*", "%")).strip() + (over ? " is above " : " is not above ")
            + (Plain.number(threshold) + " " + kind.unit).strip() + (over ? ": formal review before work." : ".");
        return new Finding(this, over ? Answer.REVIEW : Answer.KEPT, text);
    }
}
