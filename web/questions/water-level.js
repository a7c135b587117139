import { html } from '../lib/vendor.js';
import { figureFrame } from '../elements/figure-frame.js';
import { ifExtrapolated, notes } from '../elements/notes.js';
import { numberTicks } from '../elements/rate-curve.js';
import { day, number, whole } from '../forms/field.js';
import { nameOf } from '../lib/words.js';
import { day as dayWords, doseRate, levelUp, plain, sig } from '../lib/units.js';
import { area, firstArea, poolOf } from './fields.js';

export const waterLevel = {
  key: 'water-levels', path: 'water-levels', words: 'Water level', title: 'How does the rate change with the water level?',
  hint: 'Everything else stays as it stands that day.',
  fields: [
    area, day('on', 'On the day', { maybe: true, hint: 'Blank: first day of the campaign.' }),
    number('from_mm', 'Lowest level', 'm', { power: 3, sent: 'mm', signed: true, hint: 'Against the normal surface; minus is lower.' }),
    number('to_mm', 'Highest level', 'm', { power: 3, sent: 'mm', signed: true }), whole('steps', 'Levels between them', { hint: '2 to 101, both ends counted.' }),
  ],
  start(camp, { area: given }) {
    const pool = poolOf(camp);
    return { area: given ?? firstArea(camp), from_mm: pool ? Math.max(-1000, Math.ceil(-1000 * pool.depth_m) + 1) : -1000, to_mm: pool ? pool.deck_mm : 0, steps: 25 };
  },
  says: (answer, camp) => finding(answer, camp),
  answer(answer, camp) {
    const title = finding(answer, camp);
    const points = answer.levels.map(each => ({ x: each.level_mm / 1000, usvPerH: each.usv_per_h, extrapolated: each.extrapolated,
      words: `Level ${level(each.level_mm)}: ${doseRate(each.usv_per_h)}${ifExtrapolated(each)}` }));
    const now = answer.levels.reduce((near, each, i) => (Math.abs(each.level_mm - answer.level_now_mm) < Math.abs(answer.levels[near].level_mm - answer.level_now_mm) ? i : near), 0);
    const data = {
      id: 'level-curve', points, xTicks: numberTicks(x => `${sig(x, 2)} m`), xLabel: 'Water level against normal', ceiling: answer.ceiling_usv_per_h,
      ceilingWords: `ceiling ${plain(answer.ceiling_usv_per_h)} µSv/h`, read: now, title,
      marks: answer.lowest_level_mm === undefined ? [] : [{ x: answer.lowest_level_mm / 1000, usvPerH: answer.ceiling_usv_per_h, words: 'lowest level' }],
      desc: `Dose rate of ${nameOf(camp, 'areas', answer.area)} on ${dayWords(answer.on)} at ${points.length} water levels: ${points[0].words} to ${points.at(-1).words}.`,
    };
    return html`${figureFrame({ level: 3, title, picture: html`<rate-curve .data=${data}></rate-curve>`, caption: `Dose rate by water level, ${dayWords(answer.on)}`, head: ['Level, m', 'Dose rate'],
      rows: answer.levels.map(each => [sig(each.level_mm / 1000), `${doseRate(each.usv_per_h)}${ifExtrapolated(each)}`]) })}
      <p class="small">Level now ${level(answer.level_now_mm)}; ${plain(answer.background_usv_per_h)} µSv/h of it is background. A lowest level is for planning: the measured rate decides.</p>
      ${notes(answer.notes, answer.levels.some(each => each.extrapolated))}`;
  },
};

const level = mm => (mm === 0 ? 'normal' : `${sig(mm / 1000)} m`);

function finding(answer, camp) {
  const name = nameOf(camp, 'areas', answer.area);
  const ends = `${doseRate(answer.levels[0].usv_per_h)} at ${level(answer.levels[0].level_mm)} and ${doseRate(answer.levels.at(-1).usv_per_h)} at ${level(answer.levels.at(-1).level_mm)}`;
  const ceiling = `its ceiling of ${plain(answer.ceiling_usv_per_h)} µSv/h`;
  switch (answer.ceiling_kept) {
    case 'found': return `${name} keeps ${ceiling} down to ${levelUp(answer.lowest_level_mm)}`;
    case 'not-needed': return `${name} keeps ${ceiling} at every level asked about: ${ends}`;
    case 'not-reached': return `${name} is above ${ceiling} at every level asked about: ${ends}`;
    default: return `${name} has no ceiling: ${ends}`;
  }
}
