package kerfbook.protection;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Doses as people read them. */
final class Plain {
    private Plain() { }

    /** In mSv with three decimals, or three digits if that would hide a small dose; no trailing zeros. */
    static String msv(double usv) {
        return plain(BigDecimal.valueOf(usv).movePointLeft(3)) + " mSv";
    }

    static String number(double value) {
        return plain(BigDecimal.valueOf(value));
    }

    private static String plain(BigDecimal value) {
        BigDecimal rounded = value.abs().compareTo(BigDecimal.valueOf(0.1)) < 0
            ? value.round(new MathContext(3, RoundingMode.HALF_UP))
            : value.setScale(3, RoundingMode.HALF_UP);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }

    static String capital(String text) {
        return Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }
}
