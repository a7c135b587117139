import { html, nothing } from '../lib/vendor.js';
import { figureFrame } from '../elements/figure-frame.js';
import { notes } from '../elements/notes.js';
import { numberTicks } from '../elements/rate-curve.js';
import { day, number } from '../forms/field.js';
import { nameOf } from '../lib/words.js';
import { day as dayWords, doseRate, digits, metres, plain, sig } from '../lib/units.js';
import { area, component, firstArea, withInventory } from './fields.js';

export const liftCover = {
  key: 'least-cover', path: 'least-cover', words: 'Water cover while lifting', title: 'How much water must stay over a piece while it is lifted?',
  fields: [
    component, area, day('on', 'On the day', { maybe: true, hint: 'Blank: the day of the planned lift.' }),
    number('ceiling_usv_per_h', 'Ceiling to keep', 'µSv/h', { maybe: true, hint: 'Blank: that of the area.' }),
  ],
  start: (camp, { area: given, component: piece }) => ({ component: piece ?? withInventory(camp)[0]?.code, area: given ?? firstArea(camp) }),
  says: (answer, camp) => finding(answer, camp),
  answer(answer, camp) {
    const title = finding(answer, camp);
    const area = nameOf(camp, 'areas', answer.area);
    const points = answer.covers.map(each => ({ x: each.cover_mm / 1000, usvPerH: each.usv_per_h, words: `${metres(each.cover_mm)} of water over the piece: ${doseRate(each.usv_per_h)}` }));
    const marks = [];
    if (answer.outcome === 'found') marks.push({ x: answer.least_cover_mm / 1000, usvPerH: answer.usv_per_h, words: `hold point ${digits(answer.least_cover_mm)} mm` });
    const data = {
      id: 'cover-curve', points, marks, title, xTicks: numberTicks(x => `${sig(x, 2)} m`), xLabel: 'Water over the piece', ceiling: answer.ceiling_usv_per_h,
      ceilingWords: `ceiling ${plain(answer.ceiling_usv_per_h)} µSv/h`, read: 0,
      desc: `Dose rate of ${area} on ${dayWords(answer.on)} while a piece of ${nameOf(camp, 'components', answer.component)} is lifted: ${points[0].words}, ${points.at(-1).words}.`,
    };
    return html`${figureFrame({ level: 3, title, picture: html`<rate-curve .data=${data}></rate-curve>`, caption: `Dose rate of ${area} by water over the piece, ${dayWords(answer.on)}`, head: ['Water over the piece, m', 'Dose rate'],
      rows: answer.covers.map(each => [sig(each.cover_mm / 1000), doseRate(each.usv_per_h)]) })}
      ${answer.outcome === 'found' ? html`<p class="hold"><b>Hold point:</b> stop the lift with ${digits(answer.least_cover_mm)} mm of water over the piece and measure at ${area}.
        ${doseRate(answer.usv_per_h)} is calculated there. Go on only if the meter stays below ${plain(answer.ceiling_usv_per_h)} µSv/h.</p>` : nothing}
      <p class="small">Without the piece: ${doseRate(answer.others_usv_per_h)}, of which ${plain(answer.background_usv_per_h)} µSv/h background.
        ${answer.planned_cover_mm === undefined ? 'No task of the plan lifts it.' : html`Planned: ${digits(answer.planned_cover_mm)} mm of water, ${doseRate(answer.planned_usv_per_h)}${answer.outcome === 'found' && answer.planned_cover_mm < answer.least_cover_mm
    ? html` <span class="mark decide">less water than the hold point</span>` : nothing}.`}</p>
      ${notes(answer.notes, answer.extrapolated)}`;
  },
};

function finding(answer, camp) {
  const [piece, area] = [nameOf(camp, 'components', answer.component), nameOf(camp, 'areas', answer.area)];
  const ceiling = `ceiling of ${plain(answer.ceiling_usv_per_h)} µSv/h`;
  switch (answer.outcome) {
    case 'found': return `Keep at least ${digits(answer.least_cover_mm)} mm of water over a piece of ${piece}: then ${area} keeps its ${ceiling}`;
    case 'not-needed': return `Even just under the surface a piece of ${piece} leaves ${area} within its ${ceiling}`;
    default: return `No depth of this pool is enough: with any piece of ${piece} on the hook, ${area} is above its ${ceiling}`;
  }
}
