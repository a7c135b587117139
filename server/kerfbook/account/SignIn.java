package kerfbook.account;

import java.util.Locale;
import java.util.regex.Pattern;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/** What somebody signs in with. */
public final class SignIn {
    /**
     * Length alone decides, no mixture of signs is asked for. NIST SP 800-63B, section 5.1.1.2, asks for at least 8 and advises against
     * rules of composition (from memory); 12 is our judgement.
     */
    public static final int SHORTEST_PASSWORD = 12;
    public static final int LONGEST_PASSWORD = 200;
    private static final Pattern NAME = Pattern.compile("[a-z0-9][a-z0-9._@-]{1,59}");

    private SignIn() { }

    /** A sign-in name in small letters. */
    public static String name(String given, String field) {
        String name = Require.present(given, field).strip().toLowerCase(Locale.ROOT);
        if (!NAME.matcher(name).matches()) {
            throw new Invalid(field, "must be 2 to 60 letters a to z, digits, '.', '-', '_' or '@', starting with a letter or digit.");
        }
        return name;
    }

    /** A password that may be set. Its text never stands in a message. */
    public static String password(String given, String signInName, String field) {
        Require.present(given, field);
        int signs = given.codePointCount(0, given.length());
        if (signs < SHORTEST_PASSWORD) {
            throw new Invalid(field, "must have at least " + SHORTEST_PASSWORD + " characters. A few words are easy to remember.");
        }
        if (given.length() > LONGEST_PASSWORD) {
            throw new Invalid(field, "must have at most " + LONGEST_PASSWORD + " characters.");
        }
        if (given.chars().distinct().count() < 4 || given.toLowerCase(Locale.ROOT).equals(signInName)) {
            throw new Invalid(field, "is too easy to guess. Choose another.");
        }
        return given;
    }
}
