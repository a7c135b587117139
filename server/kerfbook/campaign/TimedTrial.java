package kerfbook.campaign;

import java.time.LocalDate;
import kerfbook.cutting.Trial;
import kerfbook.quantity.Require;

/**
 * A cut that was timed before the campaign, on cold metal.
 *
 * @param technique which technique was tried
 * @param minutes   with the tool on
 * @param setting   how the tool was set; trials of different settings are not fitted together
 */
public record TimedTrial(String code, String technique, String material, double thicknessMm, double lengthMm, double minutes, String setting,
                         LocalDate doneOn, String note) {
    public TimedTrial {
        Require.code(code, "code");
        Require.code(technique, "technique");
        Require.name(material, "material");
        new Trial(thicknessMm, lengthMm, minutes, setting);
        Require.day(doneOn, "done_on");
        Require.text(note, "note");
    }

    /** As it is fitted. */
    public Trial trial() {
        return new Trial(thicknessMm, lengthMm, minutes, setting);
    }
}
