package kerfbook.shielding;

import java.util.Arrays;

/** A tabulated positive function, read between its points along straight lines in ln x and ln y. Never beyond its ends. */
public final class LogLogCurve {
    private final double[] lnX;
    private final double[] lnY;

    /** Points in ascending order of x, at least two. */
    public LogLogCurve(double[] x, double[] y) {
        if (x.length != y.length || x.length < 2) {
            throw new IllegalStateException("a curve needs two points at least, and as many x as y");
        }
        lnX = new double[x.length];
        lnY = new double[y.length];
        for (int i = 0; i < x.length; i++) {
            if (!(x[i] > 0 && y[i] > 0 && (i == 0 || x[i] > x[i - 1]))) {
                throw new IllegalStateException("a curve needs positive values and ascending x; point " + i + " is " + x[i] + ", " + y[i]);
            }
            lnX[i] = Math.log(x[i]);
            lnY[i] = Math.log(y[i]);
        }
    }

    public double at(double x) {
        double u = Math.log(x);
        if (!(u >= lnX[0] - 1e-12 && u <= lnX[lnX.length - 1] + 1e-12)) {
            throw new IllegalStateException(x + " is outside the curve, " + Math.exp(lnX[0]) + " to " + Math.exp(lnX[lnX.length - 1]));
        }
        int found = Arrays.binarySearch(lnX, u);
        int right = Math.min(Math.max(found >= 0 ? found : -found - 1, 1), lnX.length - 1);
        double share = (u - lnX[right - 1]) / (lnX[right] - lnX[right - 1]);
        return Math.exp(lnY[right - 1] + share * (lnY[right] - lnY[right - 1]));
    }
}
