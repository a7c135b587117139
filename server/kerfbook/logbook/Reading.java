package kerfbook.logbook;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;

/** One reading of an electronic dosimeter as it came out of a table, matched with the plan. Hours and µSv. */
public record Reading(String worker, String task, LocalDate on, String area, double hours, double usv, String remark) {
    /**
     * The same as an entry of the log. A table has no time at which it was written down: the beginning of the day stands for it.
     *
     * @param id worked out from what the reading says, so that reading a table twice adds nothing
     */
    public Entry entry(String id, List<String> confirmed) {
        return new Entry(id, worker, task, on, area, hours, usv, Optional.empty(), Optional.empty(), remark, on.atStartOfDay().toInstant(ZoneOffset.UTC),
            Optional.empty(), confirmed);
    }
}
