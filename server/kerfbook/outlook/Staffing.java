package kerfbook.outlook;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Who does a step and where they stand, for an hour of it. */
record Staffing(List<Line> lines, double people, double cost) {
    /** A staffing of so many steps has rows of its own: the dose is then worked out for all their hours at once. */
    private static final int MANY = 4;

    /** People at one place: {@code dose = usvPerHour · hours · rate}. */
    record Line(int rate, int area, int crew, double usvPerHour) { }

    /** @param doses µSv an hour by line, the amount left 0 in the keys; lines that are alike are one */
    static Staffing of(Map<Line, Double> doses, double people, double cost) {
        return new Staffing(doses.entrySet().stream().map(each -> new Line(each.getKey().rate, each.getKey().area, each.getKey().crew, each.getValue())).toList(),
            people, cost);
    }

    /** Those of many steps, to which the steps then point. */
    static List<Staffing> ofMany(Work[] works) {
        Map<Staffing, Integer> steps = new LinkedHashMap<>();
        for (Work work : works) {
            work.steps.forEach(step -> steps.merge(step.staffing, 1, Integer::sum));
        }
        List<Staffing> many = steps.keySet().stream().filter(each -> steps.get(each) >= MANY).toList();
        Map<Staffing, Integer> at = new HashMap<>();
        many.forEach(each -> at.put(each, at.size()));
        for (Work work : works) {
            work.steps.forEach(step -> step.staffed = at.getOrDefault(step.staffing, -1));
        }
        return many;
    }
}
