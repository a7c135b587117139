package kerfbook.review;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;
import kerfbook.quantity.Words;

/**
 * What a work authorisation says. With its code and the signatures under it, it has the fourteen items of DOE-STD-1098 art. 321. A
 * general one holds for at most a year (art. 322).
 *
 * @param group         heading of the tasks that it is for
 * @param work          item 1, description of the work
 * @param conditions    item 2, radiological conditions by area
 * @param dosimetry     item 3
 * @param briefing      item 4
 * @param training      item 5
 * @param clothing      item 6, protective clothing and respiratory protection
 * @param coverage      item 7, who watches, and stay times
 * @param stays         item 7, how long each person may stay where it is hottest
 * @param voiding       item 8, what makes it void
 * @param doseReduction item 9, what is done to keep doses low
 * @param frisking      item 10, checks for contamination on leaving
 * @param workDocument  item 11, number of the technical work document
 * @param issuedOn      item 13; the code is item 12, the signatures item 14
 * @param crew          codes of the people who must acknowledge it
 * @param personUsv     collective dose that is planned for, person-µSv
 * @param highestUsv    highest individual dose that is planned for, µSv
 */
public record Authorisation(Kind kind, String group, String work, List<Condition> conditions, String dosimetry, String briefing, String training,
                            String clothing, String coverage, List<Stay> stays, List<Voiding> voiding, String doseReduction, String frisking,
                            String workDocument, LocalDate issuedOn, LocalDate expiresOn, List<String> crew, Optional<Double> personUsv,
                            Optional<Double> highestUsv) {
    private static final int LONGEST_GENERAL_YEARS = 1;

    /** How far it reaches. */
    public enum Kind {
        /** For one job, as long as it lasts. */
        JOB,
        /** For work that repeats, a year at most. */
        GENERAL;

        @Override
        public String toString() {
            return Words.of(this);
        }
    }

    /** Expected rate in an area, and the survey that it rests on. */
    public record Condition(String area, double usvPerH, Optional<String> survey, String remark) {
        public Condition {
            Require.code(area, "area");
            Require.within(usvPerH, 0, 1e9, "usv_per_h", "µSv/h");
            survey = Require.optional(survey);
            survey.ifPresent(code -> Require.code(code, "survey"));
            Require.text(remark, "remark");
        }
    }

    /** Longest stay of one person in one area, h; absent: dose does not limit it. */
    public record Stay(String worker, String area, Optional<Double> hours) {
        public Stay {
            Require.code(worker, "worker");
            Require.code(area, "area");
            hours = Require.optional(hours);
            hours.ifPresent(stay -> Require.within(stay, 0, 1e9, "hours", "h"));
        }
    }

    public Authorisation {
        Require.present(kind, "kind");
        Require.name(group, "group");
        Require.reason(work, "work");
        conditions = Require.atLeastOne(conditions, "conditions");
        Require.distinct(conditions.stream().map(Condition::area).toList(), "conditions");
        Require.reason(dosimetry, "dosimetry");
        Require.text(briefing, "briefing");
        Require.text(training, "training");
        Require.text(clothing, "clothing");
        Require.text(coverage, "coverage");
        stays = Require.list(stays, "stays");
        voiding = Require.atLeastOne(voiding, "voiding");
        Require.text(doseReduction, "dose_reduction");
        Require.text(frisking, "frisking");
        Require.text(workDocument, "work_document");
        Require.day(issuedOn, "issued_on");
        Require.day(expiresOn, "expires_on");
        if (expiresOn.isBefore(issuedOn)) {
            throw new Invalid("expires_on", "is before issued_on. Give a later day.");
        }
        if (kind == Kind.GENERAL && expiresOn.isAfter(issuedOn.plusYears(LONGEST_GENERAL_YEARS))) {
            throw new Invalid("expires_on", "is more than a year after issued_on. A general authorisation holds for a year at most.");
        }
        crew = Require.distinct(Require.atLeastOne(crew, "crew"), "crew");
        for (int i = 0; i < crew.size(); i++) {
            Require.code(crew.get(i), "crew[" + i + "]");
        }
        personUsv = Require.optional(personUsv);
        personUsv.ifPresent(usv -> Require.within(usv, 0, 1e9, "person_usv", "person-µSv"));
        highestUsv = Require.optional(highestUsv);
        highestUsv.ifPresent(usv -> Require.within(usv, 0, 1e9, "highest_usv", "µSv"));
    }

    /** Items that are still without words; nothing is issued with any of them. */
    public List<String> unfilled() {
        return java.util.stream.Stream.of(List.of("briefing", briefing), List.of("training", training), List.of("clothing", clothing),
                List.of("coverage", coverage), List.of("dose_reduction", doseReduction), List.of("frisking", frisking), List.of("work_document", workDocument))
            .filter(item -> item.get(1).isBlank()).map(item -> item.get(0)).toList();
    }
}
