package kerfbook.waste;

import kerfbook.quantity.Require;

/**
 * A pool taken as well mixed, with its filter.
 *
 * @param volumeM3     V, water that takes part
 * @param floorM2      A, area on which fines settle
 * @param filterM3PerH Q, flow through the filter; 0 where it stands
 */
public record Pool(double volumeM3, double floorM2, double filterM3PerH) {
    public Pool {
        Require.positive(volumeM3, 1e6, "volume_m3", "m³");
        Require.within(floorM2, 0, 1e6, "floor_m2", "m²");
        Require.within(filterM3PerH, 0, 1e6, "filter_m3_per_h", "m³/h");
    }

    public Pool withFilter(double m3PerH) {
        return new Pool(volumeM3, floorM2, m3PerH);
    }

    /** Time in which the filter takes the pool's volume once, h; not to be asked of a filter that stands. */
    public double turnoverH() {
        Require.positive(filterM3PerH, 1e6, "filter_m3_per_h", "m³/h");
        return volumeM3 / filterM3PerH;
    }
}
