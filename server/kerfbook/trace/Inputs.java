package kerfbook.trace;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Component;
import kerfbook.campaign.Cut;
import kerfbook.campaign.Inventory;
import kerfbook.campaign.PoolWater;
import kerfbook.campaign.Source;
import kerfbook.campaign.Step;
import kerfbook.campaign.Survey;
import kerfbook.cutting.Jet;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Origin;
import kerfbook.quantity.TableRow;

/** Everything in a plan that a forecast's figures are made of, each with what its writer says of where it comes from. */
public final class Inputs {
    private static final double BQ_PER_TBQ = 1e12;

    private final List<Input> all = new ArrayList<>();

    private Inputs() { }

    public static List<Input> of(Campaign campaign) {
        Inputs inputs = new Inputs();
        inputs.settings(campaign);
        campaign.techniques().forEach(each -> inputs.add("techniques", each.code(), "", each.name(), each.areaRateCm2PerMin(), "cm²/min", each.origin(),
            each.speed().flatMap(speed -> speed.jet()).map(Jet::machinability).orElse(List.of()).stream().flatMap(number -> number.origin().copiedFrom().stream()).toList()));
        campaign.techniques().forEach(each -> each.faultsPerH().ifPresent(rate -> inputs.add("techniques", each.code(), "/faults", "Fault rate of " + each.name(),
            Optional.of(rate), "faults a tool-on hour", each.whereFaults(), List.of())));
        campaign.factors().forEach(each -> inputs.add("factors", each.code(), "", each.name(), Optional.of(each.percent()), "%", each.origin(), List.of()));
        campaign.routines().forEach(routine -> routine.tasks().forEach(task ->
            inputs.steps("routines", routine.code(), "/" + task.code(), task.name(), task.steps())));
        campaign.tasks().forEach(task -> inputs.steps("tasks", task.code(), "", task.name(), task.steps()));
        campaign.components().forEach(inputs::component);
        campaign.cuts().forEach(inputs::cut);
        campaign.areas().forEach(area -> inputs.own("areas", area.code(), "", "Background at " + area.name(), Optional.of(Likely.exactly(area.backgroundUsvPerH())),
            "µSv/h", stated("Entered with the area.", area.note()), List.of()));
        campaign.surveys().forEach(inputs::survey);
        campaign.sources().forEach(inputs::source);
        campaign.shields().forEach(shield -> inputs.own("shields", shield.code(), "", shield.name(), Optional.empty(), "",
            "Entered with the shield: " + shield.material() + " between the planes given there.", List.of(new TableRow("materials", shield.material()))));
        campaign.packages().forEach(each -> inputs.own("packages", each.code(), "", each.name(), Optional.empty(), "", stated("Entered with the package: "
            + number(each.innerLengthMm()) + " × " + number(each.innerWidthMm()) + " × " + number(each.innerHeightMm()) + " mm inside, " + number(each.payloadKg())
            + " kg content, wall " + number(each.wallMm()) + " mm " + each.wallMaterial() + ".", each.note()), List.of(new TableRow("materials", each.wallMaterial()))));
        campaign.overrides().forEach(each -> inputs.own("overrides", each.code(), "", "Replaced: " + each.figure() + " of " + each.task() + ", " + each.step(),
            Optional.of(Likely.exactly(each.value())), "", each.reason() + " Decided on " + each.decidedOn() + ".", List.of()));
        campaign.prices().forEach(each -> inputs.add("prices", each.code(), "", each.name(), Optional.of(Likely.exactly(each.amount())),
            each.currency() + " of " + each.priceYear(), each.origin(), List.of()));
        return List.copyOf(inputs.all);
    }

    private void settings(Campaign campaign) {
        var calendar = campaign.settings().calendar();
        plain("settings/calendar", "Working calendar", Optional.of(Likely.exactly(calendar.productiveHoursPerShift())), "productive h a shift",
            "Entered with the settings: " + calendar.shiftsPerDay() + " shifts a day on " + calendar.workingDays().size() + " days a week.");
        campaign.settings().pool().ifPresent(pool -> {
            plain("settings/pool", "Pool", Optional.empty(), "", "Entered with the settings: " + number(pool.lengthM()) + " × " + number(pool.widthM())
                + " m, " + number(pool.depthM()) + " m deep, water " + number(pool.waterLevelMm()) + " mm from its normal level.");
            pool.water().ifPresent(this::water);
        });
    }

