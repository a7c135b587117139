package kerfbook.http;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Scope;
import kerfbook.outlook.Outlook;
import kerfbook.outlook.Verdict;
import kerfbook.store.Run;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PDPageContentStream.AppendMode;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType1Font;
import org.apache.pdfbox.pdmodel.font.Standard14Fonts;

/** Two pages A4 in black and grey, more where people or matters ask for it: what a run says, what is decided on it, and who signs. */
final class SheetPdf {
    private static final int MOST = 8;
    private static final float LEFT = 45;
    private static final float RIGHT = 550;
    private static final float TOP = 790;
    private static final float LOWEST = 66;
    private static final float SIGNING = 160;
    private static final PDFont PLAIN = new PDType1Font(Standard14Fonts.FontName.HELVETICA);
    private static final PDFont BOLD = new PDType1Font(Standard14Fonts.FontName.HELVETICA_BOLD);

    private final PDDocument document;
    private PDPageContentStream page;
    private float y;

    private SheetPdf(PDDocument document) throws IOException {
        this.document = document;
        turn();
    }

    /** Goes on with a fresh page. */
    private void turn() throws IOException {
        if (page != null) {
            page.close();
        }
        PDPage sheet = new PDPage(PDRectangle.A4);
        document.addPage(sheet);
        page = new PDPageContentStream(document, sheet);
        y = TOP;
    }

    /** Whether a fresh page was needed for what is so high. */
    private boolean turned(float high) throws IOException {
        boolean full = y - high < LOWEST;
        if (full) {
            turn();
        }
        return full;
    }

