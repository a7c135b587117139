package kerfbook.estimate;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import kerfbook.campaign.Area;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Component;
import kerfbook.campaign.Source;
import kerfbook.exposure.Calibration;

/** What somebody should look at where rates are calculated or calibrated. */
final class CalculatedFindings {
    /** A factor above this, or below its inverse, asks; judgement. */
    private static final double FACTOR_ASKS_ABOVE = 3;

    private final Campaign campaign;
    private final List<Forecast.Task> tasks;
    private final AreaRates rates;
    private final List<Finding> findings;

    CalculatedFindings(Campaign campaign, List<Forecast.Task> tasks, AreaRates rates, List<Finding> findings) {
        this.campaign = campaign;
        this.tasks = tasks;
        this.rates = rates;
        this.findings = findings;
    }

    void add() {
        if (campaign.areas().stream().noneMatch(area -> area.rateFrom().worked())) {
            return;
        }
        lines();
        gaps();
        if (campaign.areas().stream().anyMatch(area -> area.rateFrom() == Area.RateFrom.CALIBRATED)) {
            calibration(rates.calibration());
        }
    }

    /** Rates that lines with dose rest on. */
    private void lines() {
        Map<String, RateUsed> byId = new LinkedHashMap<>();
        rates.used().forEach(rate -> byId.put(rate.id(), rate));
        Map<String, Double> extrapolated = new LinkedHashMap<>();
        Map<String, LocalDate> past = new LinkedHashMap<>();
        tasks.forEach(task -> task.steps().forEach(step -> step.lines().forEach(line -> line.rate().map(byId::get).ifPresent(rate -> {
            if (rate.extrapolated()) {
                extrapolated.merge(rate.area(), line.personUsv(), Double::sum);
            }
            if (rate.from() == Area.RateFrom.CALIBRATED && rate.pastValidity() && line.personUsv() > 0) {
                past.merge(rate.area(), task.start(), (one, other) -> one.isAfter(other) ? one : other);
            }
        }))));
        extrapolated.forEach((area, usv) -> add(Finding.Weight.CHECK, "areas", area, "Calculated rates in " + area + " are extrapolated on some days; "
            + Findings.number(usv / 1000) + " person-mSv rest on them.", "Beyond 40 mean free paths a rate is good to an order of magnitude at most. Measure there."));
        past.forEach((area, day) -> add(Finding.Weight.DECIDE, "areas", area, "Dose in " + area + " is planned until " + day
            + ", when every survey of the calibration is past its validity.", "Measure again in time, or say why it still holds."));
    }

    private void gaps() {
        for (Component component : campaign.components()) {
            if (component.inventory().isPresent() && component.place().isEmpty()) {
                add(Finding.Weight.CHECK, "components", component.code(), component.code() + " has an inventory but no place.",
                    "It adds nothing to calculated rates.");
            }
        }
        for (Source source : campaign.sources()) {
            if (source.component().isEmpty() && source.body().isEmpty()) {
                add(Finding.Weight.NOTE, "sources", source.code(), "Source " + source.code() + " has no body.", "It adds nothing to calculated rates.");
            }
        }
    }

    private void calibration(Calibration.Fit fit) {
        for (Calibration.Factor factor : fit.factors()) {
            if (factor.factor() > FACTOR_ASKS_ABOVE || factor.factor() < 1 / FACTOR_ASKS_ABOVE) {
                add(Finding.Weight.CHECK, "calibration", factor.source(), "The surveys scale " + factor.source() + " by " + Findings.number(factor.factor()) + ".",
                    "Its activity, its place or the water over it is not as described.");
            }
        }
        for (Calibration.Residual off : fit.outliers()) {
            add(Finding.Weight.CHECK, "surveys", off.survey(), "At \"" + off.point() + "\" " + Findings.number(off.readUsvPerH()) + " µSv/h were read on " + off.on()
                + " and " + Findings.number(off.calibratedUsvPerH()) + " are calculated.", "More than 2 of the reading's own standard deviations "
                + "apart: a source is missing, or the reading is wrong.");
        }
    }

    private void add(Finding.Weight weight, String about, String code, String fact, String means) {
        findings.add(new Finding(weight, about, code, fact, means));
    }
}
