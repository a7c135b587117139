package kerfbook.review;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import kerfbook.quantity.Words;

/**
 * Where an authorisation stands.
 *
 * @param revision        of what it says now; earlier ones stay among the steps
 * @param because         why it is void
 * @param notAcknowledged people of its crew who have not acknowledged this revision
 */
public record Authorised(String code, int revision, State state, Authorisation says, List<String> because, List<Acknowledged> acknowledged,
                         List<String> notAcknowledged, List<Happened> history) {
    /** How it stands. */
    public enum State {
        DRAFT, IN_FORCE, VOID, CLOSED;

        @Override
        public String toString() {
            return Words.of(this);
        }
    }

    /** Who has read it. */
    public record Acknowledged(String worker, Instant at, String by) { }

    /** One step in short. */
    public record Happened(int revision, Step.Done done, Instant at, String by, Optional<String> worker, String reason) {
        static Happened of(Step step) {
            return new Happened(step.revision(), step.done(), step.at(), step.by(), step.worker(), step.noted().reason());
        }
    }

    /** @param steps all about this authorisation, in order, the first of them its first draft */
    public static Authorised of(String code, List<Step> steps, Circumstances now) {
        State state = State.DRAFT;
        int revision = 1;
        Authorisation says = null;
        List<String> because = new ArrayList<>();
        List<Acknowledged> acknowledged = new ArrayList<>();
        for (Step step : steps) {
            switch (step.done()) {
                case DRAFTED -> {
                    state = State.DRAFT;
                    revision = step.revision();
                    says = step.noted().authorisation().orElseThrow();
                    because.clear();
                    acknowledged.clear();
                }
                case ISSUED -> state = State.IN_FORCE;
                case ACKNOWLEDGED -> acknowledged.add(new Acknowledged(step.worker().orElseThrow(), step.at(), step.by()));
                case VOIDED -> {
                    state = State.VOID;
                    because.add(step.noted().reason());
                }
                case CLOSED -> state = State.CLOSED;
                default -> throw new IllegalStateException("no step of an authorisation: " + step.done());
            }
        }
        if (says == null) {
            throw new IllegalStateException("authorisation " + code + " was never drafted");
        }
        if (state == State.IN_FORCE) {
            because.addAll(now.broken(says));
            state = because.isEmpty() ? state : State.VOID;
        }
        List<String> read = acknowledged.stream().map(Acknowledged::worker).toList();
        return new Authorised(code, revision, state, says, because, acknowledged, says.crew().stream().filter(worker -> !read.contains(worker)).toList(),
            steps.stream().map(Happened::of).toList());
    }

    /**
     * Refuses a step that does not follow.
     *
     * @param steps    what was done about it so far, possibly nothing
     * @param revision that the caller has seen; of a draft: the one that it makes
     */
    public static void require(String code, List<Step> steps, Circumstances now, Step.Done next, int revision, Optional<String> worker) {
        if (steps.isEmpty()) {
            turn(next == Step.Done.DRAFTED, "There is no authorisation " + code + " yet. Draft it first.");
            turn(revision == 1, "The first revision of an authorisation is 1.");
            return;
        }
        Authorised is = of(code, steps, now);
        int expected = next == Step.Done.DRAFTED ? is.revision() + 1 : is.revision();
        turn(is.state() != State.CLOSED, "Authorisation " + code + " is closed. Draft a new one under another code.");
        turn(revision == expected, "Authorisation " + code + " stands at revision " + is.revision() + ". Look at it again.");
        switch (next) {
            case DRAFTED, CLOSED -> { }
            case ISSUED -> {
                turn(is.state() == State.DRAFT, "Authorisation " + code + " is " + is.state() + ". Only a draft is issued.");
                turn(is.says().unfilled().isEmpty(), "Fill in first: " + String.join(", ", is.says().unfilled()) + ". Write none where there is none.");
                List<String> broken = now.broken(is.says());
                turn(broken.isEmpty(), "It would be void at once. " + String.join(" ", broken));
            }
            case ACKNOWLEDGED -> {
                turn(is.state() == State.IN_FORCE, "Authorisation " + code + " is " + is.state() + ". Only one in force is acknowledged.");
                turn(worker.filter(is.says().crew()::contains).isPresent(), "Only people of its crew acknowledge authorisation " + code + ".");
                turn(worker.filter(is.notAcknowledged()::contains).isPresent(), "Revision " + is.revision() + " was acknowledged before.");
            }
            case VOIDED -> turn(steps.get(steps.size() - 1).done() != Step.Done.VOIDED, "Authorisation " + code + " was made void before.");
            default -> throw new IllegalStateException("no step of an authorisation: " + next);
        }
    }

    static void turn(boolean right, String otherwise) {
        if (!right) {
            throw new OutOfTurn(otherwise);
        }
    }
}
