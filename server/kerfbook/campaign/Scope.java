package kerfbook.campaign;

import kerfbook.quantity.Words;

/** What a target or constraint covers. */
public enum Scope {
    CAMPAIGN, GROUP, COMPONENT, TASK;

    @Override
    public String toString() {
        return Words.of(this);
    }
}
