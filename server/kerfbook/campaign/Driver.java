package kerfbook.campaign;

import kerfbook.quantity.Words;

/** What a step's hours are counted in. */
public enum Driver {
    CAMPAIGN("for the campaign"),
    COMPONENT("a component"),
    PACKAGE("a package"),
    PIECE("a piece"),
    CUT("a cut"),
    METRE("a metre cut"),
    TOOL_ON_HOUR("a tool-on hour"),
    TOOL_CHANGE("a tool change"),
    /** A jam, a leak, a lost picture: whatever stops the tool until somebody clears it, as often as its technique says. */
    FAULT("a fault"),
    KG_ABRASIVE("a kg of abrasive"),
    FILTER("a filter"),
    DRUM("a drum"),
    SHIFT("a shift"),
    WEEK("a week"),
    /** Hours until the water is clear, as {@link PoolWater} says. */
    WAIT_HOUR("an hour of waiting for clear water"),
    /** A number given with the step. */
    COUNT("a time");

    private final String each;

    Driver(String each) {
        this.each = each;
    }

    /** "a metre cut": reads after "hours for …". */
    public String each() {
        return each;
    }

    @Override
    public String toString() {
        return Words.of(this);
    }
}
