package kerfbook.estimate;

import kerfbook.campaign.FigureOverride;

/** A figure that was derived as one value and replaced by another, with the reason. */
public record Replaced(String override, FigureOverride.Figure figure, double derived, double value, String reason) {
    static Replaced of(FigureOverride override, double derived) {
        return new Replaced(override.code(), override.figure(), derived, override.value(), override.reason());
    }
}
