package kerfbook.choice;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.TimedTrial;
import kerfbook.cutting.Technique;
import kerfbook.cutting.TrialCurve;
import kerfbook.cutting.TrialFit;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Origin;
import kerfbook.quantity.Require;

/** Trials of one technique on one material at one setting: what is fitted together. */
public record TrialGroup(Technique technique, String material, String setting, List<TimedTrial> trials) {
    private static final int CODES_NAMED = 40;

    /** All groups of a campaign, in the order of their first trials. */
    public static List<TrialGroup> of(Campaign campaign) {
        Map<List<String>, List<TimedTrial>> groups = new LinkedHashMap<>();
        campaign.trials().forEach(trial -> groups.computeIfAbsent(List.of(trial.technique(), trial.material(), trial.setting()), none -> new ArrayList<>()).add(trial));
        List<TrialGroup> all = new ArrayList<>();
        groups.forEach((key, trials) -> all.add(new TrialGroup(campaign.techniques().stream().filter(each -> each.code().equals(key.get(0))).findFirst().orElseThrow(),
            key.get(1), key.get(2), List.copyOf(trials))));
        return all;
    }

    /** The technique rests on trials already. */
    public boolean accepted() {
        return technique.works() instanceof TrialCurve;
    }

    /**
     * @param slope given instead of fitted, for trials in one thickness
     * @throws Invalid if the trials do not make a line
     */
    @SuppressWarnings("OptionalUsedAsFieldOrParameterType")
    public TrialFit fit(Optional<Double> slope, double confidence, Likely fieldFactor) {
        List<kerfbook.cutting.Trial> timed = trials.stream().map(TimedTrial::trial).toList();
        return slope.isPresent() ? TrialFit.withSlope(timed, slope.get(), confidence, fieldFactor) : TrialFit.of(timed, confidence, fieldFactor);
    }

    /**
     * How a person accepts a fit.
     *
     * @param asCode code of a new technique beside the old one; left out: the technique itself is changed
     */
    public record Acceptance(String material, String setting, double confidence, Optional<Double> slope, Likely fieldFactor, String acceptedBy,
                             LocalDate acceptedOn, String reason, Optional<String> asCode, Optional<String> asName) {
        public Acceptance {
            Require.name(material, "material");
            Require.text(setting, "setting");
            Require.within(confidence, 0.5, 0.999, "confidence", "");
            slope = Require.optional(slope);
            Require.present(fieldFactor, "field_factor");
            Require.name(acceptedBy, "accepted_by");
            Require.day(acceptedOn, "accepted_on");
            Require.reason(reason, "reason");
            if (reason.length() > 1_000) {
                throw new Invalid("reason", "is " + reason.length() + " characters long; at most 1 000 are kept here.");
            }
            asCode = Require.optional(asCode);
            asCode.ifPresent(code -> Require.code(code, "as_code"));
            asName = Require.optional(asName);
            asName.ifPresent(name -> Require.name(name, "as_name"));
            if (asName.isPresent() && asCode.isEmpty()) {
                throw new Invalid("as_name", "goes with as_code, a new technique's.");
            }
        }
    }

    /** The technique at the speed of the trials, for the material tried only; its origin says who accepted them, when and why. */
    public Technique accepted(Acceptance by) {
        TrialFit fit = fit(by.slope(), by.confidence(), by.fieldFactor());
        List<String> codes = trials.stream().map(TimedTrial::code).toList();
        String named = String.join(", ", codes.subList(0, Math.min(CODES_NAMED, codes.size()))) + (codes.size() > CODES_NAMED ? ", …" : "");
        Origin origin = new Origin("Fit of " + codes.size() + " timed trials (" + named + ") on " + material + ", accepted by " + by.acceptedBy() + " on "
            + by.acceptedOn() + ": " + by.reason().strip() + " Speed before: " + cut(technique.origin().text()), Origin.Status.MEASURED);
        Technique at = technique.at(fit.curve(), origin);
        return new Technique(by.asCode().orElse(at.code()), by.asName().orElse(at.name()), at.medium(), List.of(material), at.minThicknessMm(),
            at.maxThicknessMm(), at.areaRateCm2PerMin(), at.speedTable(), at.kerfMm(), at.wear(), at.caution(), at.origin(), at.speed(), at.reach(),
            at.faultsPerH(), at.faultsOrigin());
    }

    private static String cut(String text) {
        return text.length() <= 600 ? text : text.substring(0, text.offsetByCodePoints(0, 500)) + "…";
    }
}
