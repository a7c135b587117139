package kerfbook.store;

import java.util.List;
import java.util.OptionalLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import kerfbook.quantity.Invalid;

/**
 * What came of going through the whole trail, and through what it tells of.
 *
 * @param rows     rows gone through
 * @param head     hash of the last one; {@link #note} of it on paper also finds a trail that was written anew
 * @param faults   the first of them
 * @param faultsInAll how many there are
 */
public record Verification(long rows, String head, List<Fault> faults, long faultsInAll) {
    /** One thing that is not as it was written. @param row of the trail, where one can be named */
    public record Fault(OptionalLong row, String text) { }

    public Verification {
        faults = List.copyOf(faults);
    }

    public boolean intact() {
        return faultsInAll == 0;
    }

    /** The end of the trail in short, for paper: {@code 1234-0a1b2c3d4e5f6071}. */
    public String note() {
        return rows + "-" + head.substring(0, Math.min(Noted.DIGITS, head.length()));
    }

    /** An end of the trail that somebody wrote down. */
    public record Noted(long number, String digits) {
        private static final int DIGITS = 16;
        private static final Pattern FORM = Pattern.compile("([1-9][0-9]{0,17})-([0-9a-f]{16})");

        public static Noted of(String text) {
            Matcher form = FORM.matcher(text.strip());
            if (!form.matches()) {
                throw new Invalid("noted", "must be as it was printed, like 1234-0a1b2c3d4e5f6071.");
            }
            return new Noted(Long.parseLong(form.group(1)), form.group(2));
        }
    }
}
