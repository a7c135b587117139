package kerfbook.campaign;

import kerfbook.quantity.Likely;
import kerfbook.quantity.Origin;
import kerfbook.quantity.Require;
import kerfbook.quantity.Words;

/**
 * Something that makes work slower. Factors of one stage add up, the stages multiply:
 * {@code T = critical · (1 + Σ critical) · (1 + Σ adjusted) · (1 + Σ productive)}.
 *
 * @param percent extra time as a percentage of the duration of its stage
 */
public record DifficultyFactor(String code, String name, Stage stage, Likely percent, Origin origin) {

    /** Which duration the percentage is taken of. */
    public enum Stage {
        /** Of the bare duration: access, respirator, radiation protection. */
        CRITICAL,
        /** Of the duration after the critical factors: protective clothing. */
        ADJUSTED,
        /** Of the productive duration: breaks. */
        PRODUCTIVE;

        @Override
        public String toString() {
            return Words.of(this);
        }
    }

    public DifficultyFactor {
        Require.code(code, "code");
        Require.name(name, "name");
        Require.present(stage, "stage");
        Require.present(percent, "percent").requireAtMost(1_000, "percent", "%");
        Require.present(origin, "origin");
    }
}
