package kerfbook.cutting;

import kerfbook.quantity.Require;

/**
 * One timed cut in a cold trial.
 *
 * @param minutes with the tool on
 * @param setting how the tool was set, in words; trials of different settings are not fitted together
 */
public record Trial(double thicknessMm, double lengthMm, double minutes, String setting) {
    public Trial {
        Require.positive(thicknessMm, 5_000, "thickness_mm", "mm");
        Require.positive(lengthMm, 1e6, "length_mm", "mm");
        Require.positive(minutes, 1e6, "minutes", "min");
        Require.text(setting, "setting");
    }

    public double mmPerMin() {
        return lengthMm / minutes;
    }
}
