package kerfbook.review;

import java.time.Instant;
import java.util.List;

/** Where an investigation stands. */
public record Case(String code, boolean open, Instant openedAt, Investigation investigation, List<Authorised.Happened> history) {
    /** @param steps all about this case, in order */
    public static Case of(String code, List<Step> steps) {
        Investigation last = steps.stream().flatMap(step -> step.noted().investigation().stream()).reduce((before, after) -> after).orElseThrow();
        return new Case(code, steps.get(steps.size() - 1).done() != Step.Done.CLOSED, steps.get(0).at(), last,
            steps.stream().map(Authorised.Happened::of).toList());
    }

    /** Refuses a step that does not follow. */
    public static void require(String code, List<Step> steps, Step.Done next) {
        if (next == Step.Done.OPENED) {
            Authorised.turn(steps.isEmpty(), "There is a case " + code + " already. Take another code.");
            return;
        }
        Authorised.turn(!steps.isEmpty(), "There is no case " + code + ".");
        Authorised.turn(of(code, steps).open(), "Case " + code + " is closed.");
    }
}
