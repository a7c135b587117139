// Where the twenty outcomes stand. Bins begin at the line they are held against, so that no dot straddles it.

/**
 * @param outcomes values in rising order
 * @param bin      width of a bin in the unit of the values
 * @param anchor   an edge of the bins: the target, or 0
 * @returns {{value: number, at: number, place: number, above: boolean}[]} at: middle of the bin; place: 0 for the first in its bin
 */
export function dots(outcomes, bin, anchor, target) {
  const filled = new Map();
  return outcomes.map(value => {
    // A value just on the target keeps it, and so belongs below.
    const above = target !== undefined && value > target;
    const index = above || target === undefined ? Math.floor((value - anchor) / bin) : Math.ceil((value - anchor) / bin) - 1;
    const place = filled.get(index) ?? 0;
    filled.set(index, place + 1);
    return { value, at: anchor + (index + 0.5) * bin, place, above };
  });
}

/** The outcomes between which 19, 16 (8 in 10) and 10 of the 20 lie. */
export const BANDS = [[0, 19], [2, 17], [5, 14]];
export const eightInTen = spread => [spread.outcomes[2], spread.outcomes[17]];
