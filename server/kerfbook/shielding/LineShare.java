package kerfbook.shielding;

/**
 * What one photon line adds to a dose rate.
 *
 * @param nuclide         that sends it
 * @param energyMev       photon energy
 * @param rate            scattered and unscattered together, in the unit of the quantity
 * @param unscatteredRate without build-up
 * @param share           of the whole rate, 0 to 1
 * @param meanFreePaths   between source and detector, averaged by what arrives
 * @param buildupMedium   whose build-up factors were used; "none" where photons meet no matter
 * @param extrapolated    over 1 % of it came through more than 40 mean free paths, or its energy is below 0.1 MeV
 */
public record LineShare(String nuclide, double energyMev, double rate, double unscatteredRate, double share, double meanFreePaths,
        String buildupMedium, boolean extrapolated) { }
