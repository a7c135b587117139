package kerfbook.document;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Inventory;
import kerfbook.campaign.Origins;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Invalid.Fault;
import kerfbook.quantity.TableRow;

/** Campaign documents: read, written, put together from parts. */
public final class Documents {
    private final Set<String> ruleSets;
    private final Set<String> nuclides;
    private final Set<String> materials;
    private final Predicate<TableRow> shipped;

    /**
     * @param ruleSets  codes of the limit rule sets
     * @param nuclides  names of the nuclides that the tables know
     * @param materials names of the materials that the tables know
     * @param shipped   whether a table has such a row: an origin may name no other
     */
    public Documents(Set<String> ruleSets, Set<String> nuclides, Set<String> materials, Predicate<TableRow> shipped) {
        this.ruleSets = Set.copyOf(ruleSets);
        this.nuclides = Set.copyOf(nuclides);
        this.materials = Set.copyOf(materials);
        this.shipped = shipped;
    }

    /** Rows that origins name are not looked up. */
    public Documents(Set<String> ruleSets, Set<String> nuclides, Set<String> materials) {
        this(ruleSets, nuclides, materials, row -> true);
    }

    /**
     * Reads a campaign document.
     *
     * @throws Invalid with every field that is wrong, or the first where reading cannot go on
     */
    public Campaign read(byte[] json) {
        Campaign campaign = Json.read(json, Campaign.class);
        requireInTables(campaign);
        return campaign;
    }

    /** The campaign as a document for people: import of it gives the same campaign. */
    public byte[] write(Campaign campaign) {
        return Json.readable(campaign);
    }

    /** A campaign from its settings and, kind by kind, its objects in order. */
    public Campaign assemble(byte[] settings, Map<String, List<byte[]>> parts) {
        ByteArrayOutputStream json = new ByteArrayOutputStream();
        put(json, "{\"format\":\"" + Campaign.FORMAT + "\",\"settings\":");
        json.writeBytes(settings);
        for (Kind<?> kind : Kind.ALL) {
            put(json, ",\"" + kind.name() + "\":[");
            List<byte[]> objects = parts.getOrDefault(kind.name(), List.of());
            for (int i = 0; i < objects.size(); i++) {
                put(json, i == 0 ? "" : ",");
                json.writeBytes(objects.get(i));
            }
            put(json, "]");
        }
        put(json, "}");
        return read(json.toByteArray());
    }

    /** SHA-256 over the document in the house order, options left out: the same inputs have the same digest, wherever they are kept. */
    public static String digest(Campaign campaign) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(Json.inputs(campaign)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    private void requireInTables(Campaign campaign) {
        List<Fault> faults = new ArrayList<>();
        if (!ruleSets.contains(campaign.settings().ruleSet())) {
            faults.add(new Fault("settings.rule_set", "there is no rule set \"" + campaign.settings().ruleSet() + "\". Known are: "
                + String.join(", ", ruleSets.stream().sorted().toList()) + "."));
        }
        for (int i = 0; i < campaign.sources().size(); i++) {
            for (int k = 0; k < campaign.sources().get(i).nuclides().size(); k++) {
                requireNuclide(campaign.sources().get(i).nuclides().get(k).nuclide(), "sources[" + i + "].nuclides[" + k + "].nuclide", faults);
            }
        }
        for (int i = 0; i < campaign.components().size(); i++) {
            if (campaign.components().get(i).inventory().isPresent()) {
                requireNuclides(campaign.components().get(i).inventory().get(), "components[" + i + "].inventory", faults);
            }
        }
        for (int i = 0; i < campaign.sources().size(); i++) {
            if (campaign.sources().get(i).body().isPresent()) {
                requireMaterial(campaign.sources().get(i).body().get().material(), "sources[" + i + "].body.material", faults);
                requireNuclides(campaign.sources().get(i).body().get().inventory(), "sources[" + i + "].body.inventory", faults);
            }
        }
        for (int i = 0; i < campaign.shields().size(); i++) {
            requireMaterial(campaign.shields().get(i).material(), "shields[" + i + "].material", faults);
        }
        for (int i = 0; i < campaign.packages().size(); i++) {
            requireMaterial(campaign.packages().get(i).wallMaterial(), "packages[" + i + "].wall_material", faults);
        }
        for (int i = 0; i < campaign.options().size(); i++) {
            for (int k = 0; k < campaign.options().get(i).changes().size(); k++) {
                String at = "options[" + i + "].changes[" + k + "].shield.material";
                campaign.options().get(i).changes().get(k).shield().ifPresent(shield -> requireMaterial(shield.material(), at, faults));
            }
        }
        for (Origins.At at : Origins.of(campaign)) {
            for (int k = 0; k < at.origin().copiedFrom().size(); k++) {
                TableRow row = at.origin().copiedFrom().get(k);
                if (!shipped.test(row)) {
                    faults.add(new Fault(at.field() + ".rows[" + k + "]", "there is no row \"" + row.row() + "\" in a table \"" + row.table()
                        + "\" of those that ship. Leave it out: the source is then your own."));
                }
            }
        }
        if (!faults.isEmpty()) {
            throw new Invalid(faults);
        }
    }

    private void requireNuclides(Inventory inventory, String field, List<Fault> faults) {
        for (int k = 0; k < inventory.activities().size(); k++) {
            requireNuclide(inventory.activities().get(k).nuclide(), field + ".activities[" + k + "].nuclide", faults);
        }
    }

    private void requireMaterial(String material, String field, List<Fault> faults) {
        if (!materials.contains(material)) {
            faults.add(new Fault(field, "the material \"" + material + "\" is not in the tables. Known are: "
                + String.join(", ", materials.stream().sorted().toList()) + "."));
        }
    }

    private void requireNuclide(String nuclide, String field, List<Fault> faults) {
        if (!nuclides.contains(nuclide)) {
            faults.add(new Fault(field, "the nuclide \"" + nuclide + "\" is not in the tables. Known are: "
                + String.join(", ", nuclides.stream().sorted().toList()) + "."));
        }
    }

    private static void put(ByteArrayOutputStream json, String text) {
        json.writeBytes(text.getBytes(StandardCharsets.UTF_8));
    }
}
