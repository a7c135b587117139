package kerfbook.protection;

/**
 * Doses added up in whole picosievert (a millionth of a µSv). Such sums are exact and the same in any order, so that a dose that
 * reaches a limit to the last digit is not over it by a rounding.
 */
final class Picosieverts {
    private static final double PER_USV = 1e6;

    private Picosieverts() { }

    static long of(double usv) {
        return Math.round(usv * PER_USV);
    }

    static double usv(long picosieverts) {
        return picosieverts / PER_USV;
    }
}
