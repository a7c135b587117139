package kerfbook.waste;

import java.util.List;
import kerfbook.quantity.Likely;

/**
 * Two filters on the same cuts.
 *
 * @param now          with the flow there is
 * @param other        with the other flow
 * @param savedHours   waiting that the other one saves; below 0 if it costs hours
 * @param changesNow   filter elements used up, and with the other flow
 */
public record FilterChoice(CloudyShift now, CloudyShift other, double savedHours, Fill changesNow, Fill changesOther) {
    /**
     * @param kgPerElement what one filter element takes up before it is changed
     */
    public static FilterChoice of(Pool pool, double otherM3PerH, Fines fines, List<CloudyShift.Cutting> cuttings, double limitGPerM3, Likely kgPerElement) {
        ClearWater first = new ClearWater(pool, fines);
        ClearWater second = new ClearWater(pool.withFilter(otherM3PerH), fines);
        CloudyShift now = CloudyShift.of(first, first.clean(), cuttings, limitGPerM3);
        CloudyShift other = CloudyShift.of(second, second.clean(), cuttings, limitGPerM3);
        return new FilterChoice(now, other, now.waitingHours() - other.waitingHours(), Fill.of(now.caughtG() / 1000, kgPerElement),
            Fill.of(other.caughtG() / 1000, kgPerElement));
    }
}
