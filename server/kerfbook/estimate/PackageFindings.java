package kerfbook.estimate;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** Loaded packages above the limits of transport: one finding for each kind of package and limit. */
final class PackageFindings {
    private record Above(String type, String limit) { }

    private PackageFindings() { }

    /** @param packages the mean loaded package of each component */
    static List<Finding> of(List<PackageForecast> packages) {
        Comparator<Above> order = Comparator.comparing(Above::type).thenComparing(Above::limit);
        Map<Above, List<PackageForecast>> above = packages.stream().filter(each -> each.around().filter(around -> !around.nonExclusive() && !around.exclusive()).isPresent())
            .collect(Collectors.groupingBy(each -> new Above(each.packageType().orElseThrow(), each.around().get().binds().limit()), () -> new TreeMap<>(order), Collectors.toList()));
        return above.entrySet().stream().map(entry -> finding(entry.getKey(), entry.getValue())).toList();
    }

    private static Finding finding(Above above, List<PackageForecast> packages) {
        PackageForecast worst = packages.stream().max(Comparator.comparingDouble(each -> each.around().orElseThrow().binds().share())).orElseThrow();
        int count = packages.stream().mapToInt(PackageForecast::packages).sum();
        return new Finding(Finding.Weight.CHECK, "packages", above.type(), (count == 1 ? "1 package of kind " + above.type() + " is" : count + " packages of kind " + above.type() + " are")
            + " forecast above a transport limit of exclusive use: " + worst.around().orElseThrow().binds().what() + " (" + above.limit() + "), the worst, of " + worst.component() + ", "
            + Findings.number(worst.around().orElseThrow().binds().share()) + " times.",
            "As loaded they cannot be sent. Load less into each, take thicker walls or an overpack, or let them decay first.");
    }
}
