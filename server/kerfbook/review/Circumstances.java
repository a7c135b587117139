package kerfbook.review;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import kerfbook.campaign.Survey;
import kerfbook.logbook.Entry;

/** What is known on a day that an authorisation is held against. */
public record Circumstances(LocalDate today, List<Survey> surveys, List<Entry> entries) {
    public Circumstances {
        surveys = List.copyOf(surveys);
        entries = List.copyOf(entries);
    }

    /** Why this authorisation is void by its own conditions; empty while it is not. */
    List<String> broken(Authorisation authorisation) {
        List<String> because = new ArrayList<>();
        if (today.isAfter(authorisation.expiresOn())) {
            because.add("It expired on " + authorisation.expiresOn() + ".");
        }
        for (Voiding voiding : authorisation.voiding()) {
            if (voiding.kind() == Voiding.Kind.RATE_ABOVE) {
                rate(voiding.area().orElseThrow(), voiding.usvPerH().orElseThrow(), authorisation.issuedOn(), because);
            } else if (voiding.kind() == Voiding.Kind.SURVEY_TOO_OLD) {
                age(voiding.area().orElseThrow(), because);
            }
        }
        return because;
    }

    /** Every survey since it was issued counts, and each of the last day before: what was void once stays so until it is drafted anew. */
    private void rate(String area, double most, LocalDate since, List<String> because) {
        Optional<LocalDate> latest = last(surveys, area, today).map(Survey::surveyedOn);
        surveys.stream().filter(survey -> survey.area().equals(area) && survey.usvPerH() > most && !survey.surveyedOn().isAfter(today))
            .filter(survey -> !survey.surveyedOn().isBefore(since) || survey.surveyedOn().equals(latest.orElseThrow()))
            .max(Comparator.comparingDouble(Survey::usvPerH)).ifPresent(survey -> because.add("Survey " + survey.code() + " of " + area + " on "
                + survey.surveyedOn() + " reads " + plain(survey.usvPerH()) + " µSv/h, above " + plain(most) + "."));
        entries.stream().filter(entry -> entry.area().equals(area) && !entry.on().isBefore(since) && entry.foundUsvPerH().filter(found -> found > most).isPresent())
            .max(Comparator.comparing(Entry::on)).ifPresent(entry -> because.add(plain(entry.foundUsvPerH().orElseThrow()) + " µSv/h was found in " + area + " on "
                + entry.on() + ", above " + plain(most) + "."));
    }

    private void age(String area, List<String> because) {
        Optional<Survey> last = last(surveys, area, today);
        if (last.isEmpty()) {
            because.add("There is no survey of " + area + ".");
        } else if (today.isAfter(last.get().validUntil())) {
            because.add("Survey " + last.get().code() + " of " + area + " was valid until " + last.get().validUntil() + ".");
        }
    }

    /** The survey that holds on a day: the latest until then; of two on one day the later in the list, as the forecast takes it. */
    static Optional<Survey> last(List<Survey> surveys, String area, LocalDate today) {
        return surveys.stream().filter(survey -> survey.area().equals(area) && !survey.surveyedOn().isAfter(today))
            .reduce((one, next) -> next.surveyedOn().isBefore(one.surveyedOn()) ? one : next);
    }

    static String plain(double value) {
        String text = String.format(Locale.ROOT, value >= 100 ? "%.0f" : "%.1f", value);
        return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
    }
}
