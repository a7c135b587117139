import { html } from '../lib/vendor.js';
import { figureFrame } from '../elements/figure-frame.js';
import { ifExtrapolated, notes } from '../elements/notes.js';
import { day } from '../forms/field.js';
import { nameOf } from '../lib/words.js';
import { day as dayWords, doseRate } from '../lib/units.js';
import { firstArea } from './fields.js';

export const removal = {
  key: 'sequence', path: 'sequence', method: 'GET', words: 'After each component', title: 'What is the rate after each component is gone?',
  hint: 'In the planned order. Decay is held at the one day, so that only what leaves changes the rate.',
  fields: [day('on', 'Activity as on', { maybe: true, hint: 'Blank: first day of the campaign.' })],
  start: () => ({}),
  says: (answer, camp) => finding(answer, camp, firstArea(camp)),
  answer(answer, camp, { room, redraw }) {
    if (answer.areas.length === 0) return html`<p>No area has a place above the pool. Give one of them its place first.</p>`;
    room.area = answer.areas.includes(room.area) ? room.area : answer.areas.includes(firstArea(camp)) ? firstArea(camp) : answer.areas[0];
    const title = finding(answer, camp, room.area);
    const rates = stepsOf(answer, room.area);
    const data = {
      id: 'removal-steps', title, desc: `${answer.steps.length} steps on the activity of ${dayWords(answer.on)}: ${rates.map((rate, i) => `${label(answer.steps[i], camp)} ${doseRate(rate.usv_per_h)}`).join(', ')}.`,
      rows: rates.map((rate, i) => ({ label: label(answer.steps[i], camp), span: i > 0 ? [rates[i - 1].usv_per_h, rate.usv_per_h] : undefined,
        marks: [...(i > 0 ? [{ usvPerH: rates[i - 1].usv_per_h, kind: 'ring' }] : []), { usvPerH: rate.usv_per_h, kind: 'dot' }] })),
    };
    return html`<div class="field"><label for="removal-area">Area in the picture</label><div class="entry"><select id="removal-area" class="auto" @change=${event => { room.area = event.target.value; redraw(); }}>
        ${answer.areas.map(code => html`<option value=${code} ?selected=${code === room.area}>${nameOf(camp, 'areas', code)}</option>`)}</select></div></div>
      ${figureFrame({ level: 3, title, picture: html`<dot-rows .data=${data}></dot-rows><p class="small muted" aria-hidden="true">Ring: before. Dot: after it is gone.</p>`, caption: `Dose rates step by step, activity of ${dayWords(answer.on)}`,
    head: ['Step', 'Gone on', ...answer.areas.map(code => nameOf(camp, 'areas', code))],
    rows: answer.steps.map(step => [label(step, camp), step.gone_on ? dayWords(step.gone_on) : '', ...answer.areas.map(code => { const found = step.areas.find(each => each.area === code); return found ? `${doseRate(found.usv_per_h)}${ifExtrapolated(found)}` : ''; })]) })}
      ${notes(answer.notes, answer.steps.some(step => step.areas.some(each => each.extrapolated)))}`;
  },
};

const stepsOf = (answer, area) => answer.steps.map(step => step.areas.find(each => each.area === area));
const label = (step, camp) => (step.gone ? `${nameOf(camp, 'components', step.gone)} gone` : 'As it stands');

function finding(answer, camp, area) {
  if (answer.areas.length === 0) return 'No area has a place.';
  const code = answer.areas.includes(area) ? area : answer.areas[0];
  const rates = stepsOf(answer, code).map(each => each.usv_per_h);
  let most = 1;
  for (let i = 1; i < rates.length; i++) if (rates[i - 1] - rates[i] > rates[most - 1] - rates[most]) most = i;
  if (rates.length < 2) return `${nameOf(camp, 'areas', code)}: ${doseRate(rates[0])}; nothing is planned to leave`;
  return `${nameOf(camp, 'areas', code)} goes from ${doseRate(rates[0])} to ${doseRate(rates.at(-1))}; ${nameOf(camp, 'components', answer.steps[most].gone)} is the greatest step`;
}
