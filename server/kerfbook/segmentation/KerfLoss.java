package kerfbook.segmentation;

import java.util.SortedMap;

/**
 * What the slots take out of the component: it is in no piece, and turns up as chips, fines and what the filters catch.
 *
 * @param metalFaceMm2 metal face of all cuts
 * @param becquerels   by nuclide; empty where no inventory is given
 */
public record KerfLoss(double metalFaceMm2, double massKg, SortedMap<String, Double> becquerels) { }
