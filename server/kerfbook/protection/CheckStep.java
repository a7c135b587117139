package kerfbook.protection;

/** The steps of the check of one person, in their order. */
public enum CheckStep {
    CATEGORY_AND_AGE("category-and-age"),
    LEGAL_PERIOD("legal-period"),
    MULTI_YEAR("multi-year"),
    ORGAN("organ"),
    ADMINISTRATIVE_LEVEL("administrative-level"),
    TASK_CONSTRAINT("task-constraint"),
    DAILY_ALARM("daily-alarm"),
    UPPER_FORECAST("upper-forecast");

    private final String word;

    CheckStep(String word) {
        this.word = word;
    }

    @Override
    public String toString() {
        return word;
    }
}
