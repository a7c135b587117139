package kerfbook.segmentation;

import java.util.SortedMap;
import kerfbook.campaign.Container;

/** What lies in one package. Activity by nuclide, Bq, on the reference day of the inventory. */
public record Load(Container container, double massKg, SortedMap<String, Double> becquerels) { }
