package kerfbook.campaign;

import java.util.List;
import java.util.Optional;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Origin;
import kerfbook.quantity.Require;
import kerfbook.quantity.Words;

/**
 * One step of a task: {@code hours = quantity(driver) · hours each · difficulty}.
 *
 * @param count     the quantity, with the driver "count" and only there
 * @param hoursEach hours for one unit of the driver
 * @param alongside runs beside the other steps and adds no time to the task (coverage, supervision)
 * @param factors   codes of the difficulty factors that apply
 * @param staff     who is where; empty when nobody is needed
 */
public record Step(String code, String name, Driver driver, Optional<Double> count, Likely hoursEach, Mode mode, boolean alongside,
                   List<String> factors, List<Staff> staff, Origin origin) {

    /** Whether the work is done from a distance. */
    public enum Mode {
        REMOTE, HANDS_ON;

        @Override
        public String toString() {
            return Words.of(this);
        }
    }

    public Step {
        Require.code(code, "code");
        Require.name(name, "name");
        Require.present(driver, "driver");
        count = Require.optional(count);
        count.ifPresent(given -> Require.within(given, 0, 1e6, "count", ""));
        if (count.isPresent() != (driver == Driver.COUNT)) {
            throw new Invalid("count", "goes with the driver \"count\": give it there, and nowhere else.");
        }
        Require.present(hoursEach, "hours_each").requireAtMost(10_000, "hours_each", "h");
        Require.present(mode, "mode");
        factors = Require.distinct(Require.list(factors, "factors"), "factors");
        staff = Require.list(staff, "staff");
        Require.present(origin, "origin");
    }
}
