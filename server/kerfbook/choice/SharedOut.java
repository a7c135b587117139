package kerfbook.choice;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Work shared out so that the highest ratio of anybody is as low as can be.
 *
 * @param feasible    whether every rule of the law, the hours of a shift and all crews can be kept
 * @param binding     where not: what would have to give, in words
 * @param bound       least highest ratio if jobs could be divided at will: no sharing is below it
 * @param highest     highest ratio in whole shifts
 * @param proven      no sharing in whole shifts is better
 * @param stopped     the search ended at its bound of work, not where nothing helped any more
 * @param slots       by job: whole shifts of each person
 */
public record SharedOut(boolean feasible, List<String> binding, double bound, double highest, boolean proven, boolean stopped, List<Map<Integer, Integer>> slots) {

    public static SharedOut of(Sharing sharing) {
        SharingProgramme.Solution parts = SharingProgramme.of(sharing);
        if (!parts.binding().isEmpty()) {
            return new SharedOut(false, parts.binding(), 0, 0, false, false, List.of());
        }
        WholeShifts.Answer whole = WholeShifts.of(sharing, parts.shares(), parts.highest());
        if (!whole.kept() && SharingProgramme.tooLarge(sharing)) {
            return new SharedOut(false, List.of("No sharing in whole shifts was found that keeps the hours of a shift, and the work is too large to look for one exactly. "
                + "Share out a part of the campaign, or give the tightest role more people or time."), parts.highest(), whole.highest(), false, whole.stopped(), List.of());
        }
        if (!whole.kept()) {
            parts = SharingProgramme.withinHours(sharing);
            if (!parts.binding().isEmpty()) {
                return new SharedOut(false, parts.binding(), 0, 0, false, false, List.of());
            }
            whole = WholeShifts.of(sharing, parts.shares(), parts.highest());
        }
        if (!whole.kept()) {
            return new SharedOut(false, List.of("Divided at will, the work could be shared within every rule; in whole shifts no such sharing was found. "
                + "Longer campaigns or more people of the tightest role would make room."), parts.highest(), whole.highest(), whole.proven(), whole.stopped(), List.of());
        }
        List<Map<Integer, Integer>> slots = new ArrayList<>();
        for (int[] job : whole.slots()) {
            Map<Integer, Integer> of = new TreeMap<>();
            for (int w = 0; w < job.length; w++) {
                if (job[w] > 0) {
                    of.put(w, job[w]);
                }
            }
            slots.add(of);
        }
        return new SharedOut(true, List.of(), parts.highest(), whole.highest(), whole.proven(), whole.stopped(), slots);
    }
}
