package kerfbook.http;

import io.javalin.http.Context;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import kerfbook.cutting.Trial;
import kerfbook.cutting.TrialCurve;
import kerfbook.cutting.TrialFit;
import kerfbook.document.Json;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Require;
import kerfbook.tables.CuttingTables;

/** A line through timed cold cuts, for a person to look at and accept; nothing is stored. */
final class TrialFitRoutes {
    private static final double CONFIDENCE = 0.8;
    private static final int POINTS = 41;

    private record Question(List<Trial> trials, Optional<Double> slope, Optional<Double> confidence, Optional<Likely> fieldFactor) { }

    record BandPoint(double thicknessMm, Likely trialMmPerMin, Likely fieldMmPerMin) { }

    private record Answer(TrialFit fit, double geometricSd, int degreesOfFreedom, List<BandPoint> band, Optional<CuttingTables.Factor> usualFieldFactor) { }

    private final CuttingTables.Factor usual;

    private TrialFitRoutes(CuttingTables.Factor usual) {
        this.usual = usual;
    }

    static void on(Routes routes) {
        routes.post("/api/trial-fit", new TrialFitRoutes(usualFactor())::answer);
    }

    /** Field speed over trial speed, as the table has it. */
    static CuttingTables.Factor usualFactor() {
        return CuttingTables.trialToField().stream().filter(factor -> factor.code().equals("field-speed")).findFirst()
            .orElseThrow(() -> new IllegalStateException("table trial_to_field: no field-speed"));
    }

    private void answer(Context ctx) {
        Address.plain(ctx);
        Question question = Json.read(Body.of(ctx), Question.class);
        double confidence = Require.optional(question.confidence()).orElse(CONFIDENCE);
        Optional<Likely> own = Require.optional(question.fieldFactor());
        Likely factor = own.orElse(usual.value());
        TrialFit fit = Require.optional(question.slope()).map(slope -> TrialFit.withSlope(question.trials(), slope, confidence, factor))
            .orElseGet(() -> TrialFit.of(question.trials(), confidence, factor));
        Routes.json(ctx, Json.bytes(new Answer(fit, fit.curve().geometricSd(), fit.curve().degreesOfFreedom(), band(fit.curve()),
            own.isPresent() ? Optional.empty() : Optional.of(usual))));
    }

    /** Equal steps of ln thickness over what was tried. */
    static List<BandPoint> band(TrialCurve curve) {
        double from = curve.minThicknessMm();
        double to = curve.maxThicknessMm();
        try {
            return IntStream.range(0, POINTS).mapToDouble(i -> i == POINTS - 1 ? to : from * Math.pow(to / from, i / (POINTS - 1.0))).mapToObj(
                h -> new BandPoint(h, curve.trialMmPerMin(h), curve.trialMmPerMin(h).times(curve.fieldFactor()))).toList();
        } catch (Invalid invalid) {
            throw new Invalid("trials", "scatter so much that no speed can be predicted from them. Look for a wrong entry.");
        }
    }
}
