package kerfbook.outlook;

import kerfbook.campaign.Campaign;
import kerfbook.estimate.Basis;

/** A campaign made ready to be drawn: every input that is uncertain, and what each figure is made of. */
public final class Model {
    private Model() { }

    /**
     * @param inputs digest of the campaign document, written into the outlook
     * @throws kerfbook.quantity.Invalid as the forecast does, if a figure that is needed is not there
     */
    public static Model of(Campaign campaign, Basis basis, String inputs, State state) {
        throw new UnsupportedOperationException("not yet");
    }
}
