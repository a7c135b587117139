package kerfbook.http;

/** Something else listens at the address already. */
public final class PortTaken extends RuntimeException {
    private static final long serialVersionUID = 1L;

    PortTaken(Server.Listening where, Throwable cause) {
        super("Port " + where.port() + " on " + where.address() + " cannot be used: something else listens there. Stop it, or give another with --port.", cause);
    }
}
