package kerfbook.choice;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Component;
import kerfbook.campaign.Cut;
import kerfbook.campaign.Handling;
import kerfbook.campaign.PackageType;
import kerfbook.cutting.CuttingTime;
import kerfbook.cutting.Technique;
import kerfbook.exposure.PackageRates;
import kerfbook.exposure.PointRates;
import kerfbook.exposure.UnitRateCache;
import kerfbook.quantity.Incomplete;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Likely;
import kerfbook.segmentation.Answer;
import kerfbook.segmentation.Bounds;
import kerfbook.segmentation.Box;
import kerfbook.segmentation.Job;
import kerfbook.segmentation.Load;
import kerfbook.segmentation.Plan;
import kerfbook.segmentation.PlannedCut;
import kerfbook.segmentation.RateCeiling;
import kerfbook.segmentation.Segmentation;
import kerfbook.shielding.Inventory;
import kerfbook.shielding.Matter;

/** Divides a component of a campaign with the campaign's packages, techniques and lifting gear. */
public final class Dividing {
    private static final double KG_PER_M3_OF_G_PER_CM3 = 1e3;

    private final Campaign campaign;
    private final Component component;
    private final PackageType type;
    private final Technique technique;
    private final Optional<ToDoubleFunction<Load>> surface;
    private final Job job;

    private Dividing(Campaign campaign, String component, DivisionQuestion question, Optional<UnitRateCache> units) {
        this.campaign = campaign;
        this.component = campaign.component(component).orElseThrow(() -> new Invalid("component", "there is no component \"" + component + "\"."));
        this.type = campaign.packages().stream().filter(each -> each.code().equals(question.packageType())).findFirst()
            .orElseThrow(() -> new Invalid("package_type", "there is no package \"" + question.packageType() + "\" in this campaign."));
        this.technique = campaign.techniques().stream().filter(each -> each.code().equals(question.technique())).findFirst()
            .orElseThrow(() -> new Invalid("technique", "there is no technique \"" + question.technique() + "\" in this campaign."));
        this.surface = type.surfaceUsvPerH().map(ceiling -> surface(units));
        this.job = Job.of(this.component, technique.kerfMm().likely(), bounds(question));
    }

    /**
     * The plans side by side.
     *
     * @param units photon data, for packages with a ceiling on their dose rate
     * @throws Invalid    naming the field of the question that is wrong
     * @throws Incomplete if the campaign lacks what the question needs
     */
    public static DivisionAnswer of(Campaign campaign, String component, DivisionQuestion question, Optional<UnitRateCache> units) {
        return new Dividing(campaign, component, question, units).answer(question);
    }

    private DivisionAnswer answer(DivisionQuestion question) {
        Answer answer = Segmentation.plans(job);
        List<ShownPlan> plans = new ArrayList<>();
        answer.plans().forEach(plan -> plans.add(shown(plan)));
        question.division().ifPresent(division -> plans.add(shown(Segmentation.byHand(job, division))));
        return new DivisionAnswer(component.code(), component.name(), component.massKg(), type.code(), technique.code(), job.kerfMm(),
            job.bounds().hoistKg(), plans, answer.impossible(), answer.leastPieces(), answer.tried(), notes());
    }

    private ShownPlan shown(Plan plan) {
        Optional<String> because = plan.cuts().stream().flatMap(cut -> component.whyNot(technique, cut.thicknessMm()).stream()).findFirst();
        return new ShownPlan(plan.aim(), plan.division(), plan.division().words(), plan.cutMetres(), plan.cutCount(), plan.pieceCount(),
            plan.packed().map(packed -> packed.packages()), plan.heaviestKg(), plan.thickestMm(), because.isPresent() ? Optional.empty() : Optional.of(hours(plan)),
            because, plan.cuts(), plan.pieces(), plan.kerf(), plan.packed(), hottest(plan), plan.notCoarser(), plan.exceeded(), plan.outlines(),
            ShownPlan.conservation(job.massKg(), job.becquerels(), plan), rows(plan));
    }

    private Likely hours(Plan plan) {
        Likely hours = Likely.exactly(0);
        for (PlannedCut cut : plan.cuts()) {
            hours = hours.plus(CuttingTime.hours(cut.count(), cut.lengthMm(), cut.thicknessMm(), component.material(), technique));
        }
        return hours;
    }

    private Optional<Double> hottest(Plan plan) {
        return surface.flatMap(rate -> plan.packed().map(packed -> packed.loads().stream()
            .mapToDouble(load -> rate.applyAsDouble(new Load(type.container(), load.massKg(), load.becquerels()))).max().orElseThrow()));
    }

