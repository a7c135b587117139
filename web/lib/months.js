import { dayNumber, dayShort, isoOf, monthName } from './units.js';

/** Firsts of months (or of years) between two day numbers, thinned to at most so many; days where the span is short. */
export function monthTicks(from, to, most) {
  if (to - from < 62) return dayTicks(from, to, most);
  const ticks = [];
  let [year, month] = isoOf(from).split('-').map(Number);
  for (;;) {
    const first = dayNumber(`${year}-${String(month).padStart(2, '0')}-01`);
    if (first > to) break;
    if (first >= from) ticks.push({ day: first, year, month });
    month += 1;
    if (month > 12) { month = 1; year += 1; }
  }
  const every = [1, 2, 3, 6, 12, 24, 60, 120].find(step => ticks.length / step <= most) ?? 240;
  return ticks.filter(tick => ((tick.month - 1) + (every > 12 ? 12 * (tick.year % (every / 12)) : 0)) % every === 0)
    .map((tick, i) => ({ day: tick.day, words: every >= 12 ? `${tick.year}` : i === 0 || tick.month === 1 ? `${monthName(tick.month - 1)} ${tick.year}` : monthName(tick.month - 1) }));
}

function dayTicks(from, to, most) {
  const every = [1, 2, 7, 14, 28].find(step => (to - from) / step < most) ?? 56;
  return Array.from({ length: Math.floor((to - from) / every) + 1 }, (_, i) => ({ day: from + i * every, words: dayShort(isoOf(from + i * every)) }));
}
