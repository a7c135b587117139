package kerfbook.shielding;

import kerfbook.quantity.Require;

/**
 * One photon line of a nuclide.
 *
 * @param energyMev      photon energy, MeV, up to 20
 * @param yieldPerDecay  photons per decay of the nuclide that lists the line, above 0 and at most 5
 */
public record PhotonLine(double energyMev, double yieldPerDecay) {
    public PhotonLine {
        Require.positive(energyMev, 20, "energy_mev", "MeV");
        Require.positive(yieldPerDecay, 5, "yield_per_decay", "photons per decay");
    }
}