    /** With codes that no other component's cuts have. */
    private List<Cut> rows(Plan plan) {
        List<String> taken = campaign.cuts().stream().filter(cut -> !cut.component().equals(component.code())).map(Cut::code).toList();
        String stem = component.code().length() > 52 ? component.code().substring(0, 52) : component.code();
        List<Cut> rows = new ArrayList<>();
        int number = 0;
        for (Cut cut : plan.cutRows(stem, component.name().length() > 160 ? component.name().substring(0, 160) : component.name(), technique.code())) {
            do {
                number++;
            } while (taken.contains(stem + "-" + number));
            rows.add(new Cut(stem + "-" + number, component.code(), cut.name(), cut.technique(), cut.count(), cut.lengthMm(), cut.thicknessMm(), cut.metalShare()));
        }
        return rows;
    }

    private Bounds bounds(DivisionQuestion question) {
        Optional<Handling> handling = campaign.settings().handling();
        double hoistKg = question.hoistKg().or(() -> handling.map(Handling::hoistKg)).orElseThrow(() -> new Incomplete("settings.handling",
            "is missing: say what the hoist lifts, here or in the settings."));
        Optional<Box> largest = question.largestPiece().or(() -> handling.flatMap(Handling::largestPiece))
            .map(piece -> new Box(piece.lengthMm(), piece.widthMm(), piece.heightMm()));
        return new Bounds(type.container(), hoistKg, question.hoistsPackages().or(() -> handling.map(Handling::hoistsPackages)).orElse(false), largest,
            question.clearanceMm().or(() -> handling.flatMap(Handling::clearanceMm)).orElse(0.0),
            question.mostPieces().orElse(DivisionQuestion.USUAL_PIECES), question.metresAllowance().orElse(DivisionQuestion.USUAL_ALLOWANCE),
            question.activityLimit(), type.surfaceUsvPerH().map(ceiling -> new RateCeiling(ceiling, surface.orElseThrow())));
    }

    /** Rate at the surface of a loaded package. A content heavier than solid metal in that room is taken as solid, which shields less. */
    private ToDoubleFunction<Load> surface(Optional<UnitRateCache> units) {
        int at = campaign.components().indexOf(component);
        if (component.inventory().isEmpty()) {
            throw new Incomplete("components[" + at + "].inventory", "is missing: the package \"" + type.code() + "\" has a ceiling on its dose rate.");
        }
        UnitRateCache data = units.orElseThrow(() -> new Incomplete("packages", "have a ceiling on their dose rate, but there are no photon data here."));
        if (!data.data().materialNames().contains(component.material())) {
            throw new Incomplete("components[" + at + "].material", "\"" + component.material() + "\" is not among the materials whose attenuation is known.");
        }
        PackageRates.Inside inside = new PackageRates.Inside(Optional.empty(), Optional.of(type.innerLengthMm()), Optional.of(type.innerWidthMm()), type.innerHeightMm());
        List<PackageRates.Wall> walls = type.wallMm() > 0 ? List.of(new PackageRates.Wall(type.wallMaterial(), type.wallMm())) : List.of();
        double gPerCm3 = data.data().material(component.material(), "material").densityGPerCm3();
        double solidKg = type.container().innerVolumeM3() * component.densityKgPerM3();
        PointRates rates = new PointRates(data);
        LocalDate on = component.inventory().get().referenceOn();
        return load -> {
            Matter content = new Matter(component.material(), Math.min(load.massKg(), solidKg) / (type.container().innerVolumeM3() * gPerCm3 * KG_PER_M3_OF_G_PER_CM3));
            return PackageRates.surfaceUsvPerH(rates, PackageRates.loaded(component.code(), content, data.data(), inside, walls, Inventory.of(load.becquerels()), on),
                inside, walls, on);
        };
    }

    private List<String> notes() {
        List<String> notes = new ArrayList<>();
        notes.add("Best of the even divisions that were tried; uneven ones are not.");
        component.inventory().ifPresent(inventory -> notes.add("Activities are those of " + inventory.referenceOn() + ", spread evenly over the metal."));
        if (surface.isPresent()) {
            notes.add("Surface dose rate of a package whose content is spread evenly; pieces that lie against one wall can give several times more there.");
        }
        if (component.shape().openFraction().isPresent()) {
            notes.add("Cut metres of a grid run over its holes too.");
        }
        return notes;
    }
}
