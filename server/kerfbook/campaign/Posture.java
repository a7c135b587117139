package kerfbook.campaign;

import kerfbook.quantity.Words;

/** How a thing stands: its long axis (or the plane of a plate) upright, or lying flat. */
public enum Posture {
    UPRIGHT, FLAT;

    @Override
    public String toString() {
        return Words.of(this);
    }
}
