// Twenty outcomes as ticks on one axis with others, their median as a heavier one; beside it stand the numbers.
import { nothing, svg } from '../lib/vendor.js';

/** scale is [from, to] of the whole column; bound is drawn dashed. */
export function outcomeStrip({ outcomes, median, scale, bound, letter }) {
  const [from, to] = scale;
  const at = value => `${(2 + 96 * (to > from ? (value - from) / (to - from) : 0.5)).toFixed(2)}%`;
  const one = to > from ? outcomes[0] === outcomes[19] : true;
  return svg`<svg class="outcome-strip ${letter ?? ''}" aria-hidden="true" height="20">
    <line class="ground" x1="0" x2="100%" y1="15.5" y2="15.5"></line>
    ${one ? nothing : outcomes.map(value => svg`<line class="tick" x1=${at(value)} x2=${at(value)} y1="6" y2="15"></line>`)}
    <line class="median" x1=${at(median)} x2=${at(median)} y1="2" y2="18"></line>
    ${bound !== undefined && bound >= from && bound <= to ? svg`<line class="target" x1=${at(bound)} x2=${at(bound)} y1="0" y2="20"></line>` : nothing}
  </svg>`;
}

/** From the least to the largest outcome of all, a bound included where it is near. */
export function scaleOf(spreads, bound) {
  const all = spreads.flatMap(spread => spread.outcomes);
  if (all.length === 0) return [0, 1];
  const low = Math.min(...all);
  const high = Math.max(...all);
  const near = bound !== undefined && bound > low - (high - low) / 2 && bound < high + (high - low) / 2;
  return near ? [Math.min(low, bound), Math.max(high, bound)] : [low, high];
}
