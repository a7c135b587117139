// Rates along a line, over a platform, over a section of the pool. All without background.
import { html } from '../lib/vendor.js';
import { figureFrame } from '../elements/figure-frame.js';
import { ifExtrapolated, notes } from '../elements/notes.js';
import { numberTicks } from '../elements/rate-curve.js';
import { heatKey } from '../elements/heat-key.js';
import { day, group, number, whole } from '../forms/field.js';
import { place, span } from '../forms/stand.js';
import { at, day as dayWords, digits, doseRate, sig } from '../lib/units.js';
import { poolOf } from './fields.js';

const on = day('on', 'On the day', { maybe: true, hint: 'Blank: first day of the campaign.' });
const BELOW = ['Background is not in it.', 'A square that is crossed out has no rate: the table says why.'];

export const lineOfRates = {
  key: 'line', path: 'map', words: 'Along a line', title: 'What is the rate along a line?', hint: 'A walkway, a handrail, a rope into the pool.',
  fields: [on, group('line', 'Line', [place('from', 'From'), place('to', 'To'), whole('points', 'Points', { hint: '2 to 600, both ends counted.' })])],
  start: camp => ({ line: { from: { right_m: 0.1, up_m: 1.2 }, to: { right_m: poolOf(camp)?.length_m ?? 4, up_m: 1.2 }, points: 41 } }),
  says: answer => highest(answer),
  answer(answer) {
    const first = answer.points[0];
    const far = point => Math.hypot(point.right_m - first.right_m, point.across_m - first.across_m, point.up_m - first.up_m);
    const known = answer.points.filter(point => point.usv_per_h !== undefined);
    const title = highest(answer);
    const words = point => `${at(far(point))} along, ${where(point)}: ${said(point)}`;
    const data = {
      id: 'line-curve', title, xTicks: numberTicks(x => `${sig(x, 2)} m`), xLabel: 'Metres along the line', read: 0,
      points: known.map(point => ({ x: far(point), usvPerH: point.usv_per_h, extrapolated: point.extrapolated, words: words(point) })),
      desc: known.length > 0 ? `Dose rate at ${known.length} points on ${dayWords(answer.on)}, from ${words(known[0])} to ${words(known.at(-1))}.` : 'No rate.',
    };
    return html`${figureFrame({ level: 3, title, picture: known.length > 1 ? html`<rate-curve .data=${data}></rate-curve>` : html`<p>No point of the line has a rate.</p>`, caption: `Dose rate along the line, ${dayWords(answer.on)}`,
      head: ['Along, m', 'Right, m', 'Across, m', 'Up, m', 'Dose rate'], rows: answer.points.map(point => [digits(far(point), 4), digits(point.right_m, 4), digits(point.across_m, 4), digits(point.up_m, 4), said(point)]) })}
      ${how(answer)}${notes(['Background is not in it.', ...reasons(answer)], stretched(answer))}`;
  },
};

export const platform = grid('platform', {
  words: 'Over a platform', title: 'What is the rate over a platform?', hint: 'Seen from above; at most 600 squares.',
  fields: [number('up_m', 'Height above the normal water', 'm', { signed: true }), span('right', 'Right of the left pool wall'), span('across', 'Across from the middle of the pool'),
    whole('columns', 'Columns'), whole('rows', 'Rows')],
  start: pool => ({ up_m: 1.2, right: { from_m: 0, to_m: pool?.length_m ?? 4 }, across: { from_m: -(pool?.width_m ?? 2) / 2, to_m: (pool?.width_m ?? 2) / 2 }, columns: 16, rows: 9 }),
  row: 'across_m', rowWords: 'Across, m',
});

export const section = grid('section', {
  words: 'Over a section', title: 'What is the rate over an upright section?', hint: 'Seen from the side; at most 600 squares. Inside a source there is no rate, and pool water that holds activity is a source.',
  fields: [number('across_m', 'Across from the middle of the pool', 'm', { signed: true }), span('right', 'Right of the left pool wall'), span('up', 'Above the normal water'),
    whole('columns', 'Columns'), whole('rows', 'Rows')],
  start: pool => ({ across_m: 0, right: { from_m: 0, to_m: pool?.length_m ?? 4 }, up: { from_m: 0.1, to_m: 3 }, columns: 18, rows: 12 }),
  row: 'up_m', rowWords: 'Up, m',
});

function grid(name, { words, title: asks, hint, fields, start, row, rowWords }) {
  return {
    key: name, path: 'map', words, title: asks, hint, fields: [on, group(name, words, fields)],
    start: camp => ({ [name]: start(poolOf(camp)) }),
    says: answer => highest(answer),
    answer(answer) {
      const title = highest(answer);
      const cells = answer.points.map(point => ({ x: point.right_m, y: point[row], usvPerH: point.usv_per_h, extrapolated: point.extrapolated }));
      const lines = Array.from({ length: answer.rows }, (_, i) => answer.points.slice(i * answer.columns, (i + 1) * answer.columns)).reverse();
      const data = { id: `${name}-map`, columns: answer.columns, rows: answer.rows, cells, title, xWords: `right, m; ${rowWords.toLowerCase()} at the side`,
        desc: `${answer.columns} by ${answer.rows} squares on ${dayWords(answer.on)}. ${title}. The table has every number.` };
      return html`${figureFrame({ level: 3, title, picture: html`<heat-map .data=${data}></heat-map>${heatKey()}`, caption: `Dose rate in µSv/h, ${dayWords(answer.on)}; * is extrapolated`,
        head: [rowWords, ...answer.points.slice(0, answer.columns).map(point => digits(point.right_m, 3))],
        rows: lines.map(line => [digits(line[0][row], 3), ...line.map(point => (point.usv_per_h === undefined ? 'none' : `${sig(point.usv_per_h, 3)}${point.extrapolated ? '*' : ''}`))]) })}
        ${how(answer)}${notes([...BELOW, ...reasons(answer)], stretched(answer))}`;
    },
  };
}

const said = point => (point.usv_per_h === undefined ? point.why : `${doseRate(point.usv_per_h)}${ifExtrapolated(point)}`);
const where = point => `${at(point.right_m)} right, ${at(point.across_m)} across, ${at(point.up_m)} up`;
const stretched = answer => answer.points.some(point => point.extrapolated);
const reasons = answer => [...new Set(answer.points.filter(point => point.why).map(point => point.why))].map(why => `No rate: ${why}`);
const how = answer => html`<p class="small">${answer.calibrated ? 'With the factors that fit the surveys best.' : 'From the activities as they are stated, without calibration.'}</p>`;

function highest(answer) {
  const known = answer.points.filter(point => point.usv_per_h !== undefined);
  if (known.length === 0) return 'No point has a rate';
  const top = known.reduce((one, other) => (other.usv_per_h > one.usv_per_h ? other : one));
  return `Highest: ${doseRate(top.usv_per_h)} at ${where(top)}`;
}
