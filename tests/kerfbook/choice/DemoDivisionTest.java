package kerfbook.choice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Component;
import kerfbook.campaign.Cut;
import kerfbook.document.Documents;
import kerfbook.estimate.Basis;
import kerfbook.segmentation.Aim;
import kerfbook.segmentation.Division;
import kerfbook.tables.BasisTables;
import org.junit.jupiter.api.Test;

/** The demonstration's cuts are those of the segmentation helper where its story says so. */
class DemoDivisionTest {
    private static final Path STORY = Path.of("demo-data/demo-campaign.md");
    private static final Basis BASIS = BasisTables.read();

    /** LAW: pieces, cuts, metres and thicknesses of each part are those of its division; every part is in the table, and by hand only with a reason. */
    @Test
    void parts_are_cut_as_the_helper_divides_them() throws IOException {
        Campaign demo = new Documents(BASIS.ruleSets().keySet(), BASIS.nuclides().keySet(), BASIS.materials())
            .read(Files.readAllBytes(Path.of("demo-data/demo-campaign.json")));
        List<String> told = new ArrayList<>();
        for (String line : Files.readAllLines(STORY).stream().filter(row -> row.matches("\\| [a-z-]+ \\| (by hand|[a-z]+ \\d+ \\d+ \\d+) \\|.*")).toList()) {
            String[] cells = Arrays.stream(line.split("\\|")).map(String::strip).toArray(String[]::new);
            told.add(cells[1]);
            if (cells[2].equals("by hand")) {
                assertFalse(cells[3].isEmpty(), line);
            } else {
                same(demo, demo.component(cells[1]).orElseThrow(), cells[2].split(" "));
            }
        }
        assertEquals(demo.components().stream().map(Component::code).sorted().toList(), told.stream().sorted().toList());
    }

    private static void same(Campaign demo, Component component, String[] division) {
        List<Cut> cuts = demo.cuts().stream().filter(cut -> cut.component().equals(component.code())).toList();
        Division by = new Division(Division.Pattern.valueOf(division[0].toUpperCase()), Integer.parseInt(division[1]), Integer.parseInt(division[2]), Integer.parseInt(division[3]));
        DivisionQuestion question = new DivisionQuestion(component.packageType().orElseThrow(), cuts.get(0).technique(), Optional.of(1_500.0), Optional.empty(), Optional.empty(),
            Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.of(by), Optional.of(Aim.BY_HAND));
        ShownPlan plan = Dividing.of(demo, component.code(), question, Optional.empty()).plan(Aim.BY_HAND).orElseThrow();
        assertEquals(plan.pieceCount(), component.pieces(), component.code());
        double metres = cuts.stream().mapToDouble(cut -> cut.count() * cut.lengthMm() / 1000).sum();
        assertEquals(plan.cutMetres(), metres, 1e-4 * metres, component.code());
        assertEquals(plan.cutRows().stream().mapToDouble(Cut::thicknessMm).max().orElseThrow(), cuts.stream().mapToDouble(Cut::thicknessMm).max().orElseThrow(), 1e-9, component.code());
    }
}
