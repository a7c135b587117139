package kerfbook.campaign;

import java.util.Optional;
import kerfbook.quantity.Origin;
import kerfbook.quantity.Require;

/**
 * How far figures that hold for the whole campaign may be off. What is left out is taken as stated in the outlook, and shown there as an assumption.
 *
 * @param crewGsd   of the hours of people: the pace of the crew over the campaign
 * @param surveyGsd of surveys that do not give their own
 * @param sourceGsd of calculated source strengths that no survey fits
 */
public record Uncertainty(Optional<Gsd> crewGsd, Optional<Gsd> surveyGsd, Optional<Gsd> sourceGsd) {

    /** A geometric standard deviation: two outcomes of three lie within the figure divided and multiplied by it. */
    public record Gsd(double value, Origin origin) {
        public Gsd {
            Require.within(value, 1, 10, "value", "");
            Require.present(origin, "origin");
        }
    }

    public Uncertainty {
        crewGsd = Require.optional(crewGsd);
        surveyGsd = Require.optional(surveyGsd);
        sourceGsd = Require.optional(sourceGsd);
    }
}
