package kerfbook.review;

import java.util.List;
import kerfbook.quantity.Words;

/** Where a hold point stands. */
public record Held(String code, State state, HoldPoint point, List<Authorised.Happened> history) {
    /** How it stands. */
    public enum State {
        HOLDING, RELEASED, WITHDRAWN;

        @Override
        public String toString() {
            return Words.of(this);
        }
    }

    /** @param steps all about this hold point, in order */
    public static Held of(String code, List<Step> steps) {
        HoldPoint point = steps.get(0).noted().holdPoint().orElseThrow();
        State state = switch (steps.get(steps.size() - 1).done()) {
            case SET, HELD -> State.HOLDING;
            case RELEASED -> State.RELEASED;
            case WITHDRAWN -> State.WITHDRAWN;
            default -> throw new IllegalStateException("no step of a hold point");
        };
        return new Held(code, state, point, steps.stream().map(Authorised.Happened::of).toList());
    }

    /** Refuses a step that does not follow. */
    public static void require(String code, List<Step> steps, Step.Done next) {
        if (next == Step.Done.SET) {
            Authorised.turn(steps.isEmpty(), "There is a hold point " + code + " already. Take another code.");
            return;
        }
        Authorised.turn(!steps.isEmpty(), "There is no hold point " + code + ".");
        State state = of(code, steps).state();
        Authorised.turn(state != State.WITHDRAWN, "Hold point " + code + " was withdrawn.");
        Authorised.turn(next != Step.Done.RELEASED || state == State.HOLDING, "Hold point " + code + " is released already.");
        Authorised.turn(next != Step.Done.HELD || state == State.RELEASED, "Hold point " + code + " holds already.");
    }
}
