package kerfbook.account;

import java.time.Duration;

/** How long something lets somebody in. All are our judgement: a working shift with gloves on must not ask for a password twice. */
public final class Lifetimes {
    /** A session that nobody uses. */
    public static final Duration IDLE = Duration.ofHours(4);
    /** A session, however much it is used. */
    public static final Duration SESSION = Duration.ofHours(16);
    /** The link that makes the first administrator. */
    public static final Duration FIRST_LINK = Duration.ofHours(1);
    /** The link that sets a password. */
    public static final Duration PASSWORD_LINK = Duration.ofHours(24);
    /** The longest that a token may last. */
    public static final Duration LONGEST_TOKEN = Duration.ofDays(400);

    private Lifetimes() { }
}