    private void water(PoolWater water) {
        all.add(new Input("settings/pool/water", "settings", Optional.empty(), "Pool water and its filter", Optional.of(Likely.exactly(water.filterM3PerH())), "m³/h",
            water.origin().text(), Optional.of(water.origin().status()), water.origin().copiedFrom()));
        water.releases().forEach(release -> all.add(new Input("settings/pool/water/" + release.technique(), "settings", Optional.empty(),
            "Fines that " + release.technique() + " leaves in the water", Optional.of(release.suspended()), "of the kerf", release.origin().text(),
            Optional.of(release.origin().status()), release.origin().copiedFrom())));
    }

    private void steps(String kind, String code, String under, String task, List<Step> steps) {
        steps.forEach(step -> add(kind, code, under + "/" + step.code(), task + ": " + step.name(), Optional.of(step.hoursEach()),
            "h for " + step.driver().each(), step.origin(), List.of()));
    }

    private void component(Component component) {
        own("components", component.code(), "/division", "Pieces and packages of " + component.name(), Optional.of(Likely.exactly(component.pieces())), "pieces",
            stated("Entered with the component: " + component.pieces() + " pieces in " + component.packages() + " packages.", component.note()), List.of());
        own("components", component.code(), "/metal", "Material of " + component.name(), Optional.of(Likely.exactly(component.densityKgPerM3())), "kg/m³",
            stated("Entered with the component: " + component.material() + ", " + number(component.massKg()) + " kg.", component.note()), List.of());
        component.inventory().ifPresent(inventory -> inventory("components", component.code(), component.name(), inventory));
    }

    private void inventory(String kind, String code, String name, Inventory inventory) {
        add(kind, code, "", "Inventory of " + name, Optional.of(Likely.exactly(inventory.activities().stream().mapToDouble(Inventory.Activity::becquerel).sum() / BQ_PER_TBQ)), "TBq",
            inventory.origin(), inventory.activities().stream().map(activity -> new TableRow("nuclides", activity.nuclide())).toList());
    }

    private void cut(Cut cut) {
        own("cuts", cut.code(), "", "Cuts: " + cut.name(), Optional.of(Likely.exactly(cut.count())), "cuts", "Entered with the cuts: " + cut.count() + " of "
            + number(cut.lengthMm()) + " mm through " + number(cut.thicknessMm()) + " mm with " + cut.technique()
                + cut.metalShare().map(share -> ", " + number(100 * share) + " % of the face metal").orElse("") + ".", List.of());
    }

    private void survey(Survey survey) {
        own("surveys", survey.code(), "", "Survey " + survey.code(), Optional.of(Likely.exactly(survey.usvPerH())), "µSv/h", stated("Read on " + survey.surveyedOn()
            + " with " + survey.instrument() + ", " + survey.points().size() + " points; valid until " + survey.validUntil() + ".", survey.note()), List.of());
    }

    private void source(Source source) {
        if (source.body().isPresent()) {
            inventory("sources", source.code(), source.name(), source.body().get().inventory());
        } else {
            own("sources", source.code(), "", "Shares of the dose rate of " + source.name(), Optional.empty(), "",
                "Entered with the source" + source.sharesOn().map(day -> ", for " + day).orElse(": it does not decay") + ".",
                source.nuclides().stream().map(share -> new TableRow("nuclides", share.nuclide())).toList());
        }
    }

    @SuppressWarnings("OptionalUsedAsFieldOrParameterType")
    private void add(String kind, String code, String under, String name, Optional<Likely> value, String unit, Origin origin, List<TableRow> lookedUp) {
        List<TableRow> rows = new ArrayList<>(origin.copiedFrom());
        rows.addAll(lookedUp);
        all.add(new Input(kind + "/" + code + under, kind, Optional.of(code), name, value, unit, origin.text(), Optional.of(origin.status()), rows));
    }

    @SuppressWarnings("OptionalUsedAsFieldOrParameterType")
    private void own(String kind, String code, String under, String name, Optional<Likely> value, String unit, String source, List<TableRow> rows) {
        all.add(new Input(kind + "/" + code + under, kind, Optional.of(code), name, value, unit, source, Optional.empty(), rows));
    }

    @SuppressWarnings("OptionalUsedAsFieldOrParameterType")
    private void plain(String id, String name, Optional<Likely> value, String unit, String source) {
        all.add(new Input(id, "settings", Optional.empty(), name, value, unit, source, Optional.empty(), List.of()));
    }

    private static String stated(String what, String note) {
        return note.isBlank() ? what : what + " " + note;
    }

    private static String number(double value) {
        return value == Math.rint(value) && Math.abs(value) < 1e9 ? String.format(Locale.ROOT, "%.0f", value) : String.format(Locale.ROOT, "%.4g", value);
    }
}
