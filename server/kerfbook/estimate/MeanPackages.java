package kerfbook.estimate;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.PackageType;
import kerfbook.quantity.Invalid;
import kerfbook.waste.A2;
import kerfbook.waste.SpecificActivity;

/** The mean loaded package of each component, from what the waste account leaves of it. */
final class MeanPackages {
    private MeanPackages() { }

    static List<PackageForecast> of(Campaign campaign, WasteForecast waste, Optional<Basis.Transport> transport) {
        List<PackageForecast> all = new ArrayList<>();
        for (int i = 0; i < campaign.components().size(); i++) {
            Optional<String> code = campaign.components().get(i).packageType();
            Optional<PackageType> type = campaign.packages().stream().filter(each -> code.filter(each.code()::equals).isPresent()).findFirst();
            all.add(of(waste.components().get(i), type, transport));
        }
        return List.copyOf(all);
    }

    private static PackageForecast of(WasteForecast.OfComponent each, Optional<PackageType> type, Optional<Basis.Transport> transport) {
        Optional<Double> kg = each.piecesKg().map(all -> all / each.packages());
        Optional<String> code = type.map(PackageType::code);
        Optional<Double> loaded = type.flatMap(kind -> kg.map(content -> content + kind.emptyKg()));
        Optional<Double> fill = type.flatMap(kind -> kg.map(content -> content / kind.payloadKg()));
        if (each.activity().isEmpty()) {
            return new PackageForecast(each.component(), each.packages(), kg, code, loaded, fill, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                Optional.empty(), Optional.empty(), List.of(), Optional.of(each.piecesKg().isEmpty() ? "the cuts take more than its mass"
                    : each.notKnown().stream().filter(what -> what.startsWith("activity")).findFirst().orElse("no inventory is given")));
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
                specific = Optional.of(specific(becquerels, kg.get(), transport.get()));
            } catch (Invalid invalid) {
                because = Optional.of(invalid.faults().get(0).field().replace("becquerels.", "") + " " + invalid.faults().get(0).detail());
            }
        }
        return new PackageForecast(each.component(), each.packages(), kg, code, loaded, fill, Optional.of(activity.on()), Optional.of(activity.piecesBecquerel() / each.packages()),
            specific.map(SpecificActivity::numberOfA2), specific.map(SpecificActivity::a2PerG), specific.map(SpecificActivity::kind),
            specific.map(SpecificActivity::typeA), nuclides, because);
    }

    private static SpecificActivity specific(Map<String, Double> becquerels, double kg, Basis.Transport transport) {
        A2 a2 = transport.a2();
        double n = a2.sum(becquerels);
        double perG = n / (kg * 1000);
        return new SpecificActivity(n, perG, SpecificActivity.kind(perG, transport.lsa2PerG(), transport.lsa3PerG()));
    }
}
