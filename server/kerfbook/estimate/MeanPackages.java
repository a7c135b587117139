package kerfbook.estimate;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Component;
import kerfbook.campaign.PackageType;
import kerfbook.quantity.Invalid;
import kerfbook.waste.SpecificActivity;

/** The mean loaded package of each component, from what the waste account leaves of it. */
final class MeanPackages {
    private MeanPackages() { }

    static List<PackageForecast> of(Campaign campaign, WasteForecast waste, Optional<Basis.Transport> transport, PackageDoses doses) {
        List<PackageForecast> all = new ArrayList<>();
        for (int i = 0; i < campaign.components().size(); i++) {
            Component component = campaign.components().get(i);
            Optional<PackageType> type = campaign.packages().stream().filter(each -> component.packageType().filter(each.code()::equals).isPresent()).findFirst();
            try {
                all.add(of(component, waste.components().get(i), type, transport, doses));
            } catch (Invalid invalid) {
                throw PackageDoses.tooMuch(i, invalid);
            }
        }
        return List.copyOf(all);
    }

    private static PackageForecast of(Component component, WasteForecast.OfComponent each, Optional<PackageType> type, Optional<Basis.Transport> transport,
                                      PackageDoses doses) {
        Optional<Double> kg = each.piecesKg().map(all -> all / each.packages());
        Optional<String> code = type.map(PackageType::code);
        Optional<Double> loaded = type.flatMap(kind -> kg.map(content -> content + kind.emptyKg()));
        Optional<Double> fill = type.flatMap(kind -> kg.map(content -> content / kind.payloadKg()));
        Optional<Double> room = type.flatMap(kind -> kg.map(content -> content / component.densityKgPerM3() / PackageDoses.volumeM3(kind)));
        Optional<String> noRates = doses.whyNot(component, type, room.orElse(0.0), each.activity().isPresent());
        if (each.activity().isEmpty()) {
            return new PackageForecast(each.component(), each.packages(), kg, code, loaded, fill, room, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                Optional.empty(), Optional.empty(), List.of(), Optional.of(each.piecesKg().isEmpty() ? "the cuts take more than its mass"
                    : each.notKnown().stream().filter(what -> what.startsWith("activity")).findFirst().orElse("no inventory is given")), Optional.empty(), noRates);
        }
        WasteForecast.Activity activity = each.activity().get();
        List<PackageForecast.Nuclide> nuclides = activity.nuclides().stream()
            .map(part -> new PackageForecast.Nuclide(part.nuclide(), part.pieces() / each.packages())).toList();
        Optional<SpecificActivity> specific = Optional.empty();
        Optional<String> because = Optional.empty();
        if (transport.isEmpty() || kg.get() <= 0) {
            because = Optional.of(transport.isEmpty() ? "no A2 values are at hand" : "nothing is left to be packed");
        } else {
            Map<String, Double> becquerels = new TreeMap<>();
            nuclides.forEach(part -> becquerels.put(part.nuclide(), part.becquerel()));
            try {
                specific = Optional.of(SpecificActivity.of(becquerels, kg.get(), transport.get().a2(), transport.get().lsa2PerG(), transport.get().lsa3PerG()));
            } catch (Invalid invalid) {
                because = Optional.of(invalid.faults().get(0).field().replace("becquerels.", "") + " " + invalid.faults().get(0).detail());
            }
        }
        return new PackageForecast(each.component(), each.packages(), kg, code, loaded, fill, room, Optional.of(activity.on()),
            Optional.of(activity.piecesBecquerel() / each.packages()), specific.map(SpecificActivity::numberOfA2), specific.map(SpecificActivity::a2PerG),
            specific.map(SpecificActivity::kind), specific.map(SpecificActivity::typeA), nuclides, because,
            noRates.isPresent() ? Optional.empty() : Optional.of(doses.around(component, type.get(), room.get(), nuclides, activity.on())), noRates);
    }
}
