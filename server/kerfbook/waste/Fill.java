package kerfbook.waste;

import kerfbook.quantity.Likely;
import kerfbook.quantity.Require;

/**
 * How many drums or filters some solids fill.
 *
 * @param expected amount over what one takes, not rounded; the low number belongs to the high capacity
 * @param whole    the likely number rounded up: what has to be there
 */
public record Fill(Likely expected, int whole) {
    /**
     * {@code n = m / c}.
     *
     * @param kg     m, to be taken up
     * @param eachKg c, what one takes; above 0
     */
    public static Fill of(double kg, Likely eachKg) {
        Require.within(kg, 0, 1e9, "kg", "kg");
        Likely expected = Require.present(eachKg, "each_kg").requirePositive("each_kg").dividing(kg);
        return new Fill(expected, (int) Math.ceil(expected.likely() - 1e-9));
    }
}
