package kerfbook.segmentation;

import java.util.SortedMap;

/**
 * A number of equal pieces.
 *
 * @param size       box around one piece
 * @param massKg     of one piece
 * @param becquerels of one piece, by nuclide, on the reference day of the inventory; empty where no inventory is given
 */
public record PieceKind(int count, Box size, double massKg, SortedMap<String, Double> becquerels) { }
