package kerfbook.segmentation;

/**
 * Why a division will not do.
 *
 * @param division in words: "1 band of 11 segments"
 * @param bound    what is not kept
 * @param text     with the figures: "a piece of 812 kg is more than the hoist lifts, 500 kg"
 */
public record Reason(String division, Bound bound, String text) { }
