package kerfbook.protection;

import java.util.Locale;

/** Doses as people read them. */
final class Plain {
    private static final int MOST_DECIMALS = 9;

    private Plain() { }

    /** In mSv with three decimals, or three digits if that would hide a small dose; no trailing zeros. */
    static String msv(double usv) {
        return number(usv / 1000) + " mSv";
    }

    static String number(double value) {
        double size = Math.abs(value);
        int decimals = size == 0 || size >= 0.1 ? 3 : (int) Math.min(MOST_DECIMALS, 2 - Math.floor(Math.log10(size)));
        String text = String.format(Locale.ROOT, "%." + decimals + "f", value);
        int end = text.length();
        while (text.charAt(end - 1) == '0') {
            end--;
        }
        text = text.substring(0, text.charAt(end - 1) == '.' ? end - 1 : end);
        return text.equals("-0") ? "0" : text;
    }

    /** Three digits, or as many more as show on which side of the limit it lies. */
    static String beside(double value, double limit) {
        double rounded = value == 0 ? 0 : Double.parseDouble(String.format(Locale.ROOT, "%.2e", value));
        return number(Double.compare(rounded, limit) == Double.compare(value, limit) ? rounded : value);
    }

    static String capital(String text) {
        return Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }
}
