// An axis of dose rates: by powers of ten where they differ much, else from nought.
import { d3 } from './vendor.js';
import { sig } from './units.js';

/** @returns a scale with {log, ticks: [{value, words}]} over the values that are above 0 */
export function rateScale(values, range, most = 6) {
  const above = values.filter(value => value > 0);
  const top = Math.max(...above, 0) || 1;
  const low = Math.min(...above, top);
  if (top / low < 12) {
    const scale = d3.scaleLinear([0, top * 1.1], range);
    return { log: false, at: value => scale(value), ticks: scale.ticks(most).map(value => ({ value, words: sig(value, 2) })) };
  }
  const from = Math.max(Math.floor(Math.log10(low)), Math.ceil(Math.log10(top)) - 12);
  const to = Math.max(from + 1, Math.ceil(Math.log10(top) - 1e-9));
  const scale = d3.scaleLog([10 ** from, 10 ** to], range).clamp(true);
  const every = Math.ceil((to - from + 1) / most);
  const ticks = [];
  for (let power = from; power <= to; power += every) ticks.push({ value: 10 ** power, words: unit(10 ** power) });
  return { log: true, at: value => scale(value), ticks };
}

/** 1000 µSv/h and more in mSv or Sv, said with the tick. */
const unit = value => (value >= 1e6 ? `${sig(value / 1e6, 2)} Sv` : value >= 1000 ? `${sig(value / 1000, 2)} mSv` : `${sig(value, 2)} µSv`);
