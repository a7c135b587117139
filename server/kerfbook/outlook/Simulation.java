package kerfbook.outlook;

/** Draws a model many times. */
public final class Simulation {
    /** The outlook, and the single trials behind it for comparing options draw by draw. */
    public record Result(Outlook outlook, Paths paths) { }

    private Simulation() { }

    public static Outlook run(Model model, Plan plan, Progress progress) {
        return result(model, plan, progress).outlook();
    }

    public static Result result(Model model, Plan plan, Progress progress) {
        throw new UnsupportedOperationException("not yet");
    }
}