    static byte[] of(Run run, Outlook outlook, Campaign frozen, Verdict verdict, List<String> decide, LocalDate today) {
        try (PDDocument document = new PDDocument(); ByteArrayOutputStream bytes = new ByteArrayOutputStream()) {
            SheetPdf on = new SheetPdf(document);
            on.first(outlook, verdict, decide);
            on.turn();
            on.second(outlook, frozen, today);
            on.page.close();
            for (int number = 1; number <= document.getNumberOfPages(); number++) {
                on.page = new PDPageContentStream(document, document.getPage(number - 1), AppendMode.APPEND, true, true);
                on.foot(run, outlook, number);
                on.page.close();
            }
            document.save(bytes);
            return bytes.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void first(Outlook outlook, Verdict verdict, List<String> decide) throws IOException {
        lines(BOLD, 15, verdict.heading());
        lines(PLAIN, 10, verdict.under());
        strip(outlook);
        lines(BOLD, 12, "To be decided");
        float[] boxes = {0, 300, 370, 440};
        String[] heads = {"Matter", "Decided", "Owner", "By"};
        row(BOLD, boxes, heads);
        for (int i = 0; i < decide.size() + 2; i++) {
            List<String> lines = i < decide.size() ? broken(PLAIN, 9, decide.get(i), 285) : List.of();
            if (turned(12f * Math.max(2, lines.size()) + 6)) {
                row(BOLD, boxes, heads);
            }
            float top = y + 8;
            for (String line : lines) {
                text(PLAIN, 9, LEFT, line);
                y -= 12;
            }
            y -= lines.isEmpty() ? 22 : 6;
            for (float at : new float[] {300, 370, 440}) {
                page.addRect(LEFT + at, y + 4, 65, top - y - 4);
                page.stroke();
            }
        }
    }

    /** The twenty outcomes on one line, those above the target as diamonds. */
    private void strip(Outlook outlook) throws IOException {
        List<Double> outcomes = outlook.personUsv().outcomes();
        double target = outlook.targets().stream().filter(each -> each.scope() == Scope.CAMPAIGN).mapToDouble(Outlook.Target::personUsv).findFirst()
            .orElse(Double.POSITIVE_INFINITY);
        double most = Math.max(outcomes.get(outcomes.size() - 1), Double.isInfinite(target) ? 0 : target);
        double least = Math.min(outcomes.get(0), target);
        double wide = Math.max(most - least, 1e-9);
        y -= 20;
        for (double usv : outcomes) {
            float at = (float) (LEFT + 10 + (RIGHT - LEFT - 20) * (usv - least) / wide);
            float half = 3;
            page.setNonStrokingColor(usv > target ? 0f : 0.6f);
            page.moveTo(at, y + half);
            page.lineTo(at + half, y);
            page.lineTo(at, y - half);
            page.lineTo(at - half, y);
            page.fill();
        }
        page.setNonStrokingColor(0f);
        line(y - 8);
        y -= 20;
        lines(PLAIN, 9, "20 equally likely outcomes, from " + msv(outcomes.get(0)) + " to " + msv(outcomes.get(outcomes.size() - 1)) + " person-mSv"
            + (Double.isInfinite(target) ? "." : "; those above the target of " + msv(target) + " are black."));
    }

    private void second(Outlook outlook, Campaign frozen, LocalDate on) throws IOException {
        float[] three = {0, 260, 380};
        lines(BOLD, 12, "People");
        String[] heads = {"Person", "Half end below, mSv", "95 of 100 below, mSv"};
        row(BOLD, three, heads);
        for (Outlook.Person person : outlook.people()) {
            if (turned(13)) {
                row(BOLD, three, heads);
            }
            row(PLAIN, three, person.worker(), msv(person.usv().p50()), msv(person.usv().p95()));
        }
        turned(13f * (MOST + 3));
        lines(BOLD, 12, "Tasks with most dose");
        row(BOLD, three, "Task", "Half end below, person-mSv", "95 of 100 below");
        for (Outlook.Task task : outlook.tasks().stream().sorted(Comparator.comparingDouble((Outlook.Task each) -> each.usv().p50()).reversed()).limit(MOST).toList()) {
            row(PLAIN, three, broken(PLAIN, 9, task.name(), 250).get(0), msv(task.usv().p50()), msv(task.usv().p95()));
        }
        turned(40);
        lines(BOLD, 12, "Assumptions older than allowed on " + on);
        List<String> old = frozen.surveys().stream().filter(survey -> survey.validUntil().isBefore(on))
            .map(survey -> "Survey " + survey.code() + " of " + survey.area() + ", valid until " + survey.validUntil()).toList();
        for (String survey : old.isEmpty() ? List.of("None: every survey was within its last day.") : old) {
            turned(13);
            lines(PLAIN, 9, survey);
        }
        turned(SIGNING);
        y -= 30;
        for (String who : List.of("Radiation protection officer", "Project manager", "Work supervisor")) {
            line(y);
            y -= 11;
            text(PLAIN, 9, LEFT, who + ": name, date, signature");
            y -= 32;
        }
    }

    private void foot(Run run, Outlook outlook, int number) throws IOException {
        y = 48;
        line(y + 12);
        text(PLAIN, 8, LEFT, broken(PLAIN, 8, "Review C" + run.campaign() + "-R" + run.number() + ", " + outlook.name() + ", run " + run.number() + ", data of " + run.askedAt(), 430).get(0));
        text(PLAIN, 8, RIGHT - 60, "page " + number + " of " + document.getNumberOfPages());
        y -= 12;
        text(PLAIN, 8, LEFT, "Content check " + run.inputs().substring(0, 16));
        if (outlook.invented()) {
            text(BOLD, 9, RIGHT - 60, "Demo data");
        }
    }

    private void line(float at) throws IOException {
        page.moveTo(LEFT, at);
        page.lineTo(RIGHT, at);
        page.stroke();
    }

    private void row(PDFont font, float[] at, String... cells) throws IOException {
        for (int i = 0; i < cells.length; i++) {
            text(font, 9, LEFT + at[i], cells[i]);
        }
        y -= 13;
    }

    private void lines(PDFont font, float size, String text) throws IOException {
        y -= size > 10 ? 8 : 0;
        for (String line : broken(font, size, text, RIGHT - LEFT)) {
            text(font, size, LEFT, line);
            y -= size * 1.35f;
        }
    }

    private void text(PDFont font, float size, float x, String text) throws IOException {
        page.beginText();
        page.setFont(font, size);
        page.newLineAtOffset(x, y);
        page.showText(text);
        page.endText();
    }

    private static List<String> broken(PDFont font, float size, String text, float wide) throws IOException {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : known(font, text).split("\\s+")) {
            if (line.length() > 0 && font.getStringWidth(line + " " + word) / 1000 * size > wide) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.length() > 0 ? " " : "").append(word);
        }
        lines.add(line.toString());
        return lines;
    }

    /** The built-in fonts have Latin letters only: anything else becomes a question mark. */
    private static String known(PDFont font, String text) {
        StringBuilder known = new StringBuilder();
        text.codePoints().forEach(point -> {
            String letter = Character.toString(point);
            try {
                font.encode(letter);
                known.append(letter);
            } catch (IOException | IllegalArgumentException notThere) {
                known.append(Character.isWhitespace(point) ? " " : "?");
            }
        });
        return known.toString();
    }

    /** Three significant digits, without powers of ten. */
    private static String msv(double usv) {
        double msv = usv / 1000;
        int decimals = msv == 0 ? 0 : (int) Math.min(6, Math.max(0, 2 - Math.floor(Math.log10(msv))));
        return String.format(Locale.ROOT, "%." + decimals + "f", msv);
    }
}
