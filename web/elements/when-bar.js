// When a task runs, as a bar on the campaign's own time axis. The dates stand below in words.
import { svg } from '../lib/vendor.js';
import { monthTicks } from '../lib/months.js';
import { dayNumber } from '../lib/units.js';

const scale = forecast => {
  const from = dayNumber(forecast.start);
  const length = Math.max(1, dayNumber(forecast.finish) + 1 - from);
  return { from, length, at: day => `${(((day - from) / length) * 100).toFixed(2)}%` };
};

export function whenHead(forecast) {
  const { from, length, at } = scale(forecast);
  return svg`<svg class="when-head" aria-hidden="true" height="14">${monthTicks(from, from + length, 4).map(tick => svg`<text x=${at(tick.day)} y="11">${tick.words}</text>`)}</svg>`;
}

export function whenBar(forecast, task) {
  const { from, length, at } = scale(forecast);
  const start = dayNumber(task.start);
  const days = dayNumber(task.finish) + 1 - start;
  return svg`<svg class="when" aria-hidden="true" height="16">
    ${monthTicks(from, from + length, 4).map(tick => svg`<line class="month" x1=${at(tick.day)} x2=${at(tick.day)} y1="0" y2="16"></line>`)}
    <rect class="bar-of ${task.critical ? 'critical' : ''}" x=${at(start)} y=${task.critical ? 3 : 5} width="${((days / length) * 100).toFixed(2)}%" height=${task.critical ? 10 : 6}></rect></svg>`;
}
