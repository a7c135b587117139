package kerfbook.schedule;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;

/** Networks for laws: each activity may wait for any earlier one; some have lags, first hours, no duration, needs. */
final class RandomNetwork {
    private RandomNetwork() { }

    static List<Activity> of(SplittableRandom random, int size, double density, Map<String, Integer> capacities) {
        List<Activity> activities = new ArrayList<>();
        for (int i = 0; i < size; i++) {
            List<Link> after = new ArrayList<>();
            for (int p = 0; p < i; p++) {
                if (random.nextDouble() < density) {
                    after.add(new Link("t" + p, random.nextInt(4) == 0 ? random.nextInt(40) / 8.0 : 0));
                }
            }
            double hours = random.nextInt(10) == 0 ? 0 : 0.1 * random.nextInt(1, 100);
            double notBefore = random.nextInt(6) == 0 ? random.nextInt(30) : 0;
            Map<String, Integer> needs = new TreeMap<>();
            capacities.forEach((resource, capacity) -> {
                if (random.nextInt(2) == 0) {
                    needs.put(resource, random.nextInt(1, capacity + 1));
                }
            });
            activities.add(new Activity("t" + i, hours, after, notBefore, needs));
        }
        return activities;
    }
}
